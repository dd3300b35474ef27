package tiptoe.screen;

import java.util.ArrayList;
import java.util.List;

/**
 * The last frame: what is left to do, in turns where not all of it fits, and where the record is.
 */
record SummaryFrame(Canvas canvas, ScreenState state) {
  void draw() {
    canvas.blank();
    Area all = canvas.all();
    canvas.row(all.bottom(1), 0, Ink.BAR);
    canvas.text(all.bottom(1), 0, 1, "any key closes; the same is printed afterwards", Ink.BAR);
    List<List<Line>> blocks = blocks(all.width() - 6);
    // Where the record is stays, on as many rows as its path takes.
    List<Line> where = blocks.remove(blocks.size() - 1);
    int room = all.height() - 2 - where.size();
    List<Line> lines = new ArrayList<>(Pages.at(blocks, room, state.sound().seconds()));
    lines.addAll(where);
    canvas.lines(all.top(all.height() - 1), lines);
  }

  /** Each title with its first item, and each further item; with them the blank line below. */
  private List<List<Line>> blocks(int width) {
    List<List<Line>> blocks = new ArrayList<>();
    boolean titled = false;
    for (String line : Summary.of(state.wording(), state.folder())) {
      if (line.isEmpty()) {
        blocks.get(blocks.size() - 1).add(Line.BLANK);
        continue;
      }
      boolean title = !line.startsWith(" ");
      if (title || !titled) {
        blocks.add(new ArrayList<>());
      }
      for (String part : Wrap.pieces(line, width)) {
        Line wrapped = new Line((title ? " " : "   ") + part, title ? Ink.STRONG : Ink.PLAIN);
        blocks.get(blocks.size() - 1).add(wrapped);
      }
      titled = title;
    }
    return blocks;
  }
}
