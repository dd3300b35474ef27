package tiptoe.screen;

import java.util.ArrayList;
import java.util.List;

/** The last frame: what is left to do, and where the record is. */
final class SummaryFrame {
  private final Canvas canvas;
  private final ScreenState state;

  SummaryFrame(Canvas canvas, ScreenState state) {
    this.canvas = canvas;
    this.state = state;
  }

  void draw() {
    canvas.blank();
    Area all = canvas.all();
    canvas.row(all.bottom(1), 0, Ink.BAR);
    canvas.text(all.bottom(1), 0, 1, "any key closes; the same is printed afterwards", Ink.BAR);
    List<Line> lines = new ArrayList<>();
    for (String line : Summary.of(state.record(), state.assessment(), state.folder())) {
      boolean title = !line.startsWith(" ");
      for (String part : Wrap.pieces(line, all.width() - 6)) {
        lines.add(new Line((title ? " " : "   ") + part, title ? Ink.STRONG : Ink.PLAIN));
      }
      if (line.isEmpty()) {
        lines.add(new Line("", Ink.PLAIN));
      }
    }
    int room = all.height() - 2;
    if (lines.size() > room) {
      // Where the record is stays, on as many rows as its path takes.
      List<Line> where = new ArrayList<>(lines.subList(place(lines), lines.size()));
      lines = new ArrayList<>(lines.subList(0, Math.max(0, room - 1 - where.size())));
      lines.add(new Line("   and more, printed afterwards", Ink.PLAIN));
      lines.addAll(where);
    }
    canvas.lines(all.top(all.height() - 1), lines);
  }

  private static int place(List<Line> lines) {
    int at = lines.size() - 1;
    while (at > 0 && !lines.get(at).text().startsWith(" " + Summary.PLACE)) {
      at--;
    }
    return at;
  }
}
