package tiptoe.screen;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import tiptoe.exam.Asked;
import tiptoe.exam.ExamRecord;
import tiptoe.exam.Phase;
import tiptoe.exam.Progress;
import tiptoe.language.Phrasing;
import tiptoe.language.Question;
import tiptoe.protocol.Caution;
import tiptoe.protocol.Labels;
import tiptoe.protocol.Region;

/**
 * One frame of an examination: on the left the regions from head to toe, beside them the open
 * question, what is missing here and what is recorded here, below what was just heard. Someone who
 * looks up from the baby for half a second finds the question or what is missing first.
 */
final class Frame {
  private static final int WIDE = 130;
  private static final int TALL = 36;

  private final Canvas canvas;
  private final ScreenState state;
  private final Overview overview;
  private final Glyphs glyphs;

  Frame(Canvas canvas, ScreenState state, Overview overview) {
    this.canvas = canvas;
    this.state = state;
    this.overview = overview;
    this.glyphs = canvas.glyphs();
  }

  void draw() {
    canvas.blank();
    Area all = canvas.all();
    header(all.top(1));
    help(all.bottom(1));
    Area middle = new Area(0, 1, all.width(), all.height() - 2);
    int left = all.width() >= 100 ? 30 : all.width() >= 60 ? 20 : 0;
    if (left > 0) {
      regions(new Area(0, 1, left, middle.height()));
      down(left, middle);
    }
    Area main = new Area(left + (left > 0 ? 2 : 0), 1, all.width() - left - 2, middle.height());
    int heard = main.height() >= TALL ? main.height() / 3 : main.height() >= 20 ? 6 : 4;
    heard(main.bottom(heard));
    Area work = main.top(main.height() - heard);
    if (all.width() >= WIDE) {
      int right = all.width() / 4;
      Area side = new Area(all.width() - right, 1, right, work.height());
      down(side.x() - 2, work);
      attention(side);
      work = new Area(work.x(), work.y(), work.width() - right - 2, work.height());
      here(question(work));
    } else {
      int rows = Math.min(overview.flags().size() + (overview.sizes().isEmpty() ? 0 : 1), 4);
      narrowAttention(work.bottom(rows));
      here(question(work.top(work.height() - rows)));
    }
  }

  private void down(int x, Area rows) {
    for (int row = 0; row < rows.height(); row++) {
      canvas.text(new Area(x, rows.y(), 1, rows.height()), row, 0, glyphs.down(), Ink.QUIET);
    }
  }

  private void header(Area area) {
    canvas.row(area, 0, Ink.BAR);
    String label = state.record().label().map(text -> " " + text + " ").orElse(" ");
    String elapsed = "%02d:%02d".formatted(state.seconds() / 60, state.seconds() % 60);
    int loud = Math.min(state.loudness(), ScreenState.LOUDEST);
    String meter = glyphs.full().repeat(loud) + glyphs.empty().repeat(ScreenState.LOUDEST - loud);
    String sound =
        state.loudness() > ScreenState.LOUDEST
            ? "TOO LOUD"
            : state.keepsSound() ? "sound kept" : "sound not kept";
    String right = elapsed + "  [" + meter + "] " + (state.listening() ? sound : "") + " ";
    String text = phase() + label;
    canvas.text(area, 0, 0, " " + text, Ink.BAR);
    canvas.text(area, 0, Math.max(0, area.width() - right.length()), right, Ink.BAR);
  }

  private String phase() {
    return switch (state.record().phase()) {
      case LISTENING -> state.listening() ? "LISTENING" : "NOT LISTENING YET";
      case PAUSED -> "PAUSED: NOTHING IS HEARD";
      case REMARK -> "REMARK";
      case ENDING -> "END? SAY YES OR NO";
      case ENDED -> "ENDED";
      case SIGNED -> "SIGNED";
      case ADDENDUM -> "ADDENDUM";
    };
  }

  private void help(Area area) {
    StringBuilder text = new StringBuilder(" say or press:");
    for (Voice voice : Voice.values()) {
      String more = "  " + voice.key() + " \"" + voice.words() + "\"";
      if (text.length() + more.length() <= area.width()) {
        text.append(more);
      }
    }
    canvas.row(area, 0, Ink.BAR);
    canvas.text(area, 0, 0, text.toString(), Ink.BAR);
  }

  private void regions(Area area) {
    List<Progress> regions = overview.regions();
    int at = 0;
    for (int i = 0; i < regions.size(); i++) {
      at = regions.get(i).region().equals(overview.here().id()) ? i : at;
    }
    int rows = Math.min(area.height(), regions.size());
    int first = Math.max(0, Math.min(regions.size() - rows, at - rows / 2));
    for (int i = first; i < first + rows; i++) {
      region(area, i - first, regions.get(i), i == at);
    }
  }

