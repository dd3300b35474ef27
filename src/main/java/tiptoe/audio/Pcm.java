package tiptoe.audio;

import java.util.Arrays;

/**
 * A stretch of mono 16-bit sound. The array is not copied: whoever makes a Pcm gives it away.
 *
 * @param samples amplitudes, −32768 to 32767
 * @param sampleRate samples a second, at least 1
 */
public record Pcm(short[] samples, int sampleRate) {
  /** The rate of all sound between the stages, in Hz. */
  public static final int RATE = 16_000;

  /** Full scale: the amplitude that counts as 0 dB. */
  static final int FULL_SCALE = 32_768;

  public Pcm {
    if (sampleRate < 1) {
      throw new IllegalArgumentException(
          "expected a sample rate of at least 1 Hz, found " + sampleRate);
    }
  }

  /** Sound at the rate used between the stages, 16 kHz. */
  public static Pcm of(short... samples) {
    return new Pcm(samples, RATE);
  }

  /** Silence at 16 kHz, its length in seconds. */
  public static Pcm silence(double seconds) {
    return of(new short[samples(seconds)]);
  }

  /** All parts one behind the other; all must have the same rate. */
  public static Pcm join(Pcm first, Pcm... others) {
    int length = first.samples.length;
    for (Pcm other : others) {
      first.requireSameRate(other);
      length += other.samples.length;
    }
    short[] all = Arrays.copyOf(first.samples, length);
    int at = first.samples.length;
    for (Pcm other : others) {
      System.arraycopy(other.samples, 0, all, at, other.samples.length);
      at += other.samples.length;
    }
    return new Pcm(all, first.sampleRate);
  }

  /** The number of samples in so many seconds at 16 kHz, rounded. */
  static int samples(double seconds) {
    return Math.toIntExact(Math.round(seconds * RATE));
  }

  /** The amplitude, −1 to 1, as a sample: rounded, and limited to what 16 bits hold. */
  static short toSample(double amplitude) {
    long rounded = Math.round(amplitude * FULL_SCALE);
    return (short) Math.max(Short.MIN_VALUE, Math.min(Short.MAX_VALUE, rounded));
  }

  /** Length in seconds. */
  public double seconds() {
    return (double) samples.length / sampleRate;
  }

  /** The stretch between two times in seconds, cut to what there is. */
  public Pcm slice(double from, double to) {
    int start = clamp(Math.round(from * sampleRate));
    int end = Math.max(start, clamp(Math.round(to * sampleRate)));
    return new Pcm(Arrays.copyOfRange(samples, start, end), sampleRate);
  }

  /** How loud it is. */
  public Level level() {
    return Level.of(samples);
  }

  void requireSameRate(Pcm other) {
    if (other.sampleRate != sampleRate) {
      throw new IllegalArgumentException(
          "expected sound at " + sampleRate + " Hz, found " + other.sampleRate + " Hz");
    }
  }

  private int clamp(long index) {
    return (int) Math.max(0, Math.min(samples.length, index));
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Pcm that
        && that.sampleRate == sampleRate
        && Arrays.equals(that.samples, samples);
  }

  @Override
  public int hashCode() {
    return 31 * sampleRate + Arrays.hashCode(samples);
  }

  @Override
  public String toString() {
    return "Pcm[" + samples.length + " samples at " + sampleRate + " Hz]";
  }
}
