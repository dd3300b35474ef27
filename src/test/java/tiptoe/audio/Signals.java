package tiptoe.audio;

import java.util.Optional;
import java.util.Random;

/** Sounds with known properties. */
final class Signals {
  private Signals() {}

  static float[] sine(double hertz, int rate, double seconds, double amplitude) {
    float[] wave = new float[(int) Math.round(seconds * rate)];
    for (int i = 0; i < wave.length; i++) {
      wave[i] = (float) (amplitude * Math.sin(2 * Math.PI * hertz * i / rate));
    }
    return wave;
  }

  static Pcm tone(double hertz, double seconds, double amplitude) {
    return pcm(sine(hertz, Pcm.RATE, seconds, amplitude));
  }

  static Pcm noise(double seconds, double rms, long seed) {
    Random random = new Random(seed);
    float[] wave = new float[Pcm.samples(seconds)];
    for (int i = 0; i < wave.length; i++) {
      wave[i] = (float) (rms * random.nextGaussian());
    }
    return pcm(wave);
  }

  static Pcm pcm(float[] wave) {
    short[] samples = new short[wave.length];
    for (int i = 0; i < wave.length; i++) {
      samples[i] = Pcm.toSample(wave[i]);
    }
    return Pcm.of(samples);
  }

  static double rms(float[] wave, int from, int to) {
    double energy = 0;
    for (int i = from; i < to; i++) {
      energy += (double) wave[i] * wave[i];
    }
    return Math.sqrt(energy / (to - from));
  }

  /** A source of silent chunks of the given lengths. */
  static SampleSource chunks(int... lengths) {
    return new SampleSource() {
      private int index;
      private long position;

      @Override
      public Optional<Chunk> next() {
        if (index == lengths.length) {
          return Optional.empty();
        }
        Chunk chunk = new Chunk(position, 0, new short[lengths[index++]]);
        position = chunk.end();
        return Optional.of(chunk);
      }

      @Override
      public void end() {
        index = lengths.length;
      }

      @Override
      public void close() {
        end();
      }
    };
  }
}
