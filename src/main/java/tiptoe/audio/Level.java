package tiptoe.audio;

import java.util.Locale;

/**
 * How loud a stretch of sound is. Decibels count from full scale as ITU-T G.100.1 defines dBov: a
 * square wave that fills the range is 0, a sine that fills it −3.01.
 *
 * @param rmsDb root mean square over the whole stretch, in dB; {@link #SILENCE} for digital silence
 * @param peakDb largest amplitude, in dB; {@link #SILENCE} for digital silence
 * @param clipped number of samples at the end of the range, where the sound was cut off
 */
public record Level(double rmsDb, double peakDb, int clipped) {
  /** Level of digital silence: below anything that 16 bits hold. */
  public static final double SILENCE = -120;

  /** The level of so many samples; an empty stretch is silent. */
  public static Level of(short... samples) {
    double energy = 0;
    int peak = 0;
    int clipped = 0;
    for (short sample : samples) {
      int size = Math.abs(sample);
      energy += (double) size * size;
      peak = Math.max(peak, size);
      if (size >= Short.MAX_VALUE) {
        clipped++;
      }
    }
    double rms = samples.length == 0 ? 0 : Math.sqrt(energy / samples.length);
    return new Level(
        decibels(rms / Pcm.FULL_SCALE), decibels((double) peak / Pcm.FULL_SCALE), clipped);
  }

  /** Whether every sample is zero: a muted or unplugged microphone, never a quiet room. */
  public boolean isSilent() {
    return peakDb <= SILENCE;
  }

  /** Whether sound was cut off because it was too loud. */
  public boolean isClipping() {
    return clipped > 0;
  }

  /** An amplitude ratio in dB, no lower than {@link #SILENCE}. */
  static double decibels(double amplitude) {
    return amplitude <= 0 ? SILENCE : Math.max(SILENCE, 20 * Math.log10(amplitude));
  }

  /** The amplitude ratio of a level in dB. */
  static double amplitude(double decibels) {
    return Math.pow(10, decibels / 20);
  }

  @Override
  public String toString() {
    return String.format(Locale.ROOT, "%.1f dB, peak %.1f dB, %d clipped", rmsDb, peakDb, clipped);
  }
}
