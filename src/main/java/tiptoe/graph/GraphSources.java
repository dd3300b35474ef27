package tiptoe.graph;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.List;
import java.util.stream.Stream;
import tiptoe.files.Sha256;

/**
 * The files that a decoding graph comes from, as they are: reading them as grammars takes longer
 * than finding the graph.
 *
 * @param model the stock model
 * @param grammars folder of the grammars; every file in it counts
 * @param pronunciations the pronunciation file, then those that add to it
 * @param settings the costs of the graph
 */
public record GraphSources(
    ModelFolder model, Path grammars, List<Path> pronunciations, GraphSettings settings) {

  /**
   * One SHA-256 over everything.
   *
   * @param further what else the graph comes from
   */
  public String hash(String... further) throws IOException {
    MessageDigest digest = Sha256.start();
    for (String one : further) {
      Sha256.add(digest, one);
    }
    Sha256.add(digest, "format " + GraphInputs.FORMAT);
    Sha256.add(digest, model.identity());
    Sha256.add(digest, settings.toString());
    Sha256.add(digest, ModelConf.first() + ModelConf.again() + ModelConf.phones());
    for (Path file : pronunciations) {
      digest.update(Sha256.of(file));
    }
    for (Path file : files()) {
      Sha256.add(digest, file.getFileName().toString());
      digest.update(Sha256.of(file));
    }
    return Sha256.hex(digest.digest());
  }

  private List<Path> files() throws IOException {
    try (Stream<Path> files = Files.list(grammars)) {
      return files.filter(Files::isRegularFile).sorted().toList();
    }
  }
}
