package tiptoe.audio;

/**
 * Takes out DC offset, mains hum and the rumble of doors and incubators, and leaves voices alone: a
 * Butterworth high-pass of fourth order, as two of the second-order sections of R.
 * Bristow-Johnson's Audio EQ Cookbook.
 */
public final class HighPass implements SampleFilter {
  /** Below any voice at the cot (a deep one begins near 85 Hz), above the hum of 50 or 60 Hz. */
  public static final double DEFAULT_HERTZ = 80;

  private final Section first;
  private final Section second;

  /** A filter that is 3 dB down at a frequency of 10 to 1000 Hz. */
  public HighPass(double hertz) {
    if (!(hertz >= 10 && hertz <= 1000)) {
      throw new IllegalArgumentException("expected 10 to 1000 Hz, found " + hertz + " Hz");
    }
    // The pole pairs of a fourth-order Butterworth: Q = 1 / (2 cos 22.5°) and 1 / (2 cos 67.5°).
    first = new Section(hertz, 1 / (2 * Math.cos(Math.PI / 8)));
    second = new Section(hertz, 1 / (2 * Math.cos(3 * Math.PI / 8)));
  }

  public HighPass() {
    this(DEFAULT_HERTZ);
  }

  @Override
  public short[] apply(short[] samples) {
    short[] filtered = new short[samples.length];
    for (int i = 0; i < samples.length; i++) {
      double amplitude = (double) samples[i] / Pcm.FULL_SCALE;
      filtered[i] = Pcm.toSample(second.next(first.next(amplitude)));
    }
    return filtered;
  }

  /** One second-order section, in transposed direct form II. */
  private static final class Section {
    private final double b0;
    private final double b1;
    private final double a1;
    private final double a2;
    private double state1;
    private double state2;

    Section(double hertz, double q) {
      double omega = 2 * Math.PI * hertz / Pcm.RATE;
      double alpha = Math.sin(omega) / (2 * q);
      double a0 = 1 + alpha;
      b0 = (1 + Math.cos(omega)) / 2 / a0;
      b1 = -2 * b0;
      a1 = -2 * Math.cos(omega) / a0;
      a2 = (1 - alpha) / a0;
    }

    double next(double in) {
      double out = b0 * in + state1;
      state1 = b1 * in - a1 * out + state2;
      state2 = b0 * in - a2 * out;
      return out;
    }
  }
}