  private void region(Area area, int row, Progress progress, boolean here) {
    Region region = state.record().protocol().region(progress.region()).orElseThrow();
    String mark =
        progress.done() ? glyphs.done() : progress.keyMissing() > 0 ? glyphs.key() : glyphs.open();
    String count = progress.answered() + "/" + progress.total();
    Ink ink = here ? Ink.STRONG : progress.done() ? Ink.GOOD : Ink.PLAIN;
    canvas.text(area, row, 0, here ? glyphs.here() : " ", ink);
    canvas.text(area, row, 1, mark, progress.done() ? ink : Ink.MISSING);
    String name = here ? region.label().toUpperCase(Locale.ROOT) : region.label();
    canvas.text(area, row, 3, name, ink);
    int bar = area.width() - 24;
    if (bar > 0 && progress.total() > 0) {
      int full = bar * progress.answered() / progress.total();
      String text = glyphs.full().repeat(full) + glyphs.empty().repeat(bar - full);
      canvas.text(area, row, 17, text, ink);
    }
    canvas.text(area, row, area.width() - count.length(), count, ink);
  }

  /** Draws the open question; gives what room is left below it. */
  private Area question(Area area) {
    String text;
    String answers;
    String headline;
    ExamRecord record = state.record();
    if (record.phase() == Phase.ENDING) {
      int missing = record.missingKeySteps().size();
      headline = "END ANYWAY?";
      text =
          missing + (missing == 1 ? " key step is missing: " : " key steps are missing: ") + keys();
      answers = "\"end of examination\" or \"yes\" ends, \"no\" goes on";
    } else if (record.openQuestion().isPresent()) {
      Question question = record.openQuestion().map(Asked::question).orElseThrow();
      headline = headline(question);
      text = question.text();
      answers = answers(question);
    } else {
      return area;
    }
    List<String> wrapped = Wrap.words(text, area.width() - 3);
    wrapped = wrapped.subList(0, Math.min(wrapped.size(), Math.max(1, area.height() / 4)));
    List<String> big = BigLetters.fit(text, area.width() - 3, area.height() / 2, glyphs);
    if (big.isEmpty()) {
      big = BigLetters.fit(headline, area.width() - 3, area.height() / 2, glyphs);
    }
    int row = 0;
    for (String line : big) {
      canvas.text(area, row++, 1, line, Ink.STRONG);
    }
    row += big.isEmpty() ? 0 : 1;
    for (String line : wrapped) {
      canvas.row(area, row, Ink.QUESTION);
      canvas.text(area, row++, 1, line, Ink.QUESTION);
    }
    if (!answers.isEmpty()) {
      canvas.text(area, row++, 1, "say " + answers, Ink.STRONG);
    }
    return area.below(row + 1);
  }

  private String keys() {
    Phrasing phrasing = new Phrasing(state.record().protocol());
    List<String> names =
        state.record().missingKeySteps().stream()
            .map(slot -> phrasing.name(slot.step(), slot.side()))
            .toList();
    return String.join(", ", names);
  }

  private static String headline(Question question) {
    return switch (question.kind()) {
      case SIDE -> "WHICH SIDE?";
      case DETAIL -> Labels.of(question.detail()) + "?";
      case NUMBER -> "WHAT NUMBER?";
      case CONTRADICTION -> "WHICH IS RIGHT?";
      case STEP -> "OF WHAT?";
    };
  }

  private static String answers(Question question) {
    return switch (question.kind()) {
      case SIDE -> "\"left\", \"right\" or \"both\"";
      case NUMBER -> "the number again, or \"no\" to leave it out";
      case CONTRADICTION -> "\"yes\" for the newer, \"no\" for the older";
      case DETAIL, STEP -> "";
    };
  }

  private void here(Area area) {
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
    canvas.text(area, 0, 0, "MISSING HERE", Ink.MISSING);
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
    if (lines.size() > room && room > 0) {
      int hidden = lines.size() - room + 1;
      List<Line> cut = new ArrayList<>(lines.subList(0, room - 1));
      cut.add(new Line("  and " + hidden + " more", Ink.MISSING));
      return cut;
    }
    return lines;
  }

  private void heard(Area area) {
    canvas.text(area, 0, 0, glyphs.across().repeat(area.width()), Ink.QUIET);
    Area rest = area.below(1);
    String partial = state.partial().isEmpty() ? "" : "hearing: " + state.partial();
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

  private void attention(Area area) {
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

  private void narrowAttention(Area area) {
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
