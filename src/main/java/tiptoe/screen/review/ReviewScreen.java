package tiptoe.screen.review;

import com.googlecode.lanterna.input.KeyStroke;
import com.googlecode.lanterna.screen.Screen;
import com.googlecode.lanterna.screen.TerminalScreen;
import com.googlecode.lanterna.terminal.Terminal;
import java.io.IOException;
import tiptoe.screen.Canvas;
import tiptoe.screen.Glyphs;
import tiptoe.screen.Look;

/** Shows a review on a terminal until it is left; on whatever way out, gives the terminal back. */
public final class ReviewScreen {
  private static final long TICK_MILLIS = 50;

  private final TerminalScreen screen;
  private final Look look;
  private final Reviewing reviewing;
  private boolean released;

  private ReviewScreen(TerminalScreen screen, Look look, Reviewing reviewing) {
    this.screen = screen;
    this.look = look;
    this.reviewing = reviewing;
  }

  /** Takes over the terminal and reviews; returns when the reviewer leaves. */
  public static void run(Terminal terminal, Look look, Reviewing reviewing) throws IOException {
    TerminalScreen screen = new TerminalScreen(terminal);
    ReviewScreen shown = new ReviewScreen(screen, look, reviewing);
    Thread restore = new Thread(shown::release, "restore terminal");
    Runtime.getRuntime().addShutdownHook(restore);
    try {
      screen.setCursorPosition(null);
      screen.startScreen();
      shown.loop();
    } finally {
      shown.release();
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
    while (!reviewing.over()) {
      boolean resized = screen.doResizeIfNecessary() != null;
      boolean changed = reviewing.refresh();
      for (KeyStroke key = screen.pollInput(); key != null; key = next()) {
        reviewing.key(key);
        changed = true;
      }
      if (changed || resized) {
        paint(resized);
      }
      pause();
    }
  }

  private KeyStroke next() throws IOException {
    return reviewing.over() ? null : screen.pollInput();
  }

  private static void pause() {
    try {
      Thread.sleep(TICK_MILLIS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  private synchronized void paint(boolean resized) throws IOException {
    if (!released) {
      paint(screen, look, reviewing);
      screen.refresh(resized ? Screen.RefreshType.COMPLETE : Screen.RefreshType.DELTA);
    }
  }

  static void paint(Screen screen, Look look, Reviewing reviewing) {
    Glyphs glyphs = look.ascii() ? Glyphs.ASCII : Glyphs.BLOCKS;
    Canvas canvas = new Canvas(screen.newTextGraphics(), glyphs, look.coloured());
    new ReviewFrame(canvas, reviewing).draw();
  }

  private synchronized void release() {
    try {
      if (!released) {
        released = true;
        screen.stopScreen();
        screen.getTerminal().close();
      }
    } catch (IOException e) {
      // The terminal is gone: there is nothing left to give back.
      return;
    }
  }
}
