package tiptoe.audio;

import java.util.Arrays;

/**
 * The level of speech while someone speaks, without the pauses: method B of ITU-T Recommendation
 * P.56 (12/2011), with that text's constants. Decibels count as in {@link Level}.
 *
 * @param activeDb level over the active time, in dB; {@link Level#SILENCE} if nothing is active
 * @param activity share of the time that is active, 0 to 1
 * @param longTermDb level over the whole time, in dB
 */
public record SpeechLevel(double activeDb, double activity, double longTermDb) {
  private static final double TIME_CONSTANT_SECONDS = 0.03;
  private static final double HANGOVER_SECONDS = 0.2;
  private static final double MARGIN_DB = 15.9;

  /** Thresholds are the powers of two from 1 to half of full scale. */
  private static final int THRESHOLDS = 15;

  /** Measures a whole clip. */
  public static SpeechLevel of(Pcm pcm) {
    double longTerm = pcm.level().rmsDb();
    long[] active = activeSamples(pcm);
    double above = 0;
    double aboveMargin = 0;
    for (int j = 0; j < THRESHOLDS && active[j] > 0; j++) {
      double share = (double) active[j] / pcm.samples().length;
      double level = longTerm - 10 * Math.log10(share);
      double threshold = Level.decibels(Math.scalb(1.0, j) / Pcm.FULL_SCALE);
      double margin = level - threshold;
      if (margin <= MARGIN_DB) {
        double found =
            j == 0
                ? level
                : above + (level - above) * (aboveMargin - MARGIN_DB) / (aboveMargin - margin);
        return new SpeechLevel(found, Math.pow(10, (longTerm - found) / 10), longTerm);
      }
      above = level;
      aboveMargin = margin;
    }
    return new SpeechLevel(Level.SILENCE, 0, longTerm);
  }

  /** For each threshold, how many samples have the envelope at or lately above it. */
  private static long[] activeSamples(Pcm pcm) {
    double keep = Math.exp(-1 / (TIME_CONSTANT_SECONDS * pcm.sampleRate()));
    int hangover = (int) Math.ceil(HANGOVER_SECONDS * pcm.sampleRate());
    long[] active = new long[THRESHOLDS];
    int[] since = new int[THRESHOLDS];
    Arrays.fill(since, hangover);
    double smooth = 0;
    double envelope = 0;
    for (short sample : pcm.samples()) {
      smooth = keep * smooth + (1 - keep) * Math.abs(sample);
      envelope = keep * envelope + (1 - keep) * smooth;
      for (int j = 0; j < THRESHOLDS; j++) {
        since[j] = envelope >= 1 << j ? 0 : Math.min(since[j], hangover) + 1;
        if (since[j] <= hangover) {
          active[j]++;
        }
      }
    }
    return active;
  }
}
