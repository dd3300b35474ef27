package tiptoe.audio;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.FileChannel;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.List;

/**
 * Reads what {@link SealedWriter} wrote.
 *
 * @param file the segment
 * @param pieces its whole pieces, in order
 */
record SealedReader(Path file, List<Piece> pieces) {
  static final int HEADER_BYTES = 2 * Integer.BYTES;
  private static final int MOST_BYTES = 1 << 20;

  /**
   * Where a piece is.
   *
   * @param from place of its first sample in the segment
   * @param at where its bytes begin in the file
   */
  record Piece(long from, int samples, long at, int bytes) {}

  /** Finds the whole pieces of a file; what is behind them was torn off. */
  static SealedReader of(Path file) throws IOException {
    List<Piece> pieces = new ArrayList<>();
    try (FileChannel channel = FileChannel.open(file, StandardOpenOption.READ)) {
      long size = channel.size();
      long at = 0;
      long samples = 0;
      while (at + HEADER_BYTES <= size) {
        ByteBuffer header = read(channel, at, HEADER_BYTES);
        int count = header.getInt();
        int bytes = header.getInt();
        boolean whole = count > 0 && bytes > 0 && bytes <= MOST_BYTES;
        if (!whole || at + HEADER_BYTES + bytes > size) {
          break;
        }
        pieces.add(new Piece(samples, count, at + HEADER_BYTES, bytes));
        samples += count;
        at += HEADER_BYTES + bytes;
      }
    }
    return new SealedReader(file, List.copyOf(pieces));
  }

  private static ByteBuffer read(FileChannel channel, long at, int count) throws IOException {
    ByteBuffer bytes = ByteBuffer.allocate(count).order(ByteOrder.LITTLE_ENDIAN);
    while (bytes.hasRemaining() && channel.read(bytes, at + bytes.position()) >= 0) {
      // until all is read, or the file turns out shorter
    }
    return bytes.rewind();
  }

  /** Number of samples in it. */
  long length() {
    return pieces.stream().mapToLong(Piece::samples).sum();
  }

  /** The samples of the segment from one place to another. */
  short[] samples(long from, long to, SoundSeal seal) throws IOException {
    short[] samples = new short[(int) (to - from)];
    try (FileChannel channel = FileChannel.open(file, StandardOpenOption.READ)) {
      for (int number = 0; number < pieces.size(); number++) {
        Piece piece = pieces.get(number);
        long start = Math.max(from, piece.from());
        long end = Math.min(to, piece.from() + piece.samples());
        if (start < end) {
          byte[] sealed = read(channel, piece.at(), piece.bytes()).array();
          String name = file.getFileName().toString();
          ByteBuffer plain = ByteBuffer.wrap(seal.open(sealed, SealedWriter.place(name, number)));
          plain.order(ByteOrder.LITTLE_ENDIAN);
          plain.position((int) (start - piece.from()) * Short.BYTES);
          plain.asShortBuffer().get(samples, (int) (start - from), (int) (end - start));
        }
      }
    }
    return samples;
  }
}
