package tiptoe.session;

import java.io.IOException;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import tiptoe.files.UserFolders;
import tiptoe.graph.ModelFolder;
import tiptoe.settings.SettingsFile;

/**
 * The folder that holds {@code grammars}, {@code models} and {@code demo-audio}.
 *
 * @param folder absolute
 */
public record Home(Path folder) {
  /** The environment variable that names another folder. */
  static final String VARIABLE = "TIPTOE_HOME";

  /**
   * The folder the environment names, else the nearest one with grammars above the program itself.
   *
   * @throws IOException when there is none
   */
  public static Home locate() throws IOException {
    String named = System.getenv(VARIABLE);
    if (named != null && !named.isBlank()) {
      Path folder = Path.of(named).toAbsolutePath();
      if (!Files.isDirectory(folder.resolve("grammars"))) {
        throw new IOException("expected a folder grammars in " + VARIABLE + " " + folder);
      }
      return new Home(folder);
    }
    for (Path at = program(); at != null; at = at.getParent()) {
      if (Files.isRegularFile(at.resolve("grammars/exam.gram"))) {
        return new Home(at);
      }
    }
    throw new IOException("expected a folder grammars beside the program; set " + VARIABLE);
  }

  private static Path program() throws IOException {
    try {
      return Path.of(Home.class.getProtectionDomain().getCodeSource().getLocation().toURI())
          .toAbsolutePath();
    } catch (URISyntaxException e) {
      throw new IOException("cannot tell where the program is; set " + VARIABLE, e);
    }
  }

  public Path grammars() {
    return folder.resolve("grammars");
  }

  public Path pronunciations() {
    return grammars().resolve("pronunciations.txt");
  }

  /** What adapts the stock model to crying. */
  Path adaptedWeights() {
    return folder.resolve("models").resolve(ModelFolder.ADAPTED);
  }

  public Path demoAudio() {
    return folder.resolve("demo-audio");
  }

  /** Where settings are looked for when none are named; possibly not there. */
  public static Path settingsFile() {
    return UserFolders.here().config().resolve(SettingsFile.NAME);
  }
}
