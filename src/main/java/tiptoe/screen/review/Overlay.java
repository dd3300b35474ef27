package tiptoe.screen.review;

import com.googlecode.lanterna.input.KeyStroke;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.IntConsumer;

/** What lies over the list and takes its keys: a line being typed, a choice or a page. */
final class Overlay {
  private Layer top;

  /** What takes keys while it lies there. */
  interface Layer {
    void key(KeyStroke key);
  }

  Optional<LineEditor> typing() {
    return top(LineEditor.class);
  }

  Optional<Choice> choice() {
    return top(Choice.class);
  }

  Optional<Page> page() {
    return top(Page.class);
  }

  private <T> Optional<T> top(Class<T> kind) {
    return Optional.ofNullable(top).filter(kind::isInstance).map(kind::cast);
  }

  /** Gives a key to what lies there; whether anything does. */
  boolean takes(KeyStroke key) {
    if (top == null) {
      return false;
    }
    top.key(key);
    return true;
  }

  private void close(Runnable then) {
    top = null;
    then.run();
  }

  /** Lets a line be typed; {@code then} is told it without the blanks around it. */
  void line(
      String prompt,
      String text,
      Function<String, List<String>> completion,
      Consumer<String> then) {
    top =
        new LineEditor(
            prompt,
            text,
            completion,
            line -> close(() -> then.accept(line)),
            () -> close(() -> {}));
  }

  /** Lets one of some options be chosen; {@code then} is told which, counted from 0. */
  void choose(String title, List<String> options, IntConsumer then) {
    top = new Choice(title, options, then);
  }

  /** Shows a page; {@code then} is run when the reader goes on by Enter. */
  void read(List<String> lines, Runnable then) {
    top = new Page(lines, then);
  }

  /** A list of which one line is to be chosen. */
  final class Choice implements Layer {
    private final String title;
    private final List<String> options;
    private final IntConsumer chosen;
    private int at;

    private Choice(String title, List<String> options, IntConsumer chosen) {
      this.title = title;
      this.options = List.copyOf(options);
      this.chosen = chosen;
    }

    String title() {
      return title;
    }

    List<String> options() {
      return options;
    }

    int at() {
      return at;
    }

    @Override
    public void key(KeyStroke key) {
      switch (key.getKeyType()) {
        case ArrowUp -> at = Math.max(0, at - 1);
        case ArrowDown -> at = Math.min(options.size() - 1, at + 1);
        case Enter -> close(() -> chosen.accept(at));
        case Escape -> close(() -> {});
        case Character -> number(key.getCharacter());
        default -> {}
      }
    }

    /** The first nine have a digit of their own. */
    private void number(char digit) {
      if (digit >= '1' && digit <= '9' && digit - '1' < options.size()) {
        close(() -> chosen.accept(digit - '1'));
      }
    }
  }

  /** A text to be read: it is scrolled by the arrows, and any other key closes it. */
  final class Page implements Layer {
    private static final int LEAF = 10;

    private final List<String> lines;
    private final Runnable agreed;
    private int from;

    private Page(List<String> lines, Runnable agreed) {
      this.lines = List.copyOf(lines);
      this.agreed = agreed;
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

    @Override
    public void key(KeyStroke key) {
      switch (key.getKeyType()) {
        case ArrowUp -> scroll(-1);
        case ArrowDown -> scroll(1);
        case PageUp -> scroll(-LEAF);
        case PageDown -> scroll(LEAF);
        case Enter -> close(agreed);
        default -> close(() -> {});
      }
    }

    private void scroll(int rows) {
      from = Math.max(0, from + rows);
    }
  }
}
