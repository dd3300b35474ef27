package tiptoe.audio;

import java.util.OptionalDouble;

/**
 * Follows the pitch of a cry from one spectrum to the next. In 1,836 cries of 172 healthy babies of
 * 1 to 7 days it was 496 ± 95 Hz, at its lowest 398 ± 75 and at its highest 583 ± 151 Hz
 * (Michelsson et al. 2002, doi 10.1159/000063190), where a speaker's is mostly 80 to 300 Hz (from
 * memory). A partial of a voice is seldom taken for a pitch, since the voice has others a third,
 * half or two thirds of the way to the next.
 */
final class CryPitch {
  private static final double LOWEST = 330;
  private static final double HIGHEST = 750;
  private static final double STEP = 4;

  /** Partials up to this are looked at, in Hz: recordings of 8 kHz have none beyond. */
  private static final double TOP = 3800;

  /** What each step of pitch from one spectrum to the next has to be worth. */
  private static final double STRIDE = 0.02;

  /** From so far above what is between them on, as natural logarithm, partials are a cry's. */
  private static final double BEGINS = 1.6;

  /** A cry goes on as long as they are so far above. */
  private static final double GOES_ON = 0.7;

  private static final double[] BETWEEN = {1 / 3.0, 1 / 2.0, 2 / 3.0};
  private static final int PITCHES = (int) Math.ceil((HIGHEST - LOWEST) / STEP);

  private final int bins;
  private final int[][] partials = new int[PITCHES][];
  private final int[][] gaps = new int[PITCHES][];
  private final double[] clarity = new double[PITCHES];
  private final double[] cost = new double[PITCHES];
  private boolean crying;

  /**
   * @param bin distance of two amplitudes of a spectrum, in Hz
   */
  CryPitch(double bin) {
    bins = (int) Math.round(TOP / bin) + 1;
    for (int i = 0; i < PITCHES; i++) {
      double hertz = LOWEST + i * STEP;
      int most = (int) (TOP / hertz);
      partials[i] = new int[most];
      gaps[i] = new int[most * BETWEEN.length];
      for (int p = 0; p < most; p++) {
        partials[i][p] = (int) Math.round((p + 1) * hertz / bin);
        for (int g = 0; g < BETWEEN.length; g++) {
          gaps[i][p * BETWEEN.length + g] = (int) Math.round((p + 1 - BETWEEN[g]) * hertz / bin);
        }
      }
    }
  }

  /** How many amplitudes of a spectrum, from 0 Hz on, it looks at. */
  int bins() {
    return bins;
  }

  /**
   * The pitch of a cry, in Hz, or empty where there is none.
   *
   * @param logarithms natural logarithms of the spectrum's amplitudes, from 0 Hz on
   */
  OptionalDouble of(double[] logarithms) {
    int best = follow(logarithms);
    crying = clarity[best] > (crying ? GOES_ON : BEGINS);
    return crying ? OptionalDouble.of(LOWEST + best * STEP) : OptionalDouble.empty();
  }

  /** The likeliest pitch now, of all ways that pitch may have taken until now. */
  private int follow(double[] logarithms) {
    for (int i = 1; i < PITCHES; i++) {
      cost[i] = Math.min(cost[i], cost[i - 1] + STRIDE);
    }
    for (int i = PITCHES - 2; i >= 0; i--) {
      cost[i] = Math.min(cost[i], cost[i + 1] + STRIDE);
    }
    int best = 0;
    for (int i = 0; i < PITCHES; i++) {
      clarity[i] = mean(logarithms, partials[i]) - mean(logarithms, gaps[i]);
      cost[i] -= clarity[i];
      best = cost[i] < cost[best] ? i : best;
    }
    double least = cost[best];
    for (int i = 0; i < PITCHES; i++) {
      cost[i] -= least;
    }
    return best;
  }

  private static double mean(double[] values, int[] at) {
    double sum = 0;
    for (int i : at) {
      sum += values[i];
    }
    return sum / at.length;
  }
}
