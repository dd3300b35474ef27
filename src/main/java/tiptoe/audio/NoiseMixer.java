package tiptoe.audio;

import java.util.SplittableRandom;

/**
 * Mixes noise into speech at a given ratio: the speech by its active level (ITU-T P.56), the noise
 * by the root mean square of the stretch that is used. The same seed gives the same mixture.
 */
public final class NoiseMixer {
  /** A stretch this far below its recording is a pause: no noise to mix in. */
  private static final double PAUSE_DB = 10;

  private static final int TRIES = 50;

  private NoiseMixer() {}

  /**
   * Speech with a stretch of the noise behind it, from a random place; noise that is too short is
   * repeated. Where the sum would be cut off at full scale, both are turned down together.
   *
   * @param snrDb how far the speech is above the noise, in dB
   */
  public static Pcm mix(Pcm speech, Pcm noise, double snrDb, long seed) {
    speech.requireSameRate(noise);
    double speechDb = SpeechLevel.of(speech).activeDb();
    Pcm stretch = stretch(noise, speech.samples().length, seed);
    double noiseDb = stretch.level().rmsDb();
    if (speechDb <= Level.SILENCE || noiseDb <= Level.SILENCE) {
      throw new IllegalArgumentException(
          "expected sound on both sides, found "
              + (speechDb <= Level.SILENCE ? "silent speech" : "silent noise"));
    }
    return sum(speech, stretch, Level.amplitude(speechDb - snrDb - noiseDb));
  }

  private static Pcm stretch(Pcm noise, int length, long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    double least = noise.level().rmsDb() - PAUSE_DB;
    Pcm stretch = repeated(noise, 0, length);
    for (int i = 0; i < TRIES; i++) {
      stretch = repeated(noise, random.nextInt(Math.max(1, noise.samples().length)), length);
      if (stretch.level().rmsDb() >= least) {
        break;
      }
    }
    return stretch;
  }

  private static Pcm repeated(Pcm noise, int from, int length) {
    short[] source = noise.samples();
    short[] samples = new short[length];
    for (int i = 0; i < length && source.length > 0; i++) {
      samples[i] = source[(int) (((long) from + i) % source.length)];
    }
    return new Pcm(samples, noise.sampleRate());
  }

  private static Pcm sum(Pcm speech, Pcm noise, double gain) {
    double[] sum = new double[speech.samples().length];
    double peak = 1;
    for (int i = 0; i < sum.length; i++) {
      sum[i] = (speech.samples()[i] + gain * noise.samples()[i]) / Pcm.FULL_SCALE;
      peak = Math.max(peak, Math.abs(sum[i]));
    }
    short[] samples = new short[sum.length];
    for (int i = 0; i < sum.length; i++) {
      samples[i] = Pcm.toSample(sum[i] / peak);
    }
    return new Pcm(samples, speech.sampleRate());
  }
}
