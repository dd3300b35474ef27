package tiptoe.screen.review;

import com.googlecode.lanterna.input.KeyStroke;
import com.googlecode.lanterna.input.KeyType;
import java.util.List;
import java.util.function.Consumer;
import java.util.function.Function;

/** A line that is being typed. */
final class LineEditor implements Overlay.Layer {
  private final String prompt;
  private final Function<String, List<String>> completion;
  private final Consumer<String> entered;
  private final Runnable abandoned;
  private String text;
  private int cursor;

  /** The text before a completion was put in, the choices there are, and the one shown. */
  private String completed = "";

  private List<String> choices = List.of();
  private int choice;
  private String refusal = "";

  /**
   * @param prompt what is to be typed
   * @param text what stands there already
   * @param completion how a text can go on
   * @param entered told the text when it is complete
   * @param abandoned run when it is given up
   */
  LineEditor(
      String prompt,
      String text,
      Function<String, List<String>> completion,
      Consumer<String> entered,
      Runnable abandoned) {
    this.prompt = prompt;
    this.completion = completion;
    this.entered = entered;
    this.abandoned = abandoned;
    this.text = text;
    cursor = text.length();
  }

  String prompt() {
    return prompt;
  }

  String text() {
    return text;
  }

  int cursor() {
    return cursor;
  }

  /** Says why the line was not taken, until a key is pressed. */
  void refuse(String why) {
    refusal = why;
  }

  String refusal() {
    return refusal;
  }

  /** What Tab offers; empty while it was not pressed. */
  List<String> choices() {
    return choices;
  }

  int choice() {
    return choice;
  }

  @Override
  public void key(KeyStroke key) {
    KeyType type = key.getKeyType();
    refusal = "";
    if (type == KeyType.Tab || type == KeyType.ReverseTab) {
      complete(type == KeyType.Tab ? 1 : -1);
      return;
    }
    choices = List.of();
    switch (type) {
      case Enter -> entered.accept(text.strip());
      case Escape -> abandoned.run();
      case Backspace -> erase(cursor - 1);
      case Delete -> erase(cursor);
      case ArrowLeft -> cursor = Math.max(0, cursor - 1);
      case ArrowRight -> cursor = Math.min(text.length(), cursor + 1);
      case Home -> cursor = 0;
      case End -> cursor = text.length();
      case Character -> type(key);
      default -> {}
    }
  }

  private void type(KeyStroke key) {
    if (key.isCtrlDown() && key.getCharacter() == 'u') {
      text = text.substring(cursor);
      cursor = 0;
    } else if (!key.isCtrlDown()
        && !key.isAltDown()
        && !Character.isISOControl(key.getCharacter())) {
      text = text.substring(0, cursor) + key.getCharacter() + text.substring(cursor);
      cursor++;
    }
  }

  private void erase(int at) {
    if (at >= 0 && at < text.length()) {
      text = text.substring(0, at) + text.substring(at + 1);
      cursor = at;
    }
  }

  /** Puts in the first choice, then at each further Tab the next one. */
  private void complete(int step) {
    if (choices.isEmpty()) {
      completed = text.substring(0, cursor);
      choices = completion.apply(completed);
      choice = step > 0 ? 0 : choices.size() - 1;
    } else {
      choice = Math.floorMod(choice + step, choices.size());
    }
    if (!choices.isEmpty()) {
      text = completed.substring(0, completed.lastIndexOf(' ') + 1) + choices.get(choice);
      cursor = text.length();
      choices = choices.size() == 1 ? List.of() : choices;
    }
  }
}
