package tiptoe.exam.journal;

import java.nio.file.Path;
import java.util.Map;

/** Where the records of a user are kept when no other place is named. */
public final class DataFolder {
  private static final String NAME = "tiptoe";

  private DataFolder() {}

  /**
   * The platform's place for a user's data.
   *
   * @param environment the environment variables
   * @param system the value of {@code os.name}
   * @param home the user's home folder
   */
  public static Path usualPlace(Map<String, String> environment, String system, Path home) {
    if (system.startsWith("Windows")) {
      String local = environment.get("LOCALAPPDATA");
      Path folder = local == null ? home.resolve("AppData/Local") : Path.of(local);
      return folder.resolve(NAME);
    }
    if (system.startsWith("Mac")) {
      return home.resolve("Library/Application Support").resolve(NAME);
    }
    // XDG Base Directory Specification 0.8: a relative path in the variable is ignored.
    String configured = environment.getOrDefault("XDG_DATA_HOME", "");
    Path folder = configured.startsWith("/") ? Path.of(configured) : home.resolve(".local/share");
    return folder.resolve(NAME);
  }
}
