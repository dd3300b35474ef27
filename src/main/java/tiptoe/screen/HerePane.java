package tiptoe.screen;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * The region being examined: what is missing in large letters as far as there is room, then all its
 * steps with both sides.
 */
record HerePane(Canvas canvas, Overview overview) {
  void draw(Area area) {
    title(area);
    Area rest = area.below(1);
    BoardPane board = new BoardPane(canvas, overview.board());
    List<Line> big = big(rest.width(), rest.height() - board.height(rest.width()) - 1);
    int rows = canvas.lines(rest.top(big.size()), big);
    board.draw(rest.below(rows));
    elsewhere(rest.below(rows + board.height(rest.width()) + 1));
  }

  /** On a wide screen what is left of the height tells what is still to be stated elsewhere. */
  private void elsewhere(Area area) {
    if (canvas.all().width() < Frame.WIDE || overview.elsewhere().isEmpty() || area.height() < 2) {
      return;
    }
    canvas.text(area, 0, 0, "KEY STEPS MISSING ELSEWHERE", Ink.QUIET);
    Area list = area.below(1);
    int longest = overview.elsewhere().stream().mapToInt(String::length).max().orElse(0) + 4;
    int columns = Math.max(1, list.width() / longest);
    int each = (overview.elsewhere().size() + columns - 1) / columns;
    int shown = each <= list.height() ? each : list.height() - 1;
    for (int i = 0; i < overview.elsewhere().size(); i++) {
      if (i % each < shown) {
        String line = canvas.glyphs().key() + " " + overview.elsewhere().get(i);
        canvas.text(list, i % each, i / each * longest, line, Ink.PLAIN);
      }
    }
    if (shown < each) {
      canvas.text(list, shown, 0, "and more; say \"what is missing\"", Ink.QUIET);
    }
  }

  private void title(Area area) {
    int missing = overview.missing().stream().mapToInt(Overview.Missing::slots).sum();
    String name = overview.title().toUpperCase(Locale.ROOT) + ": ";
    if (missing == 0) {
      canvas.text(area, 0, 0, name + "nothing is missing " + canvas.glyphs().done(), Ink.STRONG);
    } else {
      int key =
          overview.missing().stream()
              .filter(Overview.Missing::key)
              .mapToInt(Overview.Missing::slots)
              .sum();
      String keys = key == 0 ? "" : ", " + key + " of key steps";
      canvas.text(area, 0, 0, name + missing + " MISSING" + keys, Ink.STRONG);
    }
  }

  /** Of the key steps that are missing, as many as fit; of another, what is good practice. */
  private List<Line> big(int width, int room) {
    List<Line> lines = new ArrayList<>();
    List<Overview.Missing> keys =
        overview.missing().stream().filter(Overview.Missing::key).toList();
    List<Line> twice = canvas.glyphs().plain() ? List.of() : big(keys, width, room, 2, true);
    lines.addAll(twice.isEmpty() ? big(keys, width, room, 1, false) : twice);
    overview.missing().stream()
        .filter(missing -> !missing.key() && missing.reminder() != null)
        .flatMap(missing -> Wrap.words(missing.reminder(), width).stream())
        .limit(Math.max(0, room - lines.size()))
        .forEach(line -> lines.add(new Line(line, Ink.PLAIN)));
    return lines;
  }

  /** Rows that it takes without large letters. */
  int wanted(int width) {
    return 2 + new BoardPane(canvas, overview.board()).height(width);
  }

  private List<Line> big(
      List<Overview.Missing> wanted, int width, int room, int size, boolean whole) {
    List<Line> lines = new ArrayList<>();
    for (Overview.Missing missing : wanted) {
      List<String> letters =
          BigLetters.fit(missing.shortText(), width - 3, room, canvas.glyphs(), size);
      List<String> reminder =
          missing.reminder() == null ? List.of("") : Wrap.words(missing.reminder(), width - 3);
      if (letters.isEmpty() || lines.size() + letters.size() + reminder.size() > room) {
        return whole ? List.of() : lines;
      }
      String mark = missing.key() ? canvas.glyphs().key() : canvas.glyphs().open();
      letters.forEach(line -> lines.add(new Line(mark + "  " + line, Ink.MISSING)));
      reminder.forEach(line -> lines.add(new Line("   " + line, Ink.PLAIN)));
    }
    return lines;
  }
}
