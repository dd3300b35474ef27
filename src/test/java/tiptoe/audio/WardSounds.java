package tiptoe.audio;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;

/**
 * Sounds of a postnatal ward, made up: shapes and rates are common knowledge, no source. All come
 * at about −26 dB; whoever mixes them sets their level.
 */
public final class WardSounds {
  private static final double LEVEL_DB = -26;

  private WardSounds() {}

  /** All of them by name. */
  public static Map<String, Pcm> all(double seconds, long seed) {
    Map<String, Pcm> sounds = new TreeMap<>();
    sounds.put("monitor-beeps", monitorBeeps(seconds, 140));
    sounds.put("air-flow", airFlow(seconds, seed));
    sounds.put("doors", doors(seconds, seed));
    sounds.put("hum", hum(seconds, 50));
    return sounds;
  }

  /** Writes all of them into a folder as {@code NAME.wav}, for measuring with noise. */
  public static void writeAll(Path folder, double seconds, long seed) throws IOException {
    Files.createDirectories(folder);
    for (Map.Entry<String, Pcm> sound : all(seconds, seed).entrySet()) {
      AudioFile.write(folder.resolve(sound.getKey() + ".wav"), sound.getValue());
    }
  }

  /** A pulse oximeter: a note of 660 Hz with three harmonics, 80 ms, at each heart beat. */
  public static Pcm monitorBeeps(double seconds, double beatsPerMinute) {
    double[] wave = new double[Pcm.samples(seconds)];
    double period = 60 / beatsPerMinute;
    for (int i = 0; i < wave.length; i++) {
      double time = (double) i / Pcm.RATE;
      double inBeat = time % period;
      if (inBeat < 0.08) {
        double envelope = Math.sin(Math.PI * inBeat / 0.08);
        for (int harmonic = 1; harmonic <= 4; harmonic++) {
          wave[i] += envelope * Math.sin(2 * Math.PI * 660 * harmonic * time) / harmonic;
        }
      }
    }
    return levelled(wave);
  }

  /** Air or oxygen: hiss that falls by 3 dB an octave (Kellet's pink noise filter). */
  public static Pcm airFlow(double seconds, long seed) {
    Random random = new Random(seed);
    double[] wave = new double[Pcm.samples(seconds)];
    double slow = 0;
    double middle = 0;
    double fast = 0;
    for (int i = 0; i < wave.length; i++) {
      double white = random.nextGaussian();
      slow = 0.99765 * slow + white * 0.0990460;
      middle = 0.96300 * middle + white * 0.2965164;
      fast = 0.57000 * fast + white * 1.0526913;
      wave[i] = slow + middle + fast + white * 0.1848;
    }
    return levelled(wave);
  }

  /** A door that falls shut every 2 to 5 s: a thud near 90 Hz and the click of the latch. */
  public static Pcm doors(double seconds, long seed) {
    Random random = new Random(seed);
    double[] wave = new double[Pcm.samples(seconds)];
    for (double at = 0.3; at < seconds; at += 2 + 3 * random.nextDouble()) {
      int start = Pcm.samples(at);
      for (int i = start; i < wave.length && i < start + Pcm.RATE / 2; i++) {
        double time = (double) (i - start) / Pcm.RATE;
        double thud = Math.exp(-time / 0.08) * Math.sin(2 * Math.PI * 90 * time);
        double click = Math.exp(-time / 0.004) * random.nextGaussian();
        wave[i] += thud + 0.5 * click;
      }
    }
    return levelled(wave);
  }

  /** The mains and its harmonics, each weaker than the one before. */
  public static Pcm hum(double seconds, double hertz) {
    double[] wave = new double[Pcm.samples(seconds)];
    for (int i = 0; i < wave.length; i++) {
      for (int harmonic = 1; harmonic <= 6; harmonic++) {
        wave[i] += Math.sin(2 * Math.PI * hertz * harmonic * i / Pcm.RATE) / (harmonic * harmonic);
      }
    }
    return levelled(wave);
  }

  /** Sound turned up by so many dB and cut off at full scale. */
  public static Pcm clipped(Pcm pcm, double gainDb) {
    return changed(pcm, Level.amplitude(gainDb), 0);
  }

  /** Sound turned down by so many dB. */
  public static Pcm quieter(Pcm pcm, double byDb) {
    return changed(pcm, Level.amplitude(-byDb), 0);
  }

  /** Sound with a constant added, as by a bad sound card; −1 to 1. */
  public static Pcm withOffset(Pcm pcm, double offset) {
    return changed(pcm, 1, offset);
  }

  private static Pcm changed(Pcm pcm, double gain, double offset) {
    short[] samples = new short[pcm.samples().length];
    for (int i = 0; i < samples.length; i++) {
      samples[i] = Pcm.toSample(gain * pcm.samples()[i] / Pcm.FULL_SCALE + offset);
    }
    return new Pcm(samples, pcm.sampleRate());
  }

  private static Pcm levelled(double[] wave) {
    double energy = 0;
    for (double value : wave) {
      energy += value * value;
    }
    double gain = Level.amplitude(LEVEL_DB) / Math.sqrt(energy / wave.length);
    short[] samples = new short[wave.length];
    for (int i = 0; i < wave.length; i++) {
      samples[i] = Pcm.toSample(gain * wave[i]);
    }
    return Pcm.of(samples);
  }
}
