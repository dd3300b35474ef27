package tiptoe.screen.review;

import com.googlecode.lanterna.input.KeyStroke;
import java.util.List;
import java.util.function.IntConsumer;

/** A list of which one line is to be chosen. */
final class Choice {
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
