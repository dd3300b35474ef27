package tiptoe.audio;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;

/**
 * WAV files byte by byte, after Microsoft's and IBM's Multimedia Programming Interface (1991) and,
 * for WAVE_FORMAT_EXTENSIBLE, Microsoft's Multiple Channel Audio Data and WAVE Files (2001).
 */
final class WavBytes {
  static final int PCM = 1;
  static final int FLOAT = 3;

  private WavBytes() {}

  /** Interleaved amplitudes, −1 to 1, in the given coding. */
  static byte[] samples(float[] interleaved, int tag, int bits) {
    ByteBuffer out = littleEndian(interleaved.length * bits / 8);
    for (float amplitude : interleaved) {
      if (tag == FLOAT) {
        out = bits == 32 ? out.putFloat(amplitude) : out.putDouble(amplitude);
      } else {
        long top = (1L << (bits - 1)) - 1;
        long value = Math.round(amplitude * top) + (bits == 8 ? 128 : 0);
        for (int i = 0; i < bits / 8; i++) {
          out.put((byte) (value >> (8 * i)));
        }
      }
    }
    return out.array();
  }

  static byte[] plain(int tag, int bits, int channels, int rate, byte[] data) {
    return riff(format(tag, bits, channels, rate), data, data.length);
  }

  static byte[] extensible(int tag, int bits, int channels, int rate, byte[] data) {
    ByteBuffer format = littleEndian(40).put(format(0xFFFE, bits, channels, rate));
    format.putShort((short) 22).putShort((short) bits).putInt((1 << channels) - 1);
    format.putInt(tag).putShort((short) 0).putShort((short) 16);
    format.put(new byte[] {(byte) 0x80, 0, 0, (byte) 0xAA, 0, 0x38, (byte) 0x9B, 0x71});
    return riff(format.array(), data, data.length);
  }

  /** A file whose header promises so many bytes of sound, whatever the data. */
  static byte[] riff(byte[] format, byte[] data, int promised) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    out.writeBytes(ascii("RIFF"));
    out.writeBytes(int32(20 + format.length + promised));
    out.writeBytes(ascii("WAVEfmt "));
    out.writeBytes(int32(format.length));
    out.writeBytes(format);
    out.writeBytes(ascii("data"));
    out.writeBytes(int32(promised));
    out.writeBytes(data);
    return out.toByteArray();
  }

  static byte[] format(int tag, int bits, int channels, int rate) {
    int frame = channels * bits / 8;
    return littleEndian(16)
        .putShort((short) tag)
        .putShort((short) channels)
        .putInt(rate)
        .putInt(rate * frame)
        .putShort((short) frame)
        .putShort((short) bits)
        .array();
  }

  private static byte[] int32(int value) {
    return littleEndian(4).putInt(value).array();
  }

  private static byte[] ascii(String text) {
    return text.getBytes(StandardCharsets.US_ASCII);
  }

  private static ByteBuffer littleEndian(int capacity) {
    return ByteBuffer.allocate(capacity).order(ByteOrder.LITTLE_ENDIAN);
  }
}
