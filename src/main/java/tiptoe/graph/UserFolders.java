package tiptoe.graph;

import java.nio.file.Path;
import java.util.Locale;
import java.util.Map;
import java.util.Properties;

/** Where programs keep what they can make again, by operating system. */
public final class UserFolders {
  private static final String NAME = "tiptoe";

  private UserFolders() {}

  /**
   * The user's cache folder: {@code LOCALAPPDATA} on Windows, {@code Library/Caches} on macOS, else
   * as the XDG Base Directory Specification 0.8 has it.
   */
  public static Path cache(Map<String, String> environment, Properties system) {
    Path home = Path.of(system.getProperty("user.home"));
    String os = system.getProperty("os.name").toLowerCase(Locale.ROOT);
    if (os.startsWith("windows")) {
      return given(environment, "LOCALAPPDATA", home.resolve("AppData/Local")).resolve(NAME);
    }
    if (os.startsWith("mac")) {
      return home.resolve("Library/Caches").resolve(NAME);
    }
    return given(environment, "XDG_CACHE_HOME", home.resolve(".cache")).resolve(NAME);
  }

  private static Path given(Map<String, String> environment, String variable, Path otherwise) {
    String value = environment.get(variable);
    return value == null || value.isBlank() ? otherwise : Path.of(value);
  }
}
