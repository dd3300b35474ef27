package tiptoe.grammar;

import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/** A text that people edit, in UTF-8. */
public final class TextFile {
  private TextFile() {}

  /** Its lines; other bytes than UTF-8 are an error that names the file. */
  public static List<String> lines(Path file) throws IOException {
    try {
      return Files.readAllLines(file);
    } catch (CharacterCodingException e) {
      throw new IOException("expected UTF-8 text in " + file + ", found other bytes", e);
    }
  }
}
