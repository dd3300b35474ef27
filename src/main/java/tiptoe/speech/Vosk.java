package tiptoe.speech;

import com.sun.jna.Library;
import com.sun.jna.Native;
import com.sun.jna.Platform;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;

/** Loads the Vosk library that lies inside its jar, once for the process. */
final class Vosk {
  /** Below its warnings (−1) and errors (−2), which would spoil the screen. */
  private static final int SILENT = -3;

  /** Windows finds these only when they were loaded before, in this order. */
  private static final List<String> WINDOWS =
      List.of("libwinpthread-1.dll", "libgcc_s_seh-1.dll", "libstdc++-6.dll", "libvosk.dll");

  private static VoskLibrary library;

  private Vosk() {}

  static synchronized VoskLibrary library() throws IOException {
    if (library == null) {
      try {
        library =
            Native.load(
                Platform.isWindows() ? unpackForWindows() : "vosk",
                VoskLibrary.class,
                Map.of(Library.OPTION_STRING_ENCODING, "UTF-8"));
      } catch (UnsatisfiedLinkError e) {
        throw new IOException(
            "expected the speech library to load on %s, found: %s"
                .formatted(Platform.RESOURCE_PREFIX, reason(e)),
            e);
      }
      library.vosk_set_log_level(SILENT);
    }
    return library;
  }

  /** The last of the ways that were tried, without the class path that it was looked for in. */
  private static String reason(UnsatisfiedLinkError problem) {
    String last = problem.getMessage().strip().replaceFirst("(?s).*\\R", "");
    return last.replaceFirst(" in resource path .*", " in the program");
  }

  private static String unpackForWindows() throws IOException {
    Path folder = Files.createTempDirectory("tiptoe");
    Path last = folder;
    for (String name : WINDOWS) {
      last = folder.resolve(name);
      try (InputStream in = Vosk.class.getResourceAsStream("/win32-x86-64/" + name)) {
        if (in == null) {
          throw new UnsatisfiedLinkError(name);
        }
        Files.copy(in, last);
      }
      System.load(last.toString());
    }
    return last.toString();
  }
}
