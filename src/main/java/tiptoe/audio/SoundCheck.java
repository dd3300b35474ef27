package tiptoe.audio;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * How well a sentence was recorded. The limits are common practice, no source; the nominal level of
 * speech, −26 dB, is that of ITU-T test signals.
 *
 * @param speechDb active level of the sentence, in dB of {@link Level}; {@link Level#SILENCE} where
 *     nothing was said
 * @param noiseDb level of what is heard beside it, in dB
 * @param clipped number of samples that were cut off
 */
public record SoundCheck(double speechDb, double noiseDb, int clipped) {
  private static final double QUIET_DB = -45;
  private static final double LOUD_DB = -12;
  private static final double NOISY_DB = 10;
  private static final double FAIR_DB = 20;
  private static final double BLOCK_SECONDS = 0.02;
  private static final double MARGIN_SECONDS = 0.15;

  /**
   * Measures a recording.
   *
   * @param from second at which the sentence begins
   * @param to second at which it ends; {@code from} where nothing was said
   */
  public static SoundCheck of(Pcm sound, double from, double to) {
    double speech = to > from ? SpeechLevel.of(sound.slice(from, to)).activeDb() : Level.SILENCE;
    return new SoundCheck(speech, noise(sound, from, to), sound.level().clipped());
  }

  // The median of the blocks outside the sentence: a single door or cough is not the noise here.
  private static double noise(Pcm sound, double from, double to) {
    int block = Pcm.samples(BLOCK_SECONDS);
    short[] samples = sound.samples();
    List<Double> levels = new ArrayList<>();
    for (int at = 0; at + block <= samples.length; at += block) {
      double second = (double) at / Pcm.RATE;
      boolean outside =
          second + BLOCK_SECONDS < from - MARGIN_SECONDS || second > to + MARGIN_SECONDS;
      if (outside || to <= from) {
        levels.add(Level.of(Arrays.copyOfRange(samples, at, at + block)).rmsDb());
      }
    }
    levels.sort(null);
    return levels.isEmpty() ? Level.SILENCE : levels.get(levels.size() / 2);
  }

  /** By how much the sentence stands out from the noise, in dB. */
  public double aboveNoiseDb() {
    return speechDb - noiseDb;
  }

  /** What would make it better, the most pressing first; none where it is good. */
  public List<String> advice() {
    List<String> advice = new ArrayList<>();
    if (speechDb <= Level.SILENCE) {
      return List.of("nothing was said that could be measured");
    }
    if (clipped > 0 || speechDb > LOUD_DB) {
      advice.add("too loud: hold the microphone further away, or turn the recording level down");
    } else if (speechDb < QUIET_DB) {
      advice.add(
          "too quiet: it is brought up before it is heard, but bring the microphone nearer, or turn"
              + " the recording level up");
    }
    if (aboveNoiseDb() < NOISY_DB) {
      advice.add("too noisy here: bring the microphone nearer to the mouth, or wear a headset");
    } else if (aboveNoiseDb() < FAIR_DB) {
      advice.add("some noise: it is heard better with the microphone nearer to the mouth");
    }
    return advice;
  }
}
