package tiptoe.graph;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * Run by the build: leaves a mark when the speech model in {@code models/} is intact, otherwise
 * says that it is going to be fetched, since that takes a while and Maven may run quietly.
 */
final class ModelFetchNotice {
  private ModelFetchNotice() {}

  /** Takes the model folder and the file that marks it as intact. */
  public static void main(String[] args) throws IOException {
    mark(Path.of(args[0]), Path.of(args[1]), System.err);
  }

  static void mark(Path model, Path mark, PrintStream out) throws IOException {
    if (ModelFolder.manifest(ModelFolder.STOCK).firstProblem(model).isEmpty()) {
      Files.createDirectories(mark.getParent());
      Files.write(mark, new byte[0]);
      return;
    }
    Files.deleteIfExists(mark);
    out.println("fetching the speech model (41 MB, once)");
  }
}
