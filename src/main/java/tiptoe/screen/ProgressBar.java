package tiptoe.screen;

import java.io.PrintStream;

/** A progress bar, where that is a terminal and there is more than one thing. */
public final class ProgressBar {
  private static final int WIDTH = 30;

  private final PrintStream out;
  private final int total;
  private final boolean shown;
  private int done;

  public ProgressBar(int total, PrintStream out) {
    this.out = out;
    this.total = total;
    this.shown = total > 1 && System.console() != null;
  }

  public synchronized void step() {
    done++;
    if (shown) {
      int filled = WIDTH * done / total;
      out.printf("\r[%s%s] %d of %d", "#".repeat(filled), ".".repeat(WIDTH - filled), done, total);
    }
  }

  public void end() {
    if (shown) {
      out.println();
    }
  }
}
