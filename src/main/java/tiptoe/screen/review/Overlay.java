package tiptoe.screen.review;

import com.googlecode.lanterna.input.KeyStroke;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.IntConsumer;

/** What lies over the list and takes its keys: a line being typed, a choice or a page. */
final class Overlay {
  private TypingLine typing;
  private Choice choice;
  private Page page;

  Optional<TypingLine> typing() {
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
        new TypingLine(
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
}
