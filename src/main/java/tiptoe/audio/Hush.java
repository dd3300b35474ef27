package tiptoe.audio;

import java.util.ArrayDeque;
import java.util.Collections;
import java.util.Deque;

/**
 * Tells that a speaker has paused, some tenths of a second before the decoder can: the sound has
 * fallen far below what it was just before. Beside talk or crying it never falls so far, so that
 * nothing is told there. Both figures are common practice in detecting speech by its energy.
 */
public final class Hush {
  /** Samples over which one level is taken: 50 ms. */
  private static final int BLOCK = Pcm.RATE / 20;

  /** Blocks that must be quiet: 0.15 s, longer than the closure of a stop consonant. */
  private static final int QUIET = 3;

  /** Blocks among which the loudest is looked for: 2 s. */
  private static final int BEFORE = 40;

  /** How far below the loudest block the quiet ones are, in dB. */
  private static final double FALL = 25;

  private final Deque<Double> levels = new ArrayDeque<>();
  private final short[] block = new short[BLOCK];
  private int filled;

  /** Takes the next sound, at 16 kHz. */
  public void take(short[] samples) {
    for (short sample : samples) {
      block[filled++] = sample;
      if (filled == BLOCK) {
        filled = 0;
        levels.addLast(Level.of(block).rmsDb());
        if (levels.size() > BEFORE) {
          levels.removeFirst();
        }
      }
    }
  }

  /** Whether the sound has been quiet for 0.15 s, after louder sound within 2 s. */
  public boolean isQuiet() {
    return levels.size() > QUIET
        && levels.stream().skip(levels.size() - QUIET).mapToDouble(one -> one).max().orElseThrow()
            <= Collections.max(levels) - FALL;
  }
}
