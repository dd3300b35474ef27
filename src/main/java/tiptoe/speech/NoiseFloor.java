package tiptoe.speech;

import java.util.Random;

/**
 * The faint noise that every room and microphone has, for sound that lacks it: a telephone band has
 * nothing at all above 4 kHz, and digital silence nothing anywhere, of which the model makes
 * features it never met. One step of 16-bit noise, as in the model's training, but the same each
 * time, so that the same sound is heard the same.
 */
final class NoiseFloor {
  private static final byte[] STEPS = steps();

  private NoiseFloor() {}

  private static byte[] steps() {
    byte[] steps = new byte[1 << 16];
    Random random = new Random(1);
    for (int i = 0; i < steps.length; i++) {
      steps[i] = (byte) Math.round(random.nextGaussian());
    }
    return steps;
  }

  /**
   * Adds the noise in place.
   *
   * @param samples 16-bit sound
   * @param position of the first sample in the stream
   */
  static void under(short[] samples, long position) {
    for (int i = 0; i < samples.length; i++) {
      int sum = samples[i] + STEPS[(int) ((position + i) % STEPS.length)];
      samples[i] = (short) Math.max(Short.MIN_VALUE, Math.min(Short.MAX_VALUE, sum));
    }
  }
}
