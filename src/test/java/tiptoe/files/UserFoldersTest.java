package tiptoe.files;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Linux: XDG Base Directory Specification 0.8; the others: vendors' guidelines. */
class UserFoldersTest {
  @ParameterizedTest(name = "{0}")
  @CsvSource({
    "Linux, /home/u/.config/tiptoe, /home/u/.local/share/tiptoe, /home/u/.cache/tiptoe",
    "Mac OS X, /home/u/Library/Application Support/tiptoe,"
        + " /home/u/Library/Application Support/tiptoe, /home/u/Library/Caches/tiptoe",
    "Windows 11, /home/u/AppData/Roaming/tiptoe, /home/u/AppData/Local/tiptoe,"
        + " /home/u/AppData/Local/tiptoe",
  })
  void areThoseOfThePlatform(String system, Path config, Path data, Path cache) {
    UserFolders folders = new UserFolders(Map.of(), system, Path.of("/home/u"));

    assertEquals(config, folders.config());
    assertEquals(data, folders.data());
    assertEquals(cache, folders.cache());
  }

  @Test
  void areThoseThatTheEnvironmentNames() {
    UserFolders linux =
        folders("Linux", "XDG_CONFIG_HOME", "/c", "XDG_DATA_HOME", "/d", "XDG_CACHE_HOME", "/e");
    assertEquals(Path.of("/c/tiptoe"), linux.config());
    assertEquals(Path.of("/d/tiptoe"), linux.data());
    assertEquals(Path.of("/e/tiptoe"), linux.cache());

    UserFolders windows = folders("Windows 11", "APPDATA", "/r", "LOCALAPPDATA", "/l", "X", "");
    assertEquals(Path.of("/r/tiptoe"), windows.config());
    assertEquals(Path.of("/l/tiptoe"), windows.data());
    assertEquals(Path.of("/l/tiptoe"), windows.cache());
  }

  @Test
  void ignoreWhatIsNoAbsolutePath() {
    UserFolders folders =
        folders("Linux", "XDG_CONFIG_HOME", "c", "XDG_DATA_HOME", "", "XDG_CACHE_HOME", "../e");

    assertEquals(Path.of("/home/u/.config/tiptoe"), folders.config());
    assertEquals(Path.of("/home/u/.local/share/tiptoe"), folders.data());
    assertEquals(Path.of("/home/u/.cache/tiptoe"), folders.cache());
  }

  private static UserFolders folders(
      String system, String a, String one, String b, String two, String c, String three) {
    return new UserFolders(Map.of(a, one, b, two, c, three), system, Path.of("/home/u"));
  }
}
