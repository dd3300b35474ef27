package tiptoe.screen.review;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tiptoe.exam.ExamRecord;
import tiptoe.exam.Phase;
import tiptoe.screen.Area;
import tiptoe.screen.Canvas;
import tiptoe.screen.Ink;
import tiptoe.screen.Line;
import tiptoe.screen.Wrap;
import tiptoe.wording.Sign;

/** One frame of a review: the items, the chosen one in full, what is being typed or chosen. */
record ReviewFrame(Canvas canvas, ReviewDialogue dialogue) {
  private static final int WIDE = 130;
  private static final int DETAILS = 7;

  void draw() {
    canvas.blank();
    Area all = canvas.all();
    header(all.top(1));
    footer(all.bottom(2));
    Area middle = new Area(0, 1, all.width(), all.height() - 3);
    if (dialogue.overlay().page().isPresent()) {
      page(middle, dialogue.overlay().page().get());
    } else if (all.width() >= WIDE) {
      int left = all.width() * 3 / 5;
      list(new Area(0, 1, left, middle.height()));
      beside(new Area(left + 2, 1, all.width() - left - 2, middle.height()));
    } else {
      int below = Math.min(DETAILS, middle.height() / 3);
      list(middle.top(middle.height() - below - 1));
      Area details = middle.bottom(below + 1);
      canvas.text(details, 0, 0, canvas.glyphs().across().repeat(details.width()), Ink.QUIET);
      beside(details.below(1));
    }
  }

  private void header(Area area) {
    ExamRecord record = dialogue.service().record();
    canvas.row(area, 0, Ink.BAR);
    String who =
        dialogue.service().reviewer() == null ? "" : ", by " + dialogue.service().reviewer();
    String left = " REVIEW" + record.label().map(label -> " " + label).orElse("") + who;
    String state =
        dialogue.service().whyReadOnly() != null
            ? "READ ONLY"
            : record.phase() == Phase.SIGNED
                ? "SIGNED"
                : record.phase() == Phase.ADDENDUM ? "ADDENDUM, NOT SIGNED" : "DRAFT, NOT SIGNED";
    ItemList shown = dialogue.shown();
    String search = shown.search().isEmpty() ? "" : " with \"" + shown.search() + "\"";
    String right =
        shown.items().size() + " " + shown.filter().words() + search + "  " + state + " ";
    int room = Math.max(0, area.width() - right.length());
    canvas.text(area, 0, 0, left, Ink.BAR);
    canvas.text(area, 0, Math.max(0, room - 1), " " + right, Ink.BAR);
  }

  private void footer(Area area) {
    dialogue
        .overlay()
        .typing()
        .ifPresentOrElse(
            line -> typed(area, line),
            () -> canvas.text(area, 0, 0, " " + dialogue.notice(), Ink.STRONG));
    Area bar = area.bottom(1);
    canvas.row(bar, 0, Ink.BAR);
    canvas.text(bar, 0, 0, keys(bar.width()), Ink.BAR);
  }

  private String keys(int width) {
    if (dialogue.overlay().typing().isPresent()) {
      return " Enter: done   Tab: complete   Esc: leave it";
    }
    if (dialogue.overlay().choice().isPresent()) {
      return " arrows and Enter, or a number   Esc: leave it";
    }
    return canvas.missed().map(missed -> " " + missed).orElseGet(() -> acts(width));
  }

  private static String acts(int width) {
    StringBuilder text = new StringBuilder();
    for (ReviewAction act : ReviewAction.values()) {
      String more = " " + act.key() + " " + act.shortly() + " ";
      if (text.length() + more.length() <= width) {
        text.append(more);
      }
    }
    return text.toString();
  }

  private void typed(Area area, LineEditor line) {
    String text = line.text();
    String shown =
        text.substring(0, line.cursor()) + canvas.glyphs().here() + text.substring(line.cursor());
    String all = " " + line.prompt() + " " + shown;
    int from = Math.max(0, all.length() - area.width());
    canvas.text(area, 0, 0, all.substring(from), Ink.STRONG);
  }

  private void page(Area area, Overlay.Page page) {
    List<Line> lines = new ArrayList<>();
    for (String line : page.lines()) {
      boolean title = !line.startsWith(" ");
      for (String part : Wrap.words(line, area.width() - 6)) {
        lines.add(new Line((title ? " " : "   ") + part, title ? Ink.STRONG : Ink.PLAIN));
      }
    }
    int rows = Math.max(1, area.height() - 1);
    boolean fits = lines.size() <= area.height();
    int from = page.from(fits ? 0 : lines.size() - rows);
    if (!fits) {
      int below = lines.size() - from - rows;
      lines = new ArrayList<>(lines.subList(from, from + rows));
      String more =
          below == 0
              ? "the end"
              : "and " + below + (below == 1 ? " line" : " lines") + " more, by the arrows";
      lines.add(new Line("   " + more, Ink.STRONG));
    }
    canvas.lines(area, lines);
  }

