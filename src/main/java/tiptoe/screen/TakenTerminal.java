package tiptoe.screen;

import com.googlecode.lanterna.screen.TerminalScreen;
import com.googlecode.lanterna.terminal.Terminal;
import java.io.IOException;

/**
 * A terminal that is taken over and given back as it was. Nothing is drawn on it afterwards,
 * however late a thread is.
 */
public final class TakenTerminal {
  private final TerminalScreen screen;
  private boolean givenBack;

  /** What is drawn while nobody can give the terminal back. */
  public interface Drawing {
    void draw() throws IOException;
  }

  public TakenTerminal(Terminal terminal) throws IOException {
    screen = new TerminalScreen(terminal);
  }

  public TerminalScreen screen() {
    return screen;
  }

  /**
   * Takes it over, without a cursor.
   *
   * @throws IOException when it cannot be
   */
  public void takeOver() throws IOException {
    screen.setCursorPosition(null);
    screen.startScreen();
  }

  /** Draws; does nothing once it was given back. */
  public synchronized void draw(Drawing drawing) throws IOException {
    if (!givenBack) {
      drawing.draw();
    }
  }

  /** Gives it back; may be called from any thread, and again. */
  public synchronized void giveBack() {
    try {
      if (!givenBack) {
        givenBack = true;
        screen.stopScreen();
        screen.getTerminal().close();
      }
    } catch (IOException e) {
      // The terminal is gone: there is nothing left to give back.
      return;
    }
  }
}
