package tiptoe.audio;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;

/**
 * Writes a mono 16-bit WAV as the samples come. The header's lengths are brought up to date with
 * every append, so that the file is whole at any moment. A file holds at most 2 GB.
 */
final class WavWriter implements SegmentWriter {
  static final int HEADER_BYTES = 44;
  private static final int PCM_TAG = 1;
  private static final int RIFF_LENGTH_AT = 4;
  private static final int DATA_LENGTH_AT = 40;

  private final FileChannel channel;
  private int dataBytes;

  private WavWriter(FileChannel channel) {
    this.channel = channel;
  }

  /** Creates the file, or empties it. */
  static WavWriter create(Path file, int sampleRate) throws IOException {
    return to(
        FileChannel.open(
            file,
            StandardOpenOption.CREATE,
            StandardOpenOption.TRUNCATE_EXISTING,
            StandardOpenOption.WRITE),
        sampleRate);
  }

  /** Writes to an empty file that is already open; the writer closes it. */
  static WavWriter to(FileChannel channel, int sampleRate) throws IOException {
    WavWriter writer = new WavWriter(channel);
    try {
      writer.writeAll(header(sampleRate), 0);
    } catch (IOException e) {
      channel.close();
      throw e;
    }
    return writer;
  }

  @Override
  public void append(short[] samples) throws IOException {
    ByteBuffer bytes = littleEndian(samples.length * Short.BYTES);
    bytes.asShortBuffer().put(samples);
    int grown = Math.addExact(dataBytes, bytes.capacity());
    writeAll(bytes, HEADER_BYTES + (long) dataBytes);
    dataBytes = grown;
    writeAll(littleEndian(Integer.BYTES).putInt(0, HEADER_BYTES - 8 + dataBytes), RIFF_LENGTH_AT);
    writeAll(littleEndian(Integer.BYTES).putInt(0, dataBytes), DATA_LENGTH_AT);
  }

  @Override
  public int length() {
    return dataBytes / Short.BYTES;
  }

  @Override
  public void force() throws IOException {
    channel.force(true);
  }

  @Override
  public void close() throws IOException {
    channel.close();
  }

  private static ByteBuffer header(int sampleRate) {
    ByteBuffer header = littleEndian(HEADER_BYTES);
    header.put(ascii("RIFF")).putInt(HEADER_BYTES - 8).put(ascii("WAVE"));
    header.put(ascii("fmt ")).putInt(16).putShort((short) PCM_TAG).putShort((short) 1);
    header.putInt(sampleRate).putInt(sampleRate * Short.BYTES);
    header.putShort((short) Short.BYTES).putShort((short) Short.SIZE);
    return header.put(ascii("data")).putInt(0).flip();
  }

  private void writeAll(ByteBuffer bytes, long position) throws IOException {
    long at = position;
    while (bytes.hasRemaining()) {
      at += channel.write(bytes, at);
    }
  }

  private static ByteBuffer littleEndian(int capacity) {
    return ByteBuffer.allocate(capacity).order(ByteOrder.LITTLE_ENDIAN);
  }

  private static byte[] ascii(String text) {
    return text.getBytes(StandardCharsets.US_ASCII);
  }
}
