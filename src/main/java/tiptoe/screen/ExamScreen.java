package tiptoe.screen;

import com.googlecode.lanterna.input.KeyStroke;
import com.googlecode.lanterna.input.KeyType;
import com.googlecode.lanterna.screen.TerminalScreen;
import com.googlecode.lanterna.terminal.Terminal;
import java.io.IOException;
import java.util.Optional;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import tiptoe.finding.Command;

/**
 * The screen of an examination. One thread draws it and reads the keys; the others hand it states.
 */
public final class ExamScreen implements AutoCloseable {
  private static final long TICK_MILLIS = 50;
  private static final long CLOSING_MILLIS = 1000;
  private static final Character IDENTIFY = 'i';

  /** A FHIR Patient in a code is longer than any line that is typed. */
  private static final int LONGEST = 64 << 10;

  /** Told what is done by keys, on the thread of the screen. */
  public interface Keys {
    /** A key that stands for a spoken command. */
    void command(Command command);

    /** A key that stands for a spoken answer. */
    void answer(String words);

    /** Who the baby is is being typed or scanned; null once that was given up. */
    void typing(String line);

    /** Who the baby is, as it was typed or scanned. */
    void identify(String line);

    void leave();
  }

  private final TakenTerminal terminal;
  private final TerminalScreen screen;
  private final Painter painter;
  private final Keys keys;
  private final BlockingQueue<ScreenState> states = new LinkedBlockingQueue<>();
  private final Thread thread;
  private volatile boolean closing;
  private volatile boolean dismissed;
  private volatile RuntimeException failure;
  private ScreenState shown;

  /** What was typed of who the baby is; null while nothing is. */
  private String typed;

  private ExamScreen(TakenTerminal terminal, Look look, Keys keys) {
    this.terminal = terminal;
    this.screen = terminal.screen();
    this.painter = new Painter(screen, look);
    this.keys = keys;
    thread = new Thread(this::run, "screen");
    thread.setDaemon(true);
  }

  /**
   * Takes over a terminal and shows the first state.
   *
   * @throws IOException when the terminal cannot be taken over
   */
  public static ExamScreen open(Terminal terminal, Look look, ScreenState first, Keys keys)
      throws IOException {
    TakenTerminal taken = new TakenTerminal(terminal);
    taken.takeOver();
    ExamScreen opened = new ExamScreen(taken, look, keys);
    opened.show(first);
    opened.thread.start();
    return opened;
  }

  /** Shows a state as soon as may be; those it overtakes are left out. */
  public void show(ScreenState state) {
    states.add(state);
  }

  /** Waits until a key was pressed or the time is over; gives whether it was a key. */
  public boolean awaitKey(long millis) throws InterruptedException {
    dismissed = false;
    long end = System.nanoTime() + TimeUnit.MILLISECONDS.toNanos(millis);
    while (!dismissed && !closing && System.nanoTime() < end) {
      Thread.sleep(TICK_MILLIS);
    }
    return dismissed || closing;
  }

  /** What made the screen give up; empty while it works. */
  public Optional<RuntimeException> failure() {
    return Optional.ofNullable(failure);
  }

  /** Gives the terminal back as it was; may be called from any thread, and again. */
  @Override
  public void close() {
    closing = true;
    if (Thread.currentThread() != thread) {
      try {
        thread.join(CLOSING_MILLIS);
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
      }
    }
    terminal.giveBack();
  }

  private void run() {
    try {
      while (!closing) {
        ScreenState next = newest();
        boolean resized = screen.doResizeIfNecessary() != null;
        if (next != null || resized) {
          shown = next == null ? shown : next;
          paint(resized);
        }
        readKeys();
      }
    } catch (IOException e) {
      // A terminal that hung up ends the examination in good order.
      keys.leave();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    } catch (RuntimeException e) {
      // A screen that stands still would pass for an examination in which nothing is heard.
      failure = e;
      closing = true;
      keys.leave();
    }
  }

  private void paint(boolean whole) throws IOException {
    terminal.draw(() -> painter.paint(shown, whole));
  }

  private ScreenState newest() throws InterruptedException {
    ScreenState next = states.poll(TICK_MILLIS, TimeUnit.MILLISECONDS);
    for (ScreenState later = next; later != null; later = states.poll()) {
      next = later;
    }
    return next == null || next.equals(shown) ? null : next;
  }

  private void readKeys() throws IOException {
    for (KeyStroke key = screen.pollInput(); key != null; key = screen.pollInput()) {
      dismissed = true;
      boolean control = key.isCtrlDown() && key.getKeyType() == KeyType.Character;
      if (key.getKeyType() == KeyType.EOF || control && key.getCharacter() == 'c') {
        keys.leave();
        if (key.getKeyType() == KeyType.EOF) {
          return;
        }
      } else if (control && key.getCharacter() == 'l') {
        paint(true);
      } else if (typed != null) {
        type(key);
      } else if (IDENTIFY.equals(key.getCharacter()) && !control && !key.isAltDown()) {
        typed = "";
        keys.typing(typed);
      } else {
        Optional<String> answer = AnswerKey.of(key, shown.record());
        answer.ifPresent(keys::answer);
        if (answer.isEmpty()) {
          Voice.of(key).ifPresent(keys::command);
        }
      }
    }
  }

  private void type(KeyStroke key) {
    switch (key.getKeyType()) {
      case Character -> typed = typed.length() < LONGEST ? typed + key.getCharacter() : typed;
      case Backspace -> typed = typed.substring(0, Math.max(0, typed.length() - 1));
      case Enter -> {
        String line = typed;
        typed = null;
        keys.typing(null);
        if (!line.isBlank()) {
          keys.identify(line);
        }
        return;
      }
      case Escape -> typed = null;
      default -> {
        // Arrows and the like move nothing in a line that is typed once.
      }
    }
    keys.typing(typed);
  }
}
