package tiptoe.graph;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;

/** A little-endian binary file, read in order; messages name the file. */
final class BinaryReader {
  private static final int LONGEST = 80;

  private final Path file;
  private final ByteBuffer bytes;

  BinaryReader(Path file) throws IOException {
    this.file = file;
    this.bytes = ByteBuffer.wrap(Files.readAllBytes(file)).order(ByteOrder.LITTLE_ENDIAN);
  }

  byte int8() throws IOException {
    need(1);
    return bytes.get();
  }

  int int32() throws IOException {
    need(4);
    return bytes.getInt();
  }

  long int64() throws IOException {
    need(8);
    return bytes.getLong();
  }

  /** A text with its length in front. */
  String string() throws IOException {
    int length = int32();
    need(length);
    byte[] text = new byte[length];
    bytes.get(text);
    return new String(text, StandardCharsets.UTF_8);
  }

  /** A Kaldi token: characters up to a space, which is read too. */
  String token() throws IOException {
    StringBuilder token = new StringBuilder();
    for (byte b = int8(); b != ' '; b = int8()) {
      if (token.length() > 100) {
        throw unusable("expected a token", "\"" + token + "…\"");
      }
      token.append((char) (b & 0xff));
    }
    return token.toString();
  }

  /** A Kaldi number: its size in bytes, which must be 4, then the value. */
  int sizedInt32() throws IOException {
    byte size = int8();
    if (size != 4) {
      throw unusable("expected a 4-byte number", "one of " + size + " bytes");
    }
    return int32();
  }

  int[] sizedInt32s() throws IOException {
    int[] values = new int[length(sizedInt32(), 4)];
    for (int i = 0; i < values.length; i++) {
      values[i] = int32();
    }
    return values;
  }

  void expect(String expected, String found) throws IOException {
    if (!found.equals(expected)) {
      throw unusable("expected " + expected, found);
    }
  }

  /** A count of entries of a size in bytes, which must fit into the rest of the file. */
  int length(long count, int size) throws IOException {
    if (count < 0 || count > bytes.remaining() / size) {
      throw unusable("expected at most " + bytes.remaining() + " more bytes", count + " entries");
    }
    return (int) count;
  }

  /** The next bytes as a buffer of their own. */
  ByteBuffer slice(int length) throws IOException {
    need(length);
    ByteBuffer part = bytes.slice(bytes.position(), length).order(ByteOrder.LITTLE_ENDIAN);
    bytes.position(bytes.position() + length);
    return part;
  }

  void alignTo(int size) throws IOException {
    int beyond = bytes.position() % size;
    if (beyond > 0) {
      need(size - beyond);
      bytes.position(bytes.position() + size - beyond);
    }
  }

  UnusableModelException unusable(String expectation, String found) {
    return new UnusableModelException(
        "%s at byte %d of %s, found %s"
            .formatted(expectation, bytes.position(), file, printable(found)));
  }

  /** What stands in a damaged file may be anything; a terminal must survive it. */
  private static String printable(String text) {
    String plain = text.replaceAll("[^\\x20-\\x7e]", "?");
    return plain.length() <= LONGEST ? plain : plain.substring(0, LONGEST) + "…";
  }

  private void need(int count) throws IOException {
    if (count < 0 || bytes.remaining() < count) {
      throw unusable("expected " + count + " more bytes", "the end of the file");
    }
  }
}
