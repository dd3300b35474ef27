package tiptoe.audio;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioFormat.Encoding;

/**
 * Turns frames of bytes into mono amplitudes from −1 to 1: integers of 8 to 32 bits, floats of 32
 * or 64, either byte order, any number of channels, which are averaged.
 */
final class SampleDecoder {
  private final AudioFormat format;
  private final int channels;
  private final int width;

  SampleDecoder(AudioFormat format) {
    this.format = format;
    channels = format.getChannels();
    width = format.getFrameSize() / channels;
  }

  /** Whether this class knows the encoding; others must be converted first. */
  static boolean knows(AudioFormat format) {
    int channels = format.getChannels();
    if (channels < 1 || format.getFrameSize() < channels || format.getFrameSize() % channels != 0) {
      return false;
    }
    int width = format.getFrameSize() / channels;
    Encoding encoding = format.getEncoding();
    return encoding.equals(Encoding.PCM_FLOAT)
        ? width == Float.BYTES || width == Double.BYTES
        : isInteger(encoding) && width <= Integer.BYTES;
  }

  private static boolean isInteger(Encoding encoding) {
    return encoding.equals(Encoding.PCM_SIGNED) || encoding.equals(Encoding.PCM_UNSIGNED);
  }

  /** The whole frames among the first {@code length} bytes, as mono amplitudes. */
  float[] decode(byte[] bytes, int length) {
    ByteBuffer buffer =
        ByteBuffer.wrap(bytes, 0, length)
            .order(format.isBigEndian() ? ByteOrder.BIG_ENDIAN : ByteOrder.LITTLE_ENDIAN);
    float[] mono = new float[length / (channels * width)];
    for (int frame = 0; frame < mono.length; frame++) {
      double sum = 0;
      for (int channel = 0; channel < channels; channel++) {
        sum += amplitude(buffer, (frame * channels + channel) * width);
      }
      mono[frame] = (float) (sum / channels);
    }
    return mono;
  }

  private double amplitude(ByteBuffer buffer, int at) {
    if (format.getEncoding().equals(Encoding.PCM_FLOAT)) {
      double value = width == Float.BYTES ? buffer.getFloat(at) : buffer.getDouble(at);
      // One sample that is not a number would spoil a whole filter length around it.
      return Double.isFinite(value) ? Math.max(-1, Math.min(1, value)) : 0;
    }
    return integer(buffer, at) / (double) (1L << (8 * width - 1));
  }

  private long integer(ByteBuffer buffer, int at) {
    long value = 0;
    for (int i = 0; i < width; i++) {
      int offset = format.isBigEndian() ? i : width - 1 - i;
      value = value << 8 | (buffer.get(at + offset) & 0xFF);
    }
    long half = 1L << (8 * width - 1);
    boolean signed = format.getEncoding().equals(Encoding.PCM_SIGNED);
    return signed ? (value ^ half) - half : value - half;
  }
}
