package tiptoe.cli;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import java.util.stream.Stream;
import tiptoe.audio.AudioFile;
import tiptoe.audio.Chunk;
import tiptoe.audio.PacedSource;
import tiptoe.audio.Pcm;
import tiptoe.audio.SampleSource;
import tiptoe.exam.Changes;
import tiptoe.exam.Heard;
import tiptoe.session.Dictation;
import tiptoe.session.Engine;
import tiptoe.session.ExamSession;
import tiptoe.session.Home;
import tiptoe.session.Sessions;
import tiptoe.session.Understanding;
import tiptoe.settings.Settings;
import tiptoe.speech.Hypothesis;

/**
 * Replays committed clips in real time, in pieces as a microphone gives them, and prints how long
 * after the end of a phrase its statement is there, and how long after its first word began, and
 * ended, the first words are. Run it with {@code mvn -q test-compile exec:java
 * -Dexec.classpathScope=test -Dexec.mainClass=tiptoe.cli.LatencyBenchmark -Dexec.args=3}; with
 * {@code -Dexec.args="3 counted"} no time passes: it counts when each piece would have come, and
 * the processor time that was spent on it, as a machine would take that does nothing else.
 */
public final class LatencyBenchmark {
  private static final Path CLIPS = Path.of("src/test/resources/tiptoe/speech/clips");
  private static final int PIECE = Pcm.RATE / 50;
  private static final double PAUSE_SECONDS = 1.5;

  private final List<Double> statements = new ArrayList<>();
  private final List<Double> words = new ArrayList<>();
  private final List<Double> wordEnds = new ArrayList<>();
  private long start;
  private double firstWord = -1;

  private final boolean counted;
  private double clock;
  private long spent;

  private LatencyBenchmark(boolean counted) {
    this.counted = counted;
  }

  /** Takes one number, 1 for all clips, 3 for every third; then possibly {@code counted}. */
  public static void main(String[] args) throws IOException {
    new LatencyBenchmark(args.length > 1 && args[1].equals("counted"))
        .run(args.length == 0 ? 3 : Integer.parseInt(args[0]));
  }

  private void run(int every) throws IOException {
    Home home = Home.locate();
    Understanding understanding = Understanding.load(home);
    ExamSession session = Sessions.inMemory(understanding);
    try (Engine engine = Engine.open(home, understanding, null, Settings.DEFAULT, System.out);
        SampleSource sound = sound(stream(every))) {
      new Dictation(engine, session, this::partial).listen(sound, 0, this::heard);
    }
    print("end of a phrase to its statement", statements);
    print("beginning of a phrase to its first word", words);
    print("end of its first word to that word", wordEnds);
  }

  private SampleSource sound(short[] samples) {
    SampleSource pieces = pieces(samples);
    return counted ? pieces : new PacedSource(pieces);
  }

  private double now() {
    return counted ? clock + (processor() - spent) / 1e9 : (System.nanoTime() - start) / 1e9;
  }

  /** A piece is taken up when it has come and all before it is done. */
  private void arrived(double seconds) {
    clock = Math.max(now(), seconds);
    spent = processor();
  }

  private static long processor() {
    return ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
  }

  private void partial(String text) {
    if (firstWord < 0 && !text.replace(Hypothesis.FILLER, "").isBlank()) {
      firstWord = now();
    }
  }

  private void heard(Changes changes) {
    if (changes.record().utterances().isEmpty()) {
      return;
    }
    Heard heard =
        changes.record().utterances().get(changes.record().utterances().size() - 1).heard();
    statements.add(now() - heard.end());
    if (firstWord >= 0) {
      words.add(firstWord - heard.start());
      wordEnds.add(firstWord - heard.words().get(0).end());
      firstWord = -1;
    }
  }

  private static void print(String what, List<Double> seconds) {
    double[] sorted = seconds.stream().mapToDouble(Double::doubleValue).sorted().toArray();
    System.out.printf(
        Locale.ROOT,
        "%-40s p50 %.2f s, p95 %.2f s, worst %.2f s (%d phrases)%n",
        what,
        sorted[sorted.length / 2],
        sorted[(int) (0.95 * (sorted.length - 1))],
        sorted[sorted.length - 1],
        sorted.length);
  }

  private static short[] stream(int every) throws IOException {
    Random random = new Random(1);
    List<Path> clips;
    try (Stream<Path> files = Files.list(CLIPS)) {
      clips = files.filter(file -> file.toString().endsWith(".wav")).sorted().toList();
    }
    Pcm all = room(random);
    for (int i = 0; i < clips.size(); i += every) {
      all = Pcm.join(all, AudioFile.read(clips.get(i)), room(random));
    }
    return all.samples();
  }

  private static Pcm room(Random random) {
    short[] quiet = new short[(int) (PAUSE_SECONDS * Pcm.RATE)];
    for (int i = 0; i < quiet.length; i++) {
      quiet[i] = (short) Math.round(8 * random.nextGaussian());
    }
    return Pcm.of(quiet);
  }

  private SampleSource pieces(short[] samples) {
    return new SampleSource() {
      private int at;

      @Override
      public Optional<Chunk> next() {
        if (at == 0) {
          start = System.nanoTime();
          spent = processor();
        }
        if (at >= samples.length) {
          return Optional.empty();
        }
        int end = Math.min(samples.length, at + PIECE);
        Chunk chunk = new Chunk(at, 0, Arrays.copyOfRange(samples, at, end));
        at = end;
        if (counted) {
          arrived((double) end / Pcm.RATE);
        }
        return Optional.of(chunk);
      }

      @Override
      public void end() {
        at = samples.length;
      }

      @Override
      public void close() {
        end();
      }
    };
  }
}
