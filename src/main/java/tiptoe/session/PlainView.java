package tiptoe.session;

import java.io.PrintStream;
import tiptoe.exam.Changes;
import tiptoe.exam.Event;
import tiptoe.wording.CommandReply;
import tiptoe.wording.OutcomeWording;
import tiptoe.wording.OutcomeWording.Kind;
import tiptoe.wording.UtteranceWording;
import tiptoe.wording.Words;

/** Shows an examination line by line, as it goes on. */
public final class PlainView implements ExamView {
  /** So long a loud stretch is not told again, in seconds. */
  private static final double WARNING_SECONDS = 10;

  private final Words words;
  private final PrintStream out;
  private final PrintStream err;
  private String last = "";
  private String level = MicrophoneWording.bar(Double.NEGATIVE_INFINITY, false);
  private double nextWarning;
  private boolean listening;

  /**
   * @param words in the chosen units and spelling
   * @param out what is heard and recorded
   * @param err all else
   */
  public PlainView(Words words, PrintStream out, PrintStream err) {
    this.words = words;
    this.out = out;
    this.err = err;
  }

  @Override
  public PrintStream progress() {
    return err;
  }

  @Override
  public void listening(Runnable end, boolean kept) {
    if (!listening) {
      listening = true;
      if (!kept) {
        err.println("sound is not kept with this record");
      }
      out.println("listening; say \"end of examination\" to end");
    }
  }

  @Override
  public boolean left() {
    return false;
  }

  @Override
  public void sound(double rmsDb, boolean clipping, double from, double to) {
    level = MicrophoneWording.bar(rmsDb, clipping);
    if (clipping && from >= nextWarning) {
      nextWarning = from + WARNING_SECONDS;
      clear();
      err.println("microphone: too loud, the sound is cut off; hold it further away");
    }
  }

  // Whoever reads lines, or has them read out, hears the voice.
  @Override
  public void speaking(boolean now) {}

  // Printed only where a terminal can take them back.
  @Override
  public void partial(String words) {
    String line = level + " " + words;
    if (System.console() != null && !line.equals(last)) {
      out.print("\r\033[K" + line);
      out.flush();
    }
    last = line;
  }

  @Override
  public void show(Changes changes) {
    clear();
    changes
        .of(Event.UtteranceHeard.class)
        .flatMap(heard -> changes.record().utterance(heard.number()).stream())
        .forEach(heard -> out.print(UtteranceWording.of(changes.record(), heard, words)));
    OutcomeWording outcome = OutcomeWording.of(changes, words);
    if (outcome.kind() == Kind.DONE || !changes.commands().isEmpty()) {
      outcome.lines().forEach(line -> out.println("  " + line.shown()));
    } else if (changes.of(Event.OfferAsked.class).findAny().isPresent()) {
      outcome.offers().forEach(line -> out.println("  ? " + line.shown()));
    }
    changes
        .of(Event.AudioGap.class)
        .forEach(gap -> out.println("  sound was lost, noted in the record"));
    changes.commands().stream()
        .flatMap(command -> CommandReply.of(command, changes.record(), words).stream())
        .forEach(line -> out.println("  " + line));
    changes
        .of(Event.EndAsked.class)
        .flatMap(asked -> CommandReply.beforeEnd(changes.record(), words).stream())
        .forEach(line -> out.println("  >> " + line));
    changes
        .record()
        .openQuestion()
        .ifPresent(asked -> out.println("  >> " + words.spelled(asked.question().text())));
  }

  @Override
  public void microphone(String trouble, String report) {
    clear();
    err.println("microphone: " + report);
  }

  @Override
  public void problem(String why) {
    err.println(why);
  }

  @Override
  public void stopped(String why) {
    clear();
    err.println("RECORDING HAS STOPPED: " + why);
  }

  @Override
  public void over() {
    clear();
  }

  @Override
  public void close() {}

  private void clear() {
    if (System.console() != null && !last.isEmpty()) {
      out.print("\r\033[K");
    }
    last = "";
  }
}
