package tiptoe.exam.journal;

import java.io.IOException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import tiptoe.exam.Entry;
import tiptoe.exam.journal.LineCodec.BadLine;
import tiptoe.files.BoundedFile;
import tiptoe.files.Sha256;

/** Reads a journal and checks its chain. It reports what is wrong, and mends nothing. */
final class JournalReader {
  private final byte[] bytes;
  private final List<Entry> entries = new ArrayList<>();
  private final List<String> breaks = new ArrayList<>();
  private LineCodec codec = LineCodec.PLAIN;
  private long expected = 1;

  // Null behind a line that cannot be read: there is nothing to follow from.
  private String before = Entry.NONE_BEFORE;
  private byte[] last = {};

  private JournalReader(byte[] bytes) {
    this.bytes = bytes;
  }

  /**
   * Reads a journal.
   *
   * @param passphrase null when there is none
   * @throws RecordProblem when there is no journal, or its passphrase is missing or wrong
   */
  static JournalReading read(ExamFolder folder, char[] passphrase) throws IOException {
    return read(bytes(folder.journal(), folder), passphrase);
  }

  private static byte[] bytes(Path journal, ExamFolder folder) throws IOException {
    try {
      return BoundedFile.JOURNAL.bytes(journal);
    } catch (NoSuchFileException e) {
      throw new RecordProblem("expected an examination in " + folder.path() + ", found none", e);
    } catch (FileSystemException e) {
      throw RecordProblem.of("read " + journal, e);
    } catch (IOException e) {
      throw new RecordProblem(e.getMessage(), e);
    }
  }

  static JournalReading read(byte[] bytes, char[] passphrase) throws RecordProblem {
    return new JournalReader(bytes).read(passphrase);
  }

  static boolean isEncrypted(ExamFolder folder) throws IOException {
    if (!folder.exists()) {
      return false; // and a pipe would keep the reader waiting
    }
    try (var in = Files.newInputStream(folder.journal())) {
      return DataKey.isHeader(in.readNBytes(64));
    }
  }

  private JournalReading read(char[] passphrase) throws RecordProblem {
    List<byte[]> lines = new ArrayList<>();
    int at = 0;
    for (int end = lineEnd(0); end >= 0; end = lineEnd(at)) {
      lines.add(Arrays.copyOfRange(bytes, at, end));
      at = end + 1;
    }
    if (!lines.isEmpty() && DataKey.isHeader(lines.get(0))) {
      codec = unlock(lines.remove(0), passphrase);
    }
    // Reading a line takes long beside checking its place, and needs none of the others.
    lines.parallelStream().map(this::decode).toList().forEach(this::take);
    List<String> heads = lines.parallelStream().map(Sha256::hexOf).toList();
    byte[] torn = Arrays.copyOfRange(bytes, at, bytes.length);
    Chain chain = expected == 1 ? Chain.start() : Chain.after(expected - 1, last);
    return new JournalReading(
        List.copyOf(entries), List.copyOf(breaks), at, torn, chain, codec, heads);
  }

  private static LineCodec unlock(byte[] line, char[] passphrase) throws RecordProblem {
    if (passphrase == null) {
      throw new RecordProblem("the record is encrypted: its passphrase is needed");
    }
    return new EncryptedLines(DataKey.unlock(line, passphrase));
  }

  private int lineEnd(int from) {
    for (int i = from; i < bytes.length; i++) {
      if (bytes[i] == '\n') {
        return i;
      }
    }
    return -1;
  }

  /** A line by itself: its entry, or what is wrong with it. */
  private record Decoded(byte[] line, String hash, Entry entry, String problem) {}

  private Decoded decode(byte[] stored) {
    try {
      byte[] line = codec.load(stored);
      return new Decoded(line, Sha256.hexOf(line), EventLines.read(line), null);
    } catch (BadLine | EventLines.UnreadableLine e) {
      return new Decoded(stored, null, null, e.getMessage());
    }
  }

  private void take(Decoded decoded) {
    if (decoded.entry() == null) {
      broken("the line cannot be read: " + decoded.problem());
      expected++;
    } else {
      check(decoded.entry());
      entries.add(decoded.entry());
      expected = decoded.entry().seq() + 1;
    }
    last = decoded.line();
    before = decoded.hash();
  }

  private void check(Entry entry) {
    if (entry.seq() != expected) {
      broken("expected entry " + expected + ", found " + entry.seq());
    } else if (before != null && !entry.prev().equals(before)) {
      broken("it does not follow from the entry before it");
    }
  }

  private void broken(String how) {
    breaks.add("entry " + expected + ": " + how);
  }
}
