package tiptoe.cli;

import com.googlecode.lanterna.TerminalSize;
import com.googlecode.lanterna.terminal.virtual.DefaultVirtualTerminal;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import tiptoe.audio.AudioFile;
import tiptoe.audio.Pcm;
import tiptoe.exam.Changes;
import tiptoe.exam.journal.OpenExam;
import tiptoe.exam.journal.RecordStore;
import tiptoe.protocol.Protocol;
import tiptoe.screen.Look;
import tiptoe.screen.ScreenView;
import tiptoe.session.Engine;
import tiptoe.session.ExamSession;
import tiptoe.session.ExamView;
import tiptoe.session.Feedback;
import tiptoe.session.Home;
import tiptoe.session.Listening;
import tiptoe.session.Understanding;
import tiptoe.settings.Settings;
import tiptoe.wording.QuestionWording;

/**
 * Hours of one examination as fast as they can be heard: the invented examination again and again,
 * without the part that ends it, through recogniser, session, screen, journal and kept sound.
 * Prints memory and size each half hour. Run it with {@code mvn -q test-compile exec:java
 * -Dexec.classpathScope=test -Dexec.mainClass=tiptoe.cli.Soak -Dexec.args="8 6"}.
 */
public final class Soak {
  private static final double STEP_SECONDS = 1800;

  private Soak() {}

  /**
   * Takes the number of hours, and the minutes of a quiet room behind each examination, or none.
   */
  public static void main(String[] args) throws IOException {
    double hours = Double.parseDouble(args[0]);
    Path data = Files.createTempDirectory("soak");
    Home home = Home.locate();
    Understanding understanding = Understanding.load(home);
    RecordStore store =
        new RecordStore(data, Protocol.standard(), Clock.systemDefaultZone(), QuestionWording::of);
    try (OpenExam open = store.create("soak", "0.1.0", null, null);
        Engine engine = Engine.open(home, understanding, null, Settings.DEFAULT, System.err)) {
      ExamSession session =
          new ExamSession(
              understanding::interpreter,
              open.examination(),
              Settings.DEFAULT,
              ZonedDateTime.now(Clock.systemDefaultZone()));
      DefaultVirtualTerminal terminal = new DefaultVirtualTerminal(new TerminalSize(80, 24));
      try (ExamView screen =
          ScreenView.open(
              session, new Look(true, false), open.folder().path(), System.err, terminal)) {
        Watch watch = new Watch(screen, session, open.folder().journal(), hours * 3600);
        Listening listening = new Listening(engine, session, watch, Feedback.silent());
        List<Path> parts =
            parts(home, hours, args.length > 1 ? List.of(quiet(data, args[1])) : List.of());
        listening.recordings(parts, true, open.openSound());
      }
    }
    System.out.println("kept in " + data);
  }

  /** A recording of a quiet room: faint noise. */
  private static Path quiet(Path folder, String minutes) throws IOException {
    Random random = new Random(1);
    short[] room = new short[(int) (60 * Double.parseDouble(minutes) * Pcm.RATE)];
    for (int i = 0; i < room.length; i++) {
      room[i] = (short) Math.round(10 * random.nextGaussian());
    }
    Path file = folder.resolve("quiet.wav");
    AudioFile.write(file, Pcm.of(room));
    return file;
  }

  private static List<Path> parts(Home home, double hours, List<Path> quiet) {
    List<Path> parts = new ArrayList<>();
    for (int i = 0; i < hours * 60; i++) {
      for (String name : List.of("01-baby", "02-head", "03-chest", "04-abdomen")) {
        parts.add(home.demoAudio().resolve(name + ".wav"));
      }
      parts.addAll(quiet);
    }
    return parts;
  }

  /** Hands everything on, and measures. */
  private record Watch(ExamView view, ExamSession session, Path journal, double end, Progress at)
      implements ExamView {
    private static final class Progress {
      private double next = STEP_SECONDS;
      private Runnable endSound;
      private boolean over;
    }

    Watch(ExamView view, ExamSession session, Path journal, double end) {
      this(view, session, journal, end, new Progress());
    }

    @Override
    public void sound(double rmsDb, boolean clipping, double second, double to) {
      view.sound(rmsDb, clipping, second, to);
      if (second >= at.next) {
        at.next += STEP_SECONDS;
        measure(second);
      }
      if (second >= end) {
        at.over = true;
        at.endSound.run();
      }
    }

    @Override
    public void speaking(boolean now) {
      view.speaking(now);
    }

    private void measure(double second) {
      System.gc();
      Runtime runtime = Runtime.getRuntime();
      try {
        System.out.printf(
            "%.1f h: heap %d MB, %s, %d events, journal %.1f MB%n",
            second / 3600,
            (runtime.totalMemory() - runtime.freeMemory()) >> 20,
            resident(),
            session.record().entries().size(),
            Files.size(journal) / 1e6);
      } catch (IOException e) {
        throw new java.io.UncheckedIOException(e);
      }
    }

    private static String resident() throws IOException {
      Path status = Path.of("/proc/self/status");
      return Files.exists(status)
          ? Files.readAllLines(status).stream()
              .filter(line -> line.startsWith("VmRSS"))
              .findFirst()
              .map(line -> line.replaceAll("\\s+", " "))
              .orElse("")
          : "resident memory not known on this system";
    }

    @Override
    public boolean left() {
      return at.over || view.left();
    }

    @Override
    public void listening(Runnable endSound, boolean kept) {
      at.endSound = endSound;
      view.listening(endSound, kept);
    }

    @Override
    public PrintStream progress() {
      return view.progress();
    }

    @Override
    public void partial(String words) {
      view.partial(words);
    }

    @Override
    public void show(Changes changes) {
      view.show(changes);
    }

    @Override
    public void microphone(String trouble, String report) {
      view.microphone(trouble, report);
    }

    @Override
    public void stopped(String why) {
      throw new AssertionError(why);
    }

    @Override
    public void problem(String why) {
      view.problem(why);
    }

    @Override
    public void over() {
      view.over();
    }

    @Override
    public void close() {
      view.close();
    }
  }
}
