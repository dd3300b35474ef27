package tiptoe.audio;

/**
 * Brings quiet and loud voices to a like level, gently: the gain follows the level of what stands
 * out from the background, moves a few dB a second at most, rests in pauses, and soon takes steady
 * noise for background. A limiter without look-ahead keeps sudden loud sounds from being cut off.
 * The constants are common practice, no source.
 */
public final class LevelControl implements SampleFilter {
  /** The active level that voices are brought to, in dB: the nominal one of ITU-T test speech. */
  public static final double TARGET_DB = -26;

  private static final double MOST_GAIN_DB = 18;
  private static final double LEAST_GAIN_DB = -12;

  private static final int BLOCK = Pcm.RATE / 100;
  private static final double BLOCK_SECONDS = 0.01;
  private static final double SLEW_DB = 4 * BLOCK_SECONDS;
  private static final double FLOOR_RISE_DB = 2 * BLOCK_SECONDS;
  private static final double SMOOTHING = BLOCK_SECONDS / 1.5;

  /** What is less than this above the background, or below the least, is not a voice. */
  private static final double VOICE_ABOVE_FLOOR_DB = 10;

  private static final double LEAST_VOICE_DB = -65;

  /** Not lower, or a moment of digital silence would make a voice of all that follows. */
  private static final double LOWEST_FLOOR_DB = -70;

  private static final double CEILING = 0.9;
  private static final double LIMITER_RELEASE = 1.0 / (0.2 * Pcm.RATE);

  private double energy;
  private int held;
  private double floorDb = 0;
  private double voicePower = Math.pow(10, TARGET_DB / 10);
  private double gainDb;
  private double gain = 1;
  private double reduction = 1;

  @Override
  public short[] apply(short[] samples) {
    short[] controlled = new short[samples.length];
    for (int i = 0; i < samples.length; i++) {
      double amplitude = (double) samples[i] / Pcm.FULL_SCALE;
      controlled[i] = Pcm.toSample(limit(amplitude * gain));
      energy += amplitude * amplitude;
      if (++held == BLOCK) {
        follow(energy / BLOCK);
        energy = 0;
        held = 0;
      }
    }
    return controlled;
  }

  /** The gain now, in dB. */
  public double gainDb() {
    return gainDb;
  }

  private void follow(double power) {
    double level = Level.decibels(Math.sqrt(power));
    floorDb = Math.max(LOWEST_FLOOR_DB, Math.min(level, floorDb + FLOOR_RISE_DB));
    if (level < Math.max(LEAST_VOICE_DB, floorDb + VOICE_ABOVE_FLOOR_DB)) {
      return;
    }
    voicePower += SMOOTHING * (power - voicePower);
    double wanted = TARGET_DB - 10 * Math.log10(voicePower);
    double bounded = Math.max(LEAST_GAIN_DB, Math.min(MOST_GAIN_DB, wanted));
    gainDb += Math.max(-SLEW_DB, Math.min(SLEW_DB, bounded - gainDb));
    gain = Level.amplitude(gainDb);
  }

  private double limit(double amplitude) {
    reduction += LIMITER_RELEASE * (1 - reduction);
    double size = Math.abs(amplitude) * reduction;
    if (size > CEILING) {
      reduction *= CEILING / size;
    }
    return amplitude * reduction;
  }
}
