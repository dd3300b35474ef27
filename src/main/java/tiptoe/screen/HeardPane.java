package tiptoe.screen;

import java.util.ArrayList;
import java.util.List;
import tiptoe.exam.Phase;
import tiptoe.protocol.Caution;

/** What is being said, and what became of what was said last. */
final class HeardPane {
  private final Canvas canvas;
  private final ScreenState state;
  private final Overview overview;
  private final Glyphs glyphs;

  HeardPane(Canvas canvas, ScreenState state, Overview overview) {
    this.canvas = canvas;
    this.state = state;
    this.overview = overview;
    this.glyphs = canvas.glyphs();
  }

  void draw(Area area) {
    canvas.text(area, 0, 0, glyphs.across().repeat(area.width()), Ink.QUIET);
    Area rest = area.below(1);
    boolean silent = state.partial().isEmpty() || state.record().phase() == Phase.PAUSED;
    String partial = silent ? "" : "hearing: " + state.partial();
    if (!state.trouble().isEmpty()) {
      canvas.text(rest, 0, 0, glyphs.abnormal() + " " + state.trouble(), Ink.ALERT);
    } else {
      canvas.text(rest, 0, 0, partial, Ink.STRONG);
    }
    List<Line> lines = new ArrayList<>();
    if (!state.notice().isEmpty()) {
      Wrap.words(state.notice(), rest.width())
          .forEach(line -> lines.add(new Line(line, Ink.STRONG)));
    }
    if (overview.heard().isEmpty()) {
      Wrap.words(Caution.TEXT, rest.width()).forEach(line -> lines.add(new Line(line, Ink.PLAIN)));
    } else if (state.notice().isEmpty()) {
      lines.addAll(heardLines(rest));
    }
    canvas.lines(rest.below(1), lines);
  }

  /** The words, then what became of them: large where there is room. */
  private List<Line> heardLines(Area area) {
    List<Line> heard = overview.heard();
    List<Line> lines = new ArrayList<>(heard.subList(0, 1));
    for (Line outcome : heard.subList(1, heard.size())) {
      List<String> big = BigLetters.fit(outcome.text(), area.width(), area.height(), glyphs);
      lines.add(new Line("", Ink.PLAIN));
      big.forEach(line -> lines.add(new Line(line, outcome.ink())));
      if (big.isEmpty()) {
        return heard;
      }
    }
    return lines.size() > area.height() - 1 ? heard : lines;
  }
}
