package tiptoe.files;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;

/**
 * The kinds of file that are read as a whole, each with the most bytes that one may have: what is
 * larger is none of them, and would only fill the memory. Something that is no file is not opened,
 * since a pipe without a writer would keep the reader waiting for good; devices of the system, such
 * as /dev/stdin, are read up to the limit.
 */
public enum BoundedFile {
  /** What happened in an examination, a line each. */
  JOURNAL("a journal", 64 << 20),
  SETTINGS("a settings file", 1 << 20),
  PROTOCOL("a protocol of the ward", 64 << 10),
  ANSWERS("a file of findings", 4 << 20),
  PATIENT("a file that says who the baby is", 1 << 20),
  /** Lines that people write, such as words to be taught, or what was said in a recording. */
  TEXT("a text file", 4 << 20),
  /** A passphrase, a password or a token. */
  SECRET("a file with one line", 64 << 10),
  /** Keys and certificates: PKCS #12 or PEM. */
  CERTIFICATE("a file of certificates", 1 << 20),
  KEY("a signing key", 64 << 10),
  /** How far each record has come. */
  HEADS("a log of records", 64 << 20),
  LETTER("a document to send", 64 << 20);

  private static final Path DEVICES = Path.of("/dev");

  private final String what;
  private final int most;

  BoundedFile(String what, int most) {
    this.what = what;
    this.most = most;
  }

  /**
   * All bytes of a file.
   *
   * @throws NoSuchFileException when there is none
   * @throws IOException when it is no file, larger than it may be, or cannot be read
   */
  public byte[] bytes(Path file) throws IOException {
    require(file);
    try (InputStream in = Files.newInputStream(file)) {
      byte[] bytes = in.readNBytes(most + 1);
      if (bytes.length > most) {
        throw tooLarge(file, "more");
      }
      return bytes;
    }
  }

  /**
   * The text of a file in UTF-8.
   *
   * @throws IOException when it holds other bytes
   */
  public String text(Path file) throws IOException {
    try {
      return StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes(file))).toString();
    } catch (CharacterCodingException e) {
      throw new IOException("expected UTF-8 text, found other bytes in " + file, e);
    }
  }

  /** The lines of a text in UTF-8, without their ends. */
  public List<String> lines(Path file) throws IOException {
    return text(file).lines().toList();
  }

  /** A file's bytes as a stream that holds them all. */
  public InputStream stream(Path file) throws IOException {
    return new ByteArrayInputStream(bytes(file));
  }

  /**
   * Checks what is there without reading it, for those that read it themselves.
   *
   * @throws NoSuchFileException when there is none
   * @throws IOException when it is no file, or larger than it may be
   */
  public void require(Path file) throws IOException {
    if (Files.isDirectory(file)) {
      throw new IOException("expected %s, found a folder at %s".formatted(what, file));
    }
    if (!Files.exists(file)) {
      if (Files.isSymbolicLink(file)) {
        throw new IOException(
            "expected %s, found a link that leads nowhere at %s".formatted(what, file));
      }
      throw new NoSuchFileException(file.toString());
    }
    if (Files.isRegularFile(file)) {
      if (Files.size(file) > most) {
        throw tooLarge(file, Files.size(file) + " bytes");
      }
    } else if (!file.toAbsolutePath().normalize().startsWith(DEVICES)) {
      throw new IOException(
          "expected %s, found something that is no file at %s".formatted(what, file));
    }
  }

  private IOException tooLarge(Path file, String found) {
    return new IOException(
        String.format(
            Locale.ROOT, "expected %s of at most %s, found %s in %s", what, size(), found, file));
  }

  private String size() {
    return most >= 1 << 20 ? (most >> 20) + " MiB" : (most >> 10) + " KiB";
  }
}
