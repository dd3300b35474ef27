package tiptoe.screen;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import tiptoe.exam.Progress;

/** The region being examined: what is missing first, then what is recorded. */
final class HerePane {
  private final Canvas canvas;
  private final Overview overview;
  private final Glyphs glyphs;

  HerePane(Canvas canvas, Overview overview) {
    this.canvas = canvas;
    this.overview = overview;
    this.glyphs = canvas.glyphs();
  }

  void draw(Area area) {
    Progress progress = overview.progressHere();
    String title = overview.here().label().toUpperCase(Locale.ROOT);
    canvas.text(
        area, 0, 0, title + "  " + progress.answered() + " of " + progress.total(), Ink.STRONG);
    Area rest = area.below(1);
    int rows = overview.missing().isEmpty() ? done(rest) : missing(rest);
    canvas.lines(rest.below(rows), overview.recorded());
  }

  private int done(Area area) {
    canvas.text(area, 0, 0, glyphs.done() + " nothing is missing here", Ink.GOOD);
    return 2;
  }

  private int missing(Area area) {
    canvas.text(area, 0, 0, "MISSING HERE: " + overview.missing().size(), Ink.MISSING);
    Area list = area.below(1);
    int forRecorded = Math.min(overview.recorded().size(), Math.max(2, area.height() / 3));
    int room = list.height() - forRecorded - 1;
    List<Line> big = bigMissing(list.width(), room);
    return 2 + canvas.lines(list.top(room), big.isEmpty() ? smallMissing(room) : big);
  }

  private List<Line> bigMissing(int width, int room) {
    List<Line> lines = new ArrayList<>();
    for (Overview.Missing missing : overview.missing()) {
      List<String> big = BigLetters.fit(missing.text(), width - 3, room, glyphs);
      if (big.isEmpty()) {
        return List.of();
      }
      String mark = missing.key() ? glyphs.key() : glyphs.open();
      big.forEach(line -> lines.add(new Line(mark + "  " + line, Ink.MISSING)));
      lines.add(new Line(note(missing), Ink.PLAIN));
    }
    return lines.size() > room ? List.of() : lines;
  }

  private static String note(Overview.Missing missing) {
    String reminder = missing.reminder() == null ? "" : missing.reminder();
    String key = missing.key() ? "key step" : "";
    return key.isEmpty() && reminder.isEmpty()
        ? ""
        : "   " + key + (key.isEmpty() || reminder.isEmpty() ? "" : ": ") + reminder;
  }

  private List<Line> smallMissing(int room) {
    List<Line> lines = new ArrayList<>();
    for (Overview.Missing missing : overview.missing()) {
      String mark = missing.key() ? glyphs.key() : glyphs.open();
      lines.add(
          new Line(
              mark + " " + missing.text() + (missing.key() ? "  (key step)" : ""), Ink.MISSING));
    }
    if (room == 1 && lines.size() > 1) {
      String all =
          overview.missing().stream().map(Overview.Missing::text).collect(Collectors.joining("; "));
      return List.of(new Line(all, Ink.MISSING));
    }
    if (lines.size() > room && room > 0) {
      int hidden = lines.size() - room + 1;
      List<Line> cut = new ArrayList<>(lines.subList(0, room - 1));
      cut.add(new Line("  and " + hidden + " more", Ink.MISSING));
      return cut;
    }
    return lines;
  }
}
