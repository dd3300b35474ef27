package tiptoe.screen;

import java.util.ArrayList;
import java.util.List;

/** The prompt in the largest letters that there is room for. */
record PromptPane(Canvas canvas) {
  /** Draws it at the top of the area; gives what room is left below. */
  Area draw(Area area, Prompt prompt) {
    int width = area.width() - 3;
    List<String> big = large(prompt, width, area.height() / 2);
    List<String> text = Wrap.words(prompt.text(), width);
    List<String> answers =
        prompt.answers().isEmpty() ? List.of() : Wrap.words("say " + prompt.answers(), width);
    int room = Math.max(1, area.height() - big.size() - answers.size() - 2);
    if (text.size() > room) {
      text = new ArrayList<>(text.subList(0, room));
      text.set(room - 1, text.get(room - 1) + " ...");
    }
    int row = 0;
    for (String line : big) {
      canvas.text(area, row++, 1, line, Ink.STRONG);
    }
    row += big.isEmpty() ? 0 : 1;
    for (String line : text) {
      canvas.row(area, row, Ink.QUESTION);
      canvas.text(area, row++, 1, line, Ink.QUESTION);
    }
    for (String line : answers) {
      canvas.text(area, row++, 1, line, Ink.STRONG);
    }
    return area.below(row + 1);
  }

  private List<String> large(Prompt prompt, int width, int rows) {
    List<String> whole = BigLetters.fit(prompt.text(), width, rows, canvas.glyphs());
    return whole.isEmpty()
        ? BigLetters.fit(prompt.headline(), width, rows, canvas.glyphs())
        : whole;
  }
}
