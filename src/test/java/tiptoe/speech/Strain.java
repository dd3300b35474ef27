package tiptoe.speech;

import com.sun.management.OperatingSystemMXBean;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import tiptoe.audio.AudioFile;
import tiptoe.audio.Pcm;

/** Sounds that are hard on a recogniser, and what they cost it. */
final class Strain {
  private static final int PIECE = Pcm.RATE / 10;
  private static final double PIECE_SECONDS = (double) PIECE / Pcm.RATE;

  /** Cores that the least machine has. */
  private static final int CORES = 2;

  private static final OperatingSystemMXBean SYSTEM =
      ManagementFactory.getPlatformMXBean(OperatingSystemMXBean.class);

  private Strain() {}

  /**
   * What a stretch of sound cost.
   *
   * @param longest the longest utterance, in seconds
   * @param behind how far hearing fell behind at worst, were the sound live and two cores its own:
   *     half the processor time of all threads beyond the length of the sound, in seconds
   * @param load processor time of all threads for each second of sound
   * @param heard how many utterances held a phrase
   */
  record Cost(double longest, double behind, double load, int heard) {}

  /** Feeds a sound so many times over, as a microphone would. */
  static Cost of(SpeechModel model, Pcm sound, int times) {
    double longest = 0;
    double behind = 0;
    double worst = 0;
    long total = 0;
    int heard = 0;
    try (Recogniser recogniser = model.recogniser()) {
      for (int at = 0; at < times * sound.samples().length; at += PIECE) {
        long start = SYSTEM.getProcessCpuTime();
        int from = at % sound.samples().length;
        int length = Math.min(PIECE, sound.samples().length - from);
        List<Hypothesis> ended = recogniser.accept(sound.samples(), from, length);
        recogniser.partial();
        long spent = SYSTEM.getProcessCpuTime() - start;
        total += spent;
        behind = Math.max(0, behind + spent / 1e9 / CORES - PIECE_SECONDS);
        worst = Math.max(worst, behind);
        for (Hypothesis utterance : ended) {
          longest = Math.max(longest, utterance.end() - utterance.start());
          heard += utterance.hasPhrase() ? 1 : 0;
        }
      }
    }
    return new Cost(longest, worst, total / 1e9 / (times * sound.seconds()), heard);
  }

  /** Memory that the process holds now, native memory too, in MB; 0 where that is not told. */
  static long residentMegabytes() throws IOException {
    Path status = Path.of("/proc/self/status");
    if (!Files.exists(status)) {
      return 0;
    }
    System.gc();
    return Files.readAllLines(status).stream()
            .filter(line -> line.startsWith("VmRSS"))
            .mapToLong(line -> Long.parseLong(line.replaceAll("\\D", "")))
            .sum()
        / 1024;
  }

  /** Several people who read out phrases, each without a pause, over one another. */
  static Pcm babble(double seconds, int people) throws IOException {
    double[] sum = new double[(int) (seconds * Pcm.RATE)];
    for (int person = 0; person < people; person++) {
      List<Clips.Clip> clips = new ArrayList<>(Clips.all());
      Collections.shuffle(clips, new Random(person));
      int at = 0;
      for (int i = 0; at < sum.length; i = (i + 1) % clips.size()) {
        short[] said = spoken(AudioFile.read(clips.get(i).file()));
        for (int j = 0; j < said.length && at < sum.length; j++) {
          sum[at++] += said[j];
        }
      }
    }
    return pcm(sum, 1);
  }

  /** A clip without the quiet around it. */
  static short[] spoken(Pcm clip) {
    short[] samples = clip.samples();
    int from = 0;
    int to = samples.length;
    while (from < to && Math.abs(samples[from]) < 500) {
      from++;
    }
    while (to > from && Math.abs(samples[to - 1]) < 500) {
      to--;
    }
    return Arrays.copyOfRange(samples, from, to);
  }

  static Pcm whiteNoise(double seconds, double rms) {
    Random random = new Random(1);
    double[] noise = new double[(int) (seconds * Pcm.RATE)];
    for (int i = 0; i < noise.length; i++) {
      noise[i] = rms * random.nextGaussian();
    }
    return pcm(noise, 1);
  }

  /** Cries of a second each: a gliding pitch about 450 Hz with its overtones. */
  static Pcm cry(double seconds) {
    double[] wave = new double[(int) (seconds * Pcm.RATE)];
    double phase = 0;
    for (int i = 0; i < wave.length; i++) {
      double cry = i / (double) Pcm.RATE % 1.4;
      double loud = cry < 1 ? Math.sin(Math.PI * cry) : 0;
      double pitch = 380 + 140 * loud + 8 * Math.sin(2 * Math.PI * 6 * cry);
      phase += 2 * Math.PI * pitch / Pcm.RATE;
      for (int overtone = 1; overtone <= 12; overtone++) {
        wave[i] += loud * Math.sin(overtone * phase) / overtone;
      }
    }
    return pcm(wave, 6000);
  }

  private static Pcm pcm(double[] wave, double gain) {
    short[] samples = new short[wave.length];
    for (int i = 0; i < wave.length; i++) {
      double sample = Math.rint(gain * wave[i]);
      samples[i] = (short) Math.max(Short.MIN_VALUE, Math.min(Short.MAX_VALUE, sample));
    }
    return Pcm.of(samples);
  }
}
