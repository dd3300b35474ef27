package tiptoe.audio;

import java.util.Arrays;

/** The level of the last tenth of a second, for a display. */
final class LevelMeter {
  private final short[] window = new short[Pcm.RATE / 10];
  private int held;
  private volatile Level level = Level.of();

  synchronized void add(short[] samples) {
    for (short sample : samples) {
      window[held++] = sample;
      if (held == window.length) {
        level = Level.of(window);
        held = 0;
      }
    }
  }

  synchronized void reset() {
    Arrays.fill(window, (short) 0);
    held = 0;
    level = Level.of();
  }

  Level level() {
    return level;
  }
}
