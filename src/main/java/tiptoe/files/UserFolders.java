package tiptoe.files;

import java.nio.file.Path;
import java.util.Map;

/**
 * Where the platform has programs keep a user's files. On Linux that is as the XDG Base Directory
 * Specification 0.8 has it; on Windows and macOS, as their makers' guidelines do. A variable that
 * holds no absolute path is ignored, as XDG asks.
 *
 * @param environment the environment variables
 * @param system the value of {@code os.name}
 * @param home the user's home folder
 */
public record UserFolders(Map<String, String> environment, String system, Path home) {
  private static final String NAME = "tiptoe";

  public UserFolders {
    environment = Map.copyOf(environment);
  }

  /** Those of the user who runs this program. */
  public static UserFolders here() {
    return new UserFolders(
        System.getenv(), System.getProperty("os.name"), Path.of(System.getProperty("user.home")));
  }

  /** For settings. */
  public Path config() {
    return folder(
        "APPDATA", "AppData/Roaming", "Library/Application Support", "XDG_CONFIG_HOME", ".config");
  }

  /** For records. */
  public Path data() {
    return folder(
        "LOCALAPPDATA",
        "AppData/Local",
        "Library/Application Support",
        "XDG_DATA_HOME",
        ".local/share");
  }

  /** For what can be made again. */
  public Path cache() {
    return folder("LOCALAPPDATA", "AppData/Local", "Library/Caches", "XDG_CACHE_HOME", ".cache");
  }

  private Path folder(String variable, String windows, String mac, String xdg, String linux) {
    Path folder =
        system.startsWith("Windows")
            ? given(variable, windows)
            : system.startsWith("Mac") ? home.resolve(mac) : given(xdg, linux);
    return folder.resolve(NAME);
  }

  private Path given(String variable, String usual) {
    Path named = Path.of(environment.getOrDefault(variable, ""));
    return named.isAbsolute() ? named : home.resolve(usual);
  }
}
