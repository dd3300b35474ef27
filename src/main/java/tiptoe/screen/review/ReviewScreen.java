package tiptoe.screen.review;

import com.googlecode.lanterna.input.KeyStroke;
import com.googlecode.lanterna.screen.Screen;
import com.googlecode.lanterna.screen.TerminalScreen;
import com.googlecode.lanterna.terminal.Terminal;
import java.io.IOException;
import tiptoe.screen.Look;
import tiptoe.screen.TakenTerminal;

/** Shows a review on a terminal until it is left; on whatever way out, gives the terminal back. */
public final class ReviewScreen {
  private static final long TICK_MILLIS = 50;

  private final TakenTerminal terminal;
  private final TerminalScreen screen;
  private final Look look;
  private final ReviewKeys keys;

  private ReviewScreen(TakenTerminal terminal, Look look, ReviewKeys keys) {
    this.terminal = terminal;
    this.screen = terminal.screen();
    this.look = look;
    this.keys = keys;
  }

  /** Takes over the terminal and reviews; returns when the reviewer leaves. */
  public static void run(Terminal terminal, Look look, ReviewKeys keys) throws IOException {
    TakenTerminal taken = new TakenTerminal(terminal);
    Thread restore = new Thread(taken::giveBack, "restore terminal");
    Runtime.getRuntime().addShutdownHook(restore);
    try {
      taken.takeOver();
      new ReviewScreen(taken, look, keys).loop();
    } finally {
      taken.giveBack();
      forget(restore);
    }
  }

  private static void forget(Thread hook) {
    try {
      Runtime.getRuntime().removeShutdownHook(hook);
    } catch (IllegalStateException e) {
      // The process is ending, and the hook does the same again.
      return;
    }
  }

  private void loop() throws IOException {
    paint(false);
    while (!keys.over()) {
      boolean resized = screen.doResizeIfNecessary() != null;
      boolean changed = keys.refresh();
      for (KeyStroke key = screen.pollInput(); key != null; key = next()) {
        keys.key(key);
        changed = true;
      }
      if (changed || resized) {
        paint(resized);
      }
      pause();
    }
  }

  private KeyStroke next() throws IOException {
    return keys.over() ? null : screen.pollInput();
  }

  private static void pause() {
    try {
      Thread.sleep(TICK_MILLIS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  private void paint(boolean resized) throws IOException {
    terminal.draw(
        () -> {
          paint(screen, look, keys);
          screen.refresh(resized ? Screen.RefreshType.COMPLETE : Screen.RefreshType.DELTA);
        });
  }

  static void paint(Screen screen, Look look, ReviewKeys keys) {
    new ReviewFrame(look.canvas(screen), keys.dialogue()).draw();
  }
}