  private record Row(ReviewItem item, String heading, boolean chosen) {}

  private void list(Area area) {
    List<Row> rows = new ArrayList<>();
    int chosen = 0;
    String before = "";
    List<ReviewItem> items = dialogue.shown().items();
    for (int i = 0; i < items.size(); i++) {
      String heading = ReviewItems.heading(items.get(i), dialogue.service().wording());
      if (!heading.equals(before)) {
        rows.add(new Row(null, heading, false));
        before = heading;
      }
      chosen = i == dialogue.shown().at() ? rows.size() : chosen;
      rows.add(new Row(items.get(i), "", i == dialogue.shown().at()));
    }
    if (rows.isEmpty()) {
      canvas.text(area, 0, 1, "nothing is shown; f changes the filter, Esc the search", Ink.PLAIN);
    }
    int first = Math.max(0, Math.min(chosen - area.height() / 2, rows.size() - area.height()));
    for (int row = 0; row < area.height() && first + row < rows.size(); row++) {
      draw(area, row, rows.get(first + row));
    }
  }

  private void draw(Area area, int row, Row line) {
    if (line.item() == null) {
      canvas.text(area, row, 0, line.heading(), Ink.STRONG);
      return;
    }
    ReviewItem item = line.item();
    Ink ink = line.chosen() ? Ink.BAR : ink(item.sign());
    String clock = item.provenance().clock();
    int room = area.width() - clock.length() - 2;
    if (line.chosen()) {
      canvas.row(area, row, ink);
    }
    String text =
        (line.chosen() ? canvas.glyphs().here() : " ")
            + canvas.glyphs().of(item.sign())
            + " "
            + item.text();
    canvas.text(new Area(area.x(), area.y(), room, area.height()), row, 0, text, ink);
    canvas.text(area, row, area.width() - clock.length() - 1, clock, ink);
  }

  private static Ink ink(Sign sign) {
    return switch (sign) {
      case DONE -> Ink.GOOD;
      case ABNORMAL -> Ink.ALERT;
      case UNSURE -> Ink.UNSURE;
      case KEY, OPEN -> Ink.MISSING;
      default -> Ink.PLAIN;
    };
  }

  /**
   * What there is to choose from, else why a line was not taken or how it can go on, else the
   * chosen item in full.
   */
  private void beside(Area area) {
    Optional<String> refusal =
        dialogue.overlay().typing().map(LineEditor::refusal).filter(why -> !why.isEmpty());
    if (dialogue.overlay().choice().isPresent()) {
      choice(area, dialogue.overlay().choice().get());
    } else if (refusal.isPresent()) {
      wrapped(area, List.of(refusal.get()));
    } else if (dialogue.overlay().typing().filter(line -> !line.choices().isEmpty()).isPresent()) {
      LineEditor line = dialogue.overlay().typing().get();
      String all = String.join(", ", line.choices().subList(line.choice(), line.choices().size()));
      wrapped(area, List.of(all));
    } else {
      List<String> texts = new ArrayList<>();
      dialogue
          .shown()
          .chosen()
          .ifPresent(
              item -> {
                texts.add(item.text());
                texts.add(item.provenance().text());
                texts.addAll(item.notes());
              });
      wrapped(area, texts);
    }
  }

  private void wrapped(Area area, List<String> texts) {
    List<Line> lines = new ArrayList<>();
    for (String text : texts) {
      for (String part : Wrap.words(text, area.width() - 1)) {
        lines.add(new Line(part, lines.isEmpty() ? Ink.STRONG : Ink.PLAIN));
      }
    }
    canvas.lines(area, lines);
  }

  private void choice(Area area, Overlay.Choice choice) {
    canvas.text(area, 0, 0, choice.title(), Ink.STRONG);
    Area rows = area.below(1);
    int size = choice.options().size();
    int first = Math.max(0, Math.min(choice.at() - rows.height() / 2, size - rows.height()));
    for (int row = 0; row < rows.height() && first + row < size; row++) {
      int option = first + row;
      String number = option < 9 ? (option + 1) + " " : "  ";
      String mark = option == choice.at() ? canvas.glyphs().here() : " ";
      Ink ink = option == choice.at() ? Ink.BAR : Ink.PLAIN;
      canvas.text(rows, row, 0, mark + number + choice.options().get(option), ink);
    }
  }
}
