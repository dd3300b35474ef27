package tiptoe.graph;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tiptoe.files.Sha256;

/**
 * A Vosk model folder that was found fit to build a graph from. The stock model is held against its
 * manifest; any other is checked as far as its structure tells.
 *
 * @param path the folder
 * @param identity SHA-256 of what the decoding graph and its folder depend on
 * @param differences a file of {@link WeightDifferences} that its acoustic model is to be changed
 *     by; empty where it is used as it is
 */
public record ModelFolder(Path path, String identity, Optional<Path> differences) {
  /** Name of the model that the build fetches into {@code models/}. */
  public static final String STOCK = "vosk-model-en-0.3.45";

  /** Name of the file in {@code models/} that adapts the stock model to crying. */
  public static final String ADAPTED = "cry-adapted.differences";

  /** The environment variable that names another model folder. */
  public static final String VARIABLE = "TIPTOE_MODEL";

  static final String TRANSITIONS = "am/final.mdl";
  static final String GRAPH = "graph/HCLr.fst";
  static final String WORDS = "graph/Gr.fst";
  static final String WORD_BOUNDARY = "graph/phones/word_boundary.int";
  static final String FEATURES = "conf/mfcc.conf";
  private static final List<String> NEEDED =
      List.of(TRANSITIONS, GRAPH, WORDS, WORD_BOUNDARY, FEATURES);

  /**
   * Where the model is to be: the folder asked for, else the one the environment names, else the
   * stock one in the project's {@code models/}.
   *
   * @param asked what the user gave on the command line; may be null
   */
  public static Path locate(Path asked, Map<String, String> environment, Path project) {
    if (asked != null) {
      return asked;
    }
    String named = environment.get(VARIABLE);
    if (named != null && !named.isBlank()) {
      return Path.of(named);
    }
    return project.resolve("models").resolve(STOCK);
  }

  /** Checks a folder before anything is loaded from it. */
  public static ModelFolder open(Path folder) throws IOException {
    if (!Files.isDirectory(folder)) {
      throw new UnusableModelException(
          "expected a speech model folder at %s, found none; 'mvn compile' fetches it"
              .formatted(folder));
    }
    if (!isStock(folder)) {
      checkStructure(folder);
      return new ModelFolder(folder, identityOf(folder), Optional.empty());
    }
    Manifest manifest = manifest(STOCK);
    Optional<String> problem = manifest.firstProblem(folder);
    if (problem.isPresent()) {
      throw new UnusableModelException(
          problem.get() + "; delete the folder and run 'mvn compile' to fetch it again");
    }
    return new ModelFolder(folder, manifest.identity(), Optional.empty());
  }

  /** Whether it is the model that the project is made for. */
  public boolean isStock() {
    return isStock(path);
  }

  /**
   * The stock model with the weights of its acoustic model changed, in folders of graphs of its
   * own.
   *
   * @param file the program's own {@link #ADAPTED}
   * @throws UnusableModelException if this is another model, or the file is not as it should be
   */
  public ModelFolder adaptedBy(Path file) throws IOException {
    if (!isStock(path)) {
      throw new UnusableModelException(
          "expected %s for adapted weights, found %s; set weights: stock to use another model"
              .formatted(STOCK, path));
    }
    Optional<String> problem = manifest(ADAPTED).firstProblem(file.toAbsolutePath().getParent());
    if (problem.isPresent()) {
      throw new UnusableModelException(
          problem.get() + "; install the program again, or set weights: stock");
    }
    MessageDigest digest = Sha256.start();
    Sha256.add(digest, identity);
    digest.update(Sha256.of(file));
    return new ModelFolder(path, Sha256.hex(digest.digest()), Optional.of(file));
  }

  Path file(String name) {
    return path.resolve(name);
  }

  static Manifest manifest(String name) throws IOException {
    try (InputStream in = ModelFolder.class.getResourceAsStream(name + ".sha256")) {
      return Manifest.read(in);
    }
  }

  private static boolean isStock(Path folder) {
    return folder.toAbsolutePath().normalize().endsWith(STOCK);
  }

  private static void checkStructure(Path folder) throws IOException {
    if (Files.exists(folder.resolve("graph/HCLG.fst")) && !Files.exists(folder.resolve(GRAPH))) {
      throw new UnusableModelException(
          "expected a Vosk model with a run-time graph (%s) in %s, found one with a fixed graph"
              .formatted(GRAPH, folder));
    }
    for (String name : NEEDED) {
      Path file = folder.resolve(name);
      if (!Files.isRegularFile(file) || Files.size(file) == 0) {
        throw new UnusableModelException(
            "expected %s in the speech model %s, found %s"
                .formatted(name, folder, Files.exists(file) ? "an empty file" : "none"));
      }
    }
  }

  private static String identityOf(Path folder) throws IOException {
    MessageDigest digest = Sha256.start();
    for (String name : NEEDED) {
      digest.update(Sha256.of(folder.resolve(name)));
    }
    return Sha256.hex(digest.digest());
  }
}
