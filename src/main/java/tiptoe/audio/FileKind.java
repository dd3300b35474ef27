package tiptoe.audio;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;

/** Says in words what a file that is no known audio seems to be, by its first bytes. */
final class FileKind {
  private static final int ENOUGH = 64;

  private static final int FIRST_CHUNK = 12;

  private FileKind() {}

  /**
   * Whether zeros stand where the head of a chunk should: Java Sound would look for one behind
   * them, byte by byte, for minutes in a large file.
   */
  static boolean isBlank(Path file) throws IOException {
    try (InputStream in = Files.newInputStream(file)) {
      byte[] start = in.readNBytes(FIRST_CHUNK + 1);
      return start.length > 0 && start[0] == 0
          || start.length > FIRST_CHUNK && start[0] == 'R' && start[FIRST_CHUNK] == 0;
    }
  }

  static String describe(Path file) {
    byte[] start;
    try (InputStream in = Files.newInputStream(file)) {
      start = in.readNBytes(ENOUGH);
    } catch (IOException e) {
      return "a file that cannot be read";
    }
    String text = new String(start, StandardCharsets.ISO_8859_1);
    if (text.startsWith("RIFF") || text.startsWith("RIFX") || text.startsWith("RF64")) {
      return start.length < 44
          ? "a WAV cut off in its header"
          : "a WAV of a kind that is not known";
    }
    if (text.startsWith("FORM")) {
      return "an AIFF of a kind that is not known";
    }
    if (text.startsWith("ID3") || text.startsWith("\u00FF\u00FB")) {
      return "MP3";
    }
    if (text.startsWith("OggS")) {
      return "Ogg";
    }
    if (text.startsWith("fLaC")) {
      return "FLAC";
    }
    if (text.startsWith("ftyp", 4)) {
      return "MP4";
    }
    boolean printable =
        text.chars().allMatch(c -> c >= ' ' && c < 0x7F || c == '\n' || c == '\r' || c == '\t');
    return printable ? "text" : "something else";
  }
}
