package tiptoe.screen;

import static tiptoe.screen.ScreenState.Showing.EXAMINATION;
import static tiptoe.screen.ScreenState.Showing.HELP;
import static tiptoe.screen.ScreenState.Showing.SUMMARY;

import com.googlecode.lanterna.terminal.Terminal;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.function.Supplier;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import tiptoe.exam.Changes;
import tiptoe.exam.Event;
import tiptoe.exam.NotRecorded;
import tiptoe.exam.Phase;
import tiptoe.exam.StatedIdentity;
import tiptoe.finding.Command;
import tiptoe.session.ExamSession;
import tiptoe.session.ExamView;
import tiptoe.wording.CommandReply;
import tiptoe.wording.PlainText;
import tiptoe.wording.ProblemWording;

/** Shows an examination on the full screen, and carries out what keys ask for. */
public final class ScreenView implements ExamView, ExamScreen.Keys {
  /** How long the summary stays when no key is pressed, since none is ever needed, in s. */
  private static final int SUMMARY_SECONDS = 30;

  private static final int INTERRUPTED = 130;

  /** Letters of a line being typed that are shown. */
  private static final int SHOWN = 120;

  private final ExamSession session;
  private ExamScreen screen;
  private StandardErrorAside aside;
  private Thread restore;
  private ScreenState state;
  private final PrintStream err;
  private volatile Runnable endOfSound;
  private volatile boolean left;
  private String soundTrouble = "";
  private String keepingTrouble = "";

  /** What is being typed of who the baby is; null while nothing is. */
  private String typing;

  /** Second of the examination up to which there was sound. */
  private volatile double heard;

  private ScreenView(ExamSession session, Path folder, PrintStream err) {
    this.session = session;
    this.err = err;
    state = ScreenState.opened(session.wording(), folder);
  }

  /**
   * Takes over the terminal.
   *
   * @param folder where the record is
   * @param err told what went wrong, once the terminal is given back
   */
  public static ScreenView open(
      ExamSession session, Look look, Path folder, PrintStream err, Terminal terminal)
      throws IOException {
    ScreenView view = new ScreenView(session, folder, err);
    view.state = view.state.withNotice("getting ready to listen");
    view.aside = StandardErrorAside.keepFromTerminal(err);
    try {
      view.screen = ExamScreen.open(terminal, look, view.state, view);
    } catch (IOException | RuntimeException e) {
      view.aside.close();
      throw e;
    }
    // Whatever ends the process, the terminal is given back.
    view.restore =
        new Thread(
            () -> {
              view.screen.close();
              view.aside.close();
            },
            "restore terminal");
    Runtime.getRuntime().addShutdownHook(view.restore);
    return view;
  }

  private synchronized void update(UnaryOperator<ScreenState> change) {
    state = change.apply(state);
    screen.show(
        typing == null
            ? state
            : state
                .withShowing(EXAMINATION)
                .withNotice(
                    "WHO IS THE BABY? Type or scan the record number, or name: …; born: …; Enter"
                        + " keeps it, Esc does not: "
                        + end(typing)
                        + "_"));
  }

  /** What was typed last has to be seen. */
  private static String end(String line) {
    return line.length() <= SHOWN ? line : "…" + line.substring(line.length() - SHOWN);
  }

  @Override
  public void typing(String line) {
    update(
        now -> {
          typing = line;
          return now;
        });
  }

  @Override
  public void identify(String line) {
    StatedIdentity said = StatedIdentity.parse(line, session.record().protocol());
    boolean other =
        !said.problems().isEmpty()
            && StatedIdentity.ofLine(line, session.record().protocol()).isEmpty();
    if (other && line.contains(" ")) {
      // No identity: it is taken as if it had been said.
      answer(line.strip().toLowerCase(Locale.ROOT));
      return;
    }
    try {
      List<String> problems = session.identify(line);
      String notice =
          problems.isEmpty()
              ? "NOTED: " + session.wording().identityLine()
              : "NOT NOTED: " + String.join("; ", problems);
      update(now -> now.withNotice(PlainText.line(notice)).withRecord(session.wording()));
    } catch (NotRecorded e) {
      keeping("NOT RECORDED: " + e.getMessage());
    }
  }

  /** What is printed there becomes the notice of the screen, line by line. */
  @Override
  public PrintStream progress() {
    return new PrintStream(new ByteArrayOutputStream(), true, StandardCharsets.UTF_8) {
      @Override
      public void println(String line) {
        update(now -> now.withNotice(line));
      }

      @Override
      public PrintStream printf(String format, Object... values) {
        update(now -> now.withNotice(format.formatted(values).strip()));
        return this;
      }
    };
  }

