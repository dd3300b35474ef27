package tiptoe.screen.review;

import com.googlecode.lanterna.input.KeyStroke;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.IntConsumer;

/** What lies over the list and takes its keys: a line being typed, a choice or a page. */
final class Overlay {
  private LineEditor typing;
  private Choice choice;
  private Page page;

  Optional<LineEditor> typing() {
    return Optional.ofNullable(typing);
  }

  Optional<Choice> choice() {
    return Optional.ofNullable(choice);
  }

  Optional<Page> page() {
    return Optional.ofNullable(page);
  }

  /** Gives a key to what lies there; whether anything does. */
  boolean takes(KeyStroke key) {
    if (typing != null) {
      typing.key(key);
    } else if (choice != null) {
      choice.key(key);
    } else if (page != null) {
      page.key(key);
    } else {
      return false;
    }
    return true;
  }

  /** Lets a line be typed; {@code then} is told it without the blanks around it. */
  void line(
      String prompt,
      String text,
      Function<String, List<String>> completion,
      Consumer<String> then) {
    typing =
        new LineEditor(
            prompt,
            text,
            completion,
            line -> {
              typing = null;
              then.accept(line);
            },
            () -> typing = null);
  }

  /** Lets one of some options be chosen; {@code then} is told which, counted from 0. */
  void choose(String title, List<String> options, IntConsumer then) {
    choice =
        new Choice(
            title,
            options,
            at -> {
              choice = null;
              then.accept(at);
            },
            () -> choice = null);
  }

  /** Shows a page; {@code then} is run when the reader goes on by Enter. */
  void read(List<String> lines, Runnable then) {
    page = new Page(lines, then, () -> page = null);
  }

  /** A list of which one line is to be chosen. */
  static final class Choice {
    private final String title;
    private final List<String> options;
    private final IntConsumer chosen;
    private final Runnable abandoned;
    private int at;

    Choice(String title, List<String> options, IntConsumer chosen, Runnable abandoned) {
      this.title = title;
      this.options = List.copyOf(options);
      this.chosen = chosen;
      this.abandoned = abandoned;
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

    void key(KeyStroke key) {
      switch (key.getKeyType()) {
        case ArrowUp -> at = Math.max(0, at - 1);
        case ArrowDown -> at = Math.min(options.size() - 1, at + 1);
        case Enter -> chosen.accept(at);
        case Escape -> abandoned.run();
        case Character -> number(key.getCharacter());
        default -> {}
      }
    }

    /** The first nine have a digit of their own. */
    private void number(char digit) {
      if (digit >= '1' && digit <= '9' && digit - '1' < options.size()) {
        chosen.accept(digit - '1');
      }
    }
  }

  /** A text to be read: it is scrolled by the arrows, and any other key closes it. */
  static final class Page {
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
}
