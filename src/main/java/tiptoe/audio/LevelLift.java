package tiptoe.audio;

import java.util.Arrays;

/**
 * Brings up sound that was recorded far too low, as by a microphone whose level is turned down. It
 * goes by the loudest of the last minute: beside anything that is loud enough, nothing is brought
 * up, and then sound comes out to the last bit as it went in. The levels are common practice, no
 * source.
 */
public final class LevelLift {
  /** Samples over which one level is taken: 30 ms. */
  public static final int BLOCK = 3 * Pcm.RATE / 100;

  /** Where the loudest is at least so loud, sound is left alone, in dB of {@link Level}. */
  private static final double LOUD_ENOUGH = -32;

  /** To where the loudest is brought up, in dB. */
  private static final double WANTED = -22;

  /** Most that sound is brought up by, in dB: beyond, 16 bits hold little of speech. */
  private static final double MOST = 34;

  /** What is as faint as this is a quiet room, in dB. */
  private static final double SILENCE = -72;

  /** How long the loudest counts, in blocks: a second is one block of this clock. */
  private static final int SECONDS = 60;

  private static final int BLOCKS_PER_SECOND = Pcm.RATE / BLOCK;

  private final double[] loudest = new double[SECONDS];
  private long blocks;

  public LevelLift() {
    Arrays.fill(loudest, Level.SILENCE);
  }

  /** Takes the next sound, at most {@link #BLOCK} samples, and changes it in place. */
  public void apply(short[] samples) {
    int second = (int) (blocks / BLOCKS_PER_SECOND % SECONDS);
    if (blocks++ % BLOCKS_PER_SECOND == 0) {
      loudest[second] = Level.SILENCE;
    }
    loudest[second] = Math.max(loudest[second], Level.of(samples).rmsDb());
    double gain = Level.amplitude(gainDb());
    for (int i = 0; gain > 1 && i < samples.length; i++) {
      samples[i] =
          (short)
              Math.max(Short.MIN_VALUE, Math.min(Short.MAX_VALUE, Math.round(gain * samples[i])));
    }
  }

  /** By how much sound is brought up now, in dB. */
  double gainDb() {
    double level = Level.SILENCE;
    for (double one : loudest) {
      level = Math.max(level, one);
    }
    return level >= LOUD_ENOUGH || level < SILENCE ? 0 : Math.min(MOST, WANTED - level);
  }
}