  @Override
  public void listening(Runnable end, boolean kept) {
    endOfSound = end;
    update(now -> now.withListening(true).withKeepsSound(kept).withNotice(""));
  }

  @Override
  public boolean left() {
    return left;
  }

  @Override
  public void sound(double rmsDb, boolean clipping, double from, double to) {
    heard = to;
    int loudness = SoundState.loudness(rmsDb, clipping);
    update(now -> now.withSound(loudness, (int) from));
  }

  @Override
  public void speaking(boolean now) {
    update(state -> state.withSpeaking(now));
  }

  @Override
  public void partial(String words) {
    update(now -> now.withPartial(words));
  }

  @Override
  public void show(Changes changes) {
    List<String> reply =
        changes.commands().stream()
            .flatMap(
                command ->
                    CommandReply.of(command, changes.record(), state.wording().words()).stream())
            .toList();
    boolean spoken = changes.of(Event.UtteranceHeard.class).findAny().isPresent();
    boolean asked = !changes.commands().isEmpty();
    String lost =
        changes
            .of(Event.AudioGap.class)
            .map(
                gap -> "SOUND WAS LOST, %.1f s of it; noted in the record".formatted(gap.seconds()))
            .collect(Collectors.joining("; "));
    String notice = lost.isEmpty() ? String.join("; ", reply) : lost;
    boolean help = changes.commands().contains(Command.SHOW_HELP);
    update(
        now ->
            (spoken || asked || !lost.isEmpty()
                    ? now.withNotice(notice).withShowing(help ? HELP : EXAMINATION)
                    : now)
                .withRecord(session.wording()));
  }

  @Override
  public void microphone(String trouble, String report) {
    String text = trouble.isEmpty() ? "" : "NO SOUND: " + trouble;
    update(
        now -> {
          soundTrouble = text;
          return now.withTrouble(trouble());
        });
  }

  @Override
  public void problem(String why) {
    keeping("SOUND NOT KEPT: " + why);
  }

  @Override
  public void stopped(String why) {
    keeping("RECORDING HAS STOPPED: " + why);
  }

  // What was not kept once stays told, though the microphone is well again.
  private void keeping(String text) {
    update(
        now -> {
          keepingTrouble = text;
          return now.withTrouble(trouble());
        });
  }

  private String trouble() {
    return Stream.of(soundTrouble, keepingTrouble)
        .filter(text -> !text.isEmpty())
        .collect(Collectors.joining("; "));
  }

  @Override
  public void command(Command command) {
    if (command == Command.SHOW_HELP && state.showing() == HELP) {
      update(now -> now.withShowing(EXAMINATION));
    } else if (command == Command.YES || command == Command.NO) {
      answer(command.id());
    } else {
      carryOut(() -> session.command(command, heard));
    }
  }

  @Override
  public void answer(String words) {
    carryOut(() -> session.type(words, List.of(words.split(" ")), heard));
  }

  private void carryOut(Supplier<Changes> step) {
    try {
      show(step.get());
      endSound(session.record().phase() == Phase.ENDED);
    } catch (NotRecorded e) {
      keeping("NOT RECORDED: " + e.getMessage());
    }
  }

  @Override
  public void leave() {
    left = true;
    if (endOfSound == null) {
      // Nothing was said yet, and what is still being loaded cannot be called off.
      new Thread(() -> System.exit(INTERRUPTED), "leave").start();
    }
    endSound(true);
  }

  private void endSound(boolean now) {
    Runnable end = endOfSound;
    if (now && end != null) {
      end.run();
    }
  }

  @Override
  public void over() {
    update(
        now ->
            now.withListening(false)
                .withPartial("")
                .withShowing(left ? EXAMINATION : SUMMARY)
                .withRecord(session.wording()));
    if (!left) {
      try {
        // Its pages take turns by the second, from the first one on.
        for (int second = 0; second < SUMMARY_SECONDS; second++) {
          int now = second;
          update(state -> state.withSound(0, now));
          if (screen.awaitKey(1000)) {
            return;
          }
        }
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
      }
    }
  }

  @Override
  public void close() {
    screen.close();
    aside.close();
    screen
        .failure()
        .ifPresent(
            failure ->
                err.println(
                    "the screen gave up, the record is kept: " + ProblemWording.of(failure)));
    try {
      Runtime.getRuntime().removeShutdownHook(restore);
    } catch (IllegalStateException e) {
      // The process is ending, and the hook does the same again.
      return;
    }
  }
}
