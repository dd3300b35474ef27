package tiptoe.screen;

import java.util.ArrayList;
import java.util.List;
import tiptoe.exam.Phase;
import tiptoe.protocol.Caution;

/** What is being said, and what became of what was said last. */
record HeardPane(Canvas canvas, ScreenState state, Overview overview) {
  /** The rows above what became of it: a line, what is being heard, and the words. */
  private static final int HEAD = 3;

  /** What a large sign takes on the left. */
  private static final int INDENT = 5;

  /** Whether the notice has no room here, and wants a place of its own. */
  static boolean longNotice(ScreenState state, Area area) {
    return Wrap.words(state.notice(), area.width()).size() > area.height() - 2;
  }

  /** Rows that all of what was heard takes: in large letters where these rows suffice. */
  int wanted(int width, int most) {
    List<Line> heard = heard();
    if (heard.size() < 2) {
      return 0;
    }
    List<Line> outcomes = heard.subList(1, heard.size());
    int large = 0;
    int small = 0;
    boolean fits = true;
    for (Line outcome : outcomes) {
      int rows = BigLetters.fit(outcome.text(), width, most, canvas.glyphs(), 1).size();
      fits &= rows > 0;
      large += 1 + rows;
      small += Wrap.words(outcome.text(), width - INDENT).size();
    }
    return HEAD + (fits && HEAD + large <= most ? large : small);
  }

  void draw(Area area) {
    canvas.text(area, 0, 0, canvas.glyphs().across().repeat(area.width()), Ink.QUIET);
    Area rest = area.below(1);
    boolean silent = state.partial().isEmpty() || state.record().phase() == Phase.PAUSED;
    String partial = silent ? "" : "hearing: " + state.partial();
    if (!state.sound().trouble().isEmpty()) {
      canvas.text(
          rest, 0, 0, canvas.glyphs().abnormal() + " " + state.sound().trouble(), Ink.ALERT);
    } else {
      canvas.text(rest, 0, 0, partial, Ink.STRONG);
    }
    List<Line> lines = new ArrayList<>();
    if (!state.notice().isEmpty() && !longNotice(state, area)) {
      lines.addAll(new Line(state.notice(), Ink.STRONG).wrapped(rest.width()));
    }
    if (heard().isEmpty()) {
      lines.addAll(new Line(Caution.TEXT, Ink.PLAIN).wrapped(rest.width()));
    } else if (lines.isEmpty() || lines.size() > rest.height() - 1) {
      lines.clear();
      lines.addAll(heardLines(rest));
    }
    canvas.lines(rest.below(1), lines);
  }

  /** The words, then what became of them: large where there is room, else with a large sign. */
  private List<Line> heardLines(Area area) {
    List<Line> heard = heard();
    List<Line> lines = new ArrayList<>(heard.subList(0, 1));
    for (Line outcome : heard.subList(1, heard.size())) {
      List<String> big =
          BigLetters.fit(outcome.text(), area.width(), area.height(), canvas.glyphs());
      lines.add(Line.BLANK);
      big.forEach(line -> lines.add(new Line(line, strong(outcome.ink()))));
      if (big.isEmpty()) {
        return signed(area, heard);
      }
    }
    return lines.size() > area.height() - 1 ? signed(area, heard) : lines;
  }

  /** A sign that can be read from afar, beside what it is about. */
  private List<Line> signed(Area area, List<Line> heard) {
    int room = area.height() - 2;
    List<Line> outcomes = heard.subList(1, heard.size());
    if (outcomes.isEmpty()) {
      return heard;
    }
    boolean signs = outcomes.stream().allMatch(line -> line.text().indexOf(' ') == 1);
    List<String> sign =
        signs
            ? BigLetters.fit(outcomes.get(0).text().substring(0, 1), 4, room, canvas.glyphs())
            : List.of();
    List<Line> lines = new ArrayList<>(heard.subList(0, 1));
    List<Line> wrapped = new ArrayList<>();
    int indent = sign.isEmpty() ? 0 : INDENT;
    for (Line outcome : outcomes) {
      String text = sign.isEmpty() ? outcome.text() : outcome.text().substring(2);
      wrapped.addAll(new Line(text, strong(outcome.ink())).wrapped(area.width() - indent));
    }
    for (int i = 0; i < Math.max(sign.size(), wrapped.size()); i++) {
      String left = i < sign.size() ? sign.get(i) : "";
      Line right = i < wrapped.size() ? wrapped.get(i) : new Line("", Ink.STRONG);
      String gap = " ".repeat(indent - Math.min(indent, left.length()));
      lines.add(new Line(left + gap + right.text(), right.ink()));
    }
    return lines;
  }

  private static Ink strong(Ink ink) {
    return ink == Ink.FRESH ? Ink.STRONG : ink;
  }

  private List<Line> heard() {
    return state.notice().isBlank() ? overview.heard() : overview.answered();
  }
}
