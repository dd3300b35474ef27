package tiptoe.screen;

import com.googlecode.lanterna.SGR;
import com.googlecode.lanterna.TextCharacter;
import com.googlecode.lanterna.TextColor;
import com.googlecode.lanterna.graphics.TextGraphics;
import java.util.List;
import java.util.Optional;

/** Writes text into areas, cut off at their edges. */
public record Canvas(TextGraphics graphics, Glyphs glyphs, boolean coloured) {
  /** The size of terminal on which a screen shows all it has. */
  static final int COLUMNS = 80;

  static final int ROWS = 24;

  public Area all() {
    return new Area(0, 0, graphics.getSize().getColumns(), graphics.getSize().getRows());
  }

  /** What to say where there is no room for all that a screen has. */
  public Optional<String> missed() {
    Area all = all();
    return all.width() >= COLUMNS && all.height() >= ROWS
        ? Optional.empty()
        : Optional.of(
            "shows all on %d x %d or more, has %d x %d"
                .formatted(COLUMNS, ROWS, all.width(), all.height()));
  }

  public void blank() {
    graphics.fill(' ');
  }

  /** Fills a row of the area with the ink. */
  public void row(Area area, int row, Ink ink) {
    text(area, row, 0, " ".repeat(area.width()), ink);
  }

  public void text(Area area, int row, int column, String text, Ink ink) {
    if (row < 0 || row >= area.height()) {
      return;
    }
    String clean = glyphs.clean(text);
    int room = area.width() - column;
    if (clean.length() > room && room > 1) {
      String more = glyphs.plain() ? "." : "…";
      clean = clean.substring(0, room - 1) + more;
    }
    TextColor front = ink.front(coloured);
    TextColor back = ink.back(coloured);
    SGR[] styles = ink.styles(coloured);
    for (int i = 0; i < Math.min(clean.length(), room); i++) {
      graphics.setCharacter(
          area.x() + column + i,
          area.y() + row,
          TextCharacter.fromCharacter(clean.charAt(i), front, back, styles)[0]);
    }
  }

  /** Writes the lines one below the other, as far as there is room; gives how many rows it took. */
  public int lines(Area area, List<Line> lines) {
    int row = 0;
    for (Line line : lines) {
      if (row < area.height()) {
        text(area, row++, 0, line.text(), line.ink());
      }
    }
    return row;
  }
}
