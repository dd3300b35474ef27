package tiptoe.screen;

import java.util.ArrayList;
import java.util.List;

/** What needs action, and sizes with their centiles. */
final class AttentionPane {
  private final Canvas canvas;
  private final Overview overview;
  private final Glyphs glyphs;

  AttentionPane(Canvas canvas, Overview overview) {
    this.canvas = canvas;
    this.overview = overview;
    this.glyphs = canvas.glyphs();
  }

  void column(Area area) {
    int row = 0;
    canvas.text(area, row++, 0, "TO ACT ON", Ink.STRONG);
    for (Line flag : overview.flags()) {
      for (String line : Wrap.words(flag.text(), area.width())) {
        canvas.text(area, row++, 0, line, flag.ink());
      }
    }
    row += overview.flags().isEmpty() ? none(area, row) : 1;
    if (!overview.sizes().isEmpty()) {
      canvas.text(area, row++, 0, "SIZE", Ink.STRONG);
      canvas.lines(area.below(row), overview.sizes());
    }
  }

  private int none(Area area, int row) {
    canvas.text(area, row, 0, "nothing so far", Ink.PLAIN);
    return 2;
  }

  void rows(Area area) {
    List<Line> lines = new ArrayList<>(overview.flags());
    int room = area.height() - (overview.sizes().isEmpty() ? 0 : 1);
    if (lines.size() > room && room > 0) {
      int hidden = lines.size() - room + 1;
      lines = new ArrayList<>(lines.subList(0, room - 1));
      lines.add(new Line("and " + hidden + " more to act on", Ink.ALERT));
    }
    if (!overview.sizes().isEmpty()) {
      lines.add(
          new Line(
              String.join("; ", overview.sizes().stream().map(Line::text).toList()), Ink.PLAIN));
    }
    canvas.lines(area, lines);
  }
}
