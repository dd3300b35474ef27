package tiptoe.audio;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.FileChannel;
import java.util.Arrays;

/**
 * Writes a segment in encrypted pieces of a quarter of a second: for each the number of its samples
 * and of its bytes, 4 bytes each, little-endian, and then those bytes. Inside they are 16-bit
 * samples, little-endian. What is torn off at the end costs the last piece only.
 */
final class SealedWriter implements SegmentWriter {
  private static final int PIECE_SAMPLES = Pcm.RATE / 4;

  private final FileChannel channel;
  private final String name;
  private final SoundSeal seal;
  private final short[] waiting = new short[PIECE_SAMPLES];
  private int waits;
  private int written;
  private int pieces;
  private long end;

  /**
   * @param channel an empty file that is open; closed with the writer
   * @param name name of the file
   */
  SealedWriter(FileChannel channel, String name, SoundSeal seal) {
    this.channel = channel;
    this.name = name;
    this.seal = seal;
  }

  /** What a piece is sealed for. */
  static String place(String name, int piece) {
    return name + " " + piece;
  }

  @Override
  public void append(short[] samples) throws IOException {
    int done = 0;
    while (done < samples.length) {
      int count = Math.min(samples.length - done, PIECE_SAMPLES - waits);
      System.arraycopy(samples, done, waiting, waits, count);
      waits += count;
      done += count;
      if (waits == PIECE_SAMPLES) {
        flush();
      }
    }
  }

  private void flush() throws IOException {
    if (waits == 0) {
      return;
    }
    ByteBuffer plain = littleEndian(waits * Short.BYTES);
    plain.asShortBuffer().put(waiting, 0, waits);
    byte[] sealed = seal.seal(plain.array(), place(name, pieces));
    ByteBuffer piece = littleEndian(SealedReader.HEADER_BYTES + sealed.length);
    piece.putInt(waits).putInt(sealed.length).put(sealed).flip();
    // Always behind the last whole piece: what a full disk left of one is written over.
    while (piece.hasRemaining()) {
      channel.write(piece, end + piece.position());
    }
    end += piece.limit();
    pieces++;
    written += waits;
    waits = 0;
  }

  @Override
  public int length() {
    return written + waits;
  }

  @Override
  public void force() throws IOException {
    flush();
    channel.force(true);
  }

  @Override
  public void close() throws IOException {
    Arrays.fill(waiting, (short) 0);
    channel.close();
  }

  private static ByteBuffer littleEndian(int capacity) {
    return ByteBuffer.allocate(capacity).order(ByteOrder.LITTLE_ENDIAN);
  }
}
