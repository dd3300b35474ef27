package tiptoe.screen.review;

import com.googlecode.lanterna.input.KeyStroke;
import java.util.List;

/** A text to be read: it is scrolled by the arrows, and any other key closes it. */
final class Page {
  private static final int LEAF = 10;

  private final List<String> lines;
  private final Runnable agreed;
  private final Runnable closed;
  private int from;

  /**
   * @param agreed run when it is closed by Enter, after {@code closed}
   * @param closed run when it is closed
   */
  Page(List<String> lines, Runnable agreed, Runnable closed) {
    this.lines = List.copyOf(lines);
    this.agreed = agreed;
    this.closed = closed;
  }

  List<String> lines() {
    return lines;
  }

  /**
   * Rows that were scrolled away.
   *
   * @param furthest how many can be before the end is seen, which only who wraps the lines knows
   */
  int from(int furthest) {
    from = Math.min(from, furthest);
    return from;
  }

  void key(KeyStroke key) {
    switch (key.getKeyType()) {
      case ArrowUp -> scroll(-1);
      case ArrowDown -> scroll(1);
      case PageUp -> scroll(-LEAF);
      case PageDown -> scroll(LEAF);
      case Enter -> {
        closed.run();
        agreed.run();
      }
      default -> closed.run();
    }
  }

  private void scroll(int rows) {
    from = Math.max(0, from + rows);
  }
}
