package tiptoe.audio;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;

/** Says in words what a file that is no known audio seems to be, by its first bytes. */
final class FileKind {
  private static final int ENOUGH = 64;

  private FileKind() {}

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
