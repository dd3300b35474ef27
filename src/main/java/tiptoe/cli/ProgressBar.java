package tiptoe.cli;

/**
 * A progress bar on the error stream, where that is a terminal and there is more than one thing.
 */
final class ProgressBar {
  private static final int WIDTH = 30;

  private final int total;
  private final boolean shown;
  private int done;

  ProgressBar(int total) {
    this.total = total;
    this.shown = total > 1 && System.console() != null;
  }

  synchronized void step() {
    done++;
    if (shown) {
      int filled = WIDTH * done / total;
      Console.err()
          .printf("\r[%s%s] %d of %d", "#".repeat(filled), ".".repeat(WIDTH - filled), done, total);
    }
  }

  void end() {
    if (shown) {
      Console.err().println();
    }
  }
}
