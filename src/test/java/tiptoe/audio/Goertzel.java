package tiptoe.audio;

/** Strength of single frequencies in a stretch of sound, by the Goertzel algorithm. */
final class Goertzel {
  private Goertzel() {}

  /**
   * Amplitude of a sine of the given frequency, 1 for a full-scale one; Hann-windowed, so that
   * other frequencies do not leak in.
   */
  static double amplitude(Pcm pcm, double hertz) {
    short[] samples = pcm.samples();
    double omega = 2 * Math.PI * hertz / pcm.sampleRate();
    double coefficient = 2 * Math.cos(omega);
    double before = 0;
    double last = 0;
    double weights = 0;
    for (int i = 0; i < samples.length; i++) {
      double window = 0.5 - 0.5 * Math.cos(2 * Math.PI * (i + 0.5) / samples.length);
      weights += window;
      double now = window * samples[i] / Pcm.FULL_SCALE + coefficient * last - before;
      before = last;
      last = now;
    }
    double power = last * last + before * before - coefficient * last * before;
    return 2 * Math.sqrt(Math.max(0, power)) / weights;
  }

  /** The same in dB below a full-scale sine. */
  static double decibels(Pcm pcm, double hertz) {
    return Level.decibels(amplitude(pcm, hertz));
  }
}
