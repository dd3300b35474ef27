package tiptoe.graph;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;

/** The model that the build fetched, for tests. */
final class StockModel {
  static final Path PATH = Path.of("models", ModelFolder.STOCK);

  private StockModel() {}

  static AcousticModel read() throws IOException {
    return AcousticModel.read(ModelFolder.open(PATH));
  }

  static void copyTo(Path target) throws IOException {
    try (Stream<Path> all = Files.walk(PATH)) {
      for (Path from : (Iterable<Path>) all::iterator) {
        Path to = target.resolve(PATH.relativize(from).toString());
        if (Files.isDirectory(from)) {
          Files.createDirectories(to);
        } else {
          Files.copy(from, to);
        }
      }
    }
  }
}
