package tiptoe.cli;

import java.io.PrintStream;
import tiptoe.audio.AudioProblem;
import tiptoe.audio.CaptureEvent;
import tiptoe.audio.Chunk;
import tiptoe.audio.Level;
import tiptoe.audio.SampleSource;
import tiptoe.exam.Changes;
import tiptoe.exam.Event;
import tiptoe.session.ExamView;
import tiptoe.speech.Hypothesis;
import tiptoe.wording.UtteranceWording;

/** Shows an examination line by line, as it goes on. */
final class PlainView implements ExamView {
  /** So long a loud stretch is not told again, in seconds. */
  private static final double WARNING_SECONDS = 10;

  private String last = "";
  private Level level = Level.of();
  private double nextWarning;
  private boolean listening;

  @Override
  public PrintStream progress() {
    return Console.err();
  }

  @Override
  public void listening(SampleSource sound, boolean kept) {
    if (!listening) {
      listening = true;
      if (!kept) {
        Console.err().println("sound is not kept with this record");
      }
      Console.out().println("listening; say \"end of examination\" to end");
    }
  }

  @Override
  public boolean left() {
    return false;
  }

  @Override
  public void sound(Chunk chunk, double second) {
    level = Level.of(chunk.samples());
    if (level.isClipping() && second >= nextWarning) {
      nextWarning = second + WARNING_SECONDS;
      clear();
      Console.err().println("microphone: too loud, the sound is cut off; hold it further away");
    }
  }

  // Printed only where a terminal can take them back.
  @Override
  public void partial(String words) {
    String plain = words.replace(Hypothesis.FILLER, "…").strip();
    String line = Meter.bar(level) + " " + plain;
    if (System.console() != null && !line.equals(last)) {
      Console.out().print("\r\033[K" + line);
      Console.out().flush();
    }
    last = line;
  }

  @Override
  public void show(Changes changes) {
    clear();
    changes
        .of(Event.UtteranceHeard.class)
        .flatMap(heard -> changes.record().utterance(heard.number()).stream())
        .forEach(heard -> Console.out().print(UtteranceWording.of(changes.record(), heard)));
    changes
        .of(Event.AudioGap.class)
        .forEach(gap -> Console.out().println("  sound was lost, noted in the record"));
    changes.commands().stream()
        .flatMap(command -> Reply.to(command, changes.record()).stream())
        .forEach(line -> Console.out().println("  " + line));
    changes
        .record()
        .openQuestion()
        .ifPresent(asked -> Console.out().println("  >> " + asked.question().text()));
  }

  @Override
  public void microphone(CaptureEvent event) {
    clear();
    Console.err().println("microphone: " + Meter.words(event));
  }

  @Override
  public void problem(AudioProblem problem) {
    Console.err().println(problem.getMessage());
  }

  @Override
  public void over() {
    clear();
  }

  @Override
  public void close() {}

  private void clear() {
    if (System.console() != null && !last.isEmpty()) {
      Console.out().print("\r\033[K");
    }
    last = "";
  }
}
