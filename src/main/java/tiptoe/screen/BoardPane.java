package tiptoe.screen;

import java.util.ArrayList;
import java.util.List;

/** Draws the steps of a region with both sides. */
record BoardPane(Canvas canvas, Board board) {
  private static final int NARROWEST_NAME = 12;
  private static final int WIDEST_NAME = 28;

  /** Rows that all of it takes at this width. */
  int height(int width) {
    return heading() + board.rows().stream().mapToInt(row -> height(row, width)).sum();
  }

  private int heading() {
    return board.sided() ? 1 : 0;
  }

  void draw(Area area) {
    boolean whole = height(area.width()) <= area.height();
    int room = area.height() - heading();
    List<Board.Row> rows = whole ? board.rows() : most(room);
    int at = 0;
    if (board.sided()) {
      List<String> sides = Board.headings();
      for (int side = 0; side < sides.size(); side++) {
        canvas.text(area, 0, column(area.width(), side), sides.get(side), Ink.QUIET);
      }
      at = 1;
    }
    for (Board.Row row : rows) {
      at += row(area.below(at), row, whole);
    }
    if (rows.size() < board.rows().size()) {
      int hidden = board.rows().size() - rows.size();
      canvas.text(area, at, 0, "and " + hidden + " more", Ink.STRONG);
    }
  }

  // Where there is no room for all, the steps with something to look at stay, in their order.
  private List<Board.Row> most(int room) {
    if (board.rows().size() <= room) {
      return board.rows();
    }
    List<Board.Row> kept =
        new ArrayList<>(board.rows().stream().filter(Board.Row::pressing).toList());
    List<Board.Row> others = board.rows().stream().filter(row -> !row.pressing()).toList();
    int spare = Math.max(0, room - 1);
    while (kept.size() > spare) {
      kept.remove(kept.size() - 1);
    }
    kept.addAll(others.subList(0, Math.min(others.size(), spare - kept.size())));
    return board.rows().stream().filter(kept::contains).toList();
  }

  private static int nameWidth(int width) {
    return Math.max(NARROWEST_NAME, Math.min(WIDEST_NAME, width / 3));
  }

  private static int column(int width, int side) {
    int name = nameWidth(width);
    return name + side * ((width - name) / 2);
  }

  private static int cellWidth(Board.Row row, int width) {
    int left = width - nameWidth(width);
    return row.sided() ? left / 2 - 1 : left;
  }

  private static int height(Board.Row row, int width) {
    return row.cells().stream()
        .mapToInt(cell -> lines(cell, cellWidth(row, width)).size())
        .max()
        .orElse(1);
  }

  private static List<Line> lines(Board.Cell cell, int width) {
    return cell.lines().stream().flatMap(line -> line.wrapped(width).stream()).toList();
  }

  private int row(Area area, Board.Row row, boolean whole) {
    canvas.text(area, 0, 0, cut(row.name(), nameWidth(area.width()) - 1), Ink.PLAIN);
    int rows = 1;
    for (int side = 0; side < row.cells().size(); side++) {
      int width = cellWidth(row, area.width());
      Board.Cell cell = row.cells().get(side);
      Area place = new Area(area.x() + column(area.width(), side), area.y(), width, area.height());
      if (whole) {
        rows = Math.max(rows, canvas.lines(place, lines(cell, width)));
      } else if (!cell.lines().isEmpty()) {
        canvas.text(place, 0, 0, one(cell), cell.lines().get(0).ink());
      }
    }
    return rows;
  }

  private static String one(Board.Cell cell) {
    return String.join(" ", cell.lines().stream().map(Line::text).toList());
  }

  private String cut(String text, int width) {
    String more = canvas.glyphs().plain() ? "." : "…";
    return text.length() <= width ? text : text.substring(0, width - 1) + more;
  }
}
