package tiptoe.speech;

/** The last stretch of a stream of sound, long enough to hold the longest utterance. */
final class RecentSound {
  private final short[] ring;
  private long taken;

  /**
   * @param seconds how much of the past is kept
   */
  RecentSound(int seconds) {
    ring = new short[seconds * Recogniser.RATE];
  }

  void add(short[] samples) {
    for (short sample : samples) {
      ring[(int) (taken++ % ring.length)] = sample;
    }
  }

  /** Seconds of sound since the start. */
  double seconds() {
    return (double) taken / Recogniser.RATE;
  }

  /** The sound between two times in seconds since the start, as far as it is still here. */
  short[] between(double from, double to) {
    long first = Math.max(Math.round(from * Recogniser.RATE), Math.max(0, taken - ring.length));
    long last = Math.min(Math.round(to * Recogniser.RATE), taken);
    short[] stretch = new short[(int) Math.max(0, last - first)];
    for (int i = 0; i < stretch.length; i++) {
      stretch[i] = ring[(int) ((first + i) % ring.length)];
    }
    return stretch;
  }
}
