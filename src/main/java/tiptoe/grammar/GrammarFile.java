package tiptoe.grammar;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.IllegalCharsetNameException;
import java.nio.charset.StandardCharsets;
import java.nio.charset.UnsupportedCharsetException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;

/**
 * The text of a grammar file: UTF-8 unless a byte order mark or the header says otherwise (SRGS
 * 1.0, section 4.4).
 */
final class GrammarFile {
  private static final int MOST_BYTES = 4_000_000;

  private GrammarFile() {}

  /** Reads a file; one that cannot be read is a grammar with a problem. */
  static Grammar read(Path path, String name) {
    try {
      if (Files.size(path) > MOST_BYTES) {
        return unreadable(name, "a grammar of at most 4 MB", Files.size(path) + " bytes");
      }
      return parse(name, Files.readAllBytes(path));
    } catch (IOException e) {
      return unreadable(name, "a readable file", e.getClass().getSimpleName());
    }
  }

  private static Grammar parse(String name, byte[] bytes) {
    String asciiHead = new String(bytes, 0, Math.min(80, bytes.length), StandardCharsets.US_ASCII);
    String encoding = AbnfReader.encoding(asciiHead.lines().findFirst().orElse(""));
    int mark = markLength(bytes);
    try {
      Charset charset = mark > 0 ? marked(bytes) : named(encoding);
      ByteBuffer content = ByteBuffer.wrap(bytes, mark, bytes.length - mark);
      return AbnfReader.read(name, charset.newDecoder().decode(content).toString());
    } catch (CharacterCodingException e) {
      String expected = encoding.isEmpty() || mark > 0 ? "UTF-8" : encoding;
      return unreadable(name, expected + " text", "bytes that are not");
    } catch (IllegalCharsetNameException | UnsupportedCharsetException e) {
      return unreadable(name, "a known encoding in the header", "'" + encoding + "'");
    }
  }

  private static Charset named(String encoding) {
    return encoding.isEmpty() ? StandardCharsets.UTF_8 : Charset.forName(encoding);
  }

  private static int markLength(byte[] bytes) {
    if (startsWith(bytes, 0xEF, 0xBB, 0xBF)) {
      return 3;
    }
    return startsWith(bytes, 0xFE, 0xFF) || startsWith(bytes, 0xFF, 0xFE) ? 2 : 0;
  }

  private static Charset marked(byte[] bytes) {
    return switch (bytes[0] & 0xFF) {
      case 0xFE -> StandardCharsets.UTF_16BE;
      case 0xFF -> StandardCharsets.UTF_16LE;
      default -> StandardCharsets.UTF_8;
    };
  }

  private static boolean startsWith(byte[] bytes, int... expected) {
    for (int i = 0; i < expected.length; i++) {
      if (i >= bytes.length || (bytes[i] & 0xFF) != expected[i]) {
        return false;
      }
    }
    return true;
  }

  private static Grammar unreadable(String name, String expectation, String found) {
    Grammar.Header none =
        new Grammar.Header("", "voice", "", Place.START, "", "", List.of(), Map.of());
    return new Grammar(name, none, Map.of(), List.of(new Problem(name, 1, 1, expectation, found)));
  }
}
