package tiptoe.screen;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import tiptoe.exam.Answer;
import tiptoe.exam.MissingDetail;
import tiptoe.exam.Slot;
import tiptoe.exam.Utterance;
import tiptoe.finding.Finding;
import tiptoe.protocol.Region;
import tiptoe.protocol.Side;
import tiptoe.protocol.Step;
import tiptoe.wording.RecordWording;
import tiptoe.wording.Sign;

/**
 * The steps of a region as a table, a row a step in the order of the protocol. A row never moves
 * while the region is examined, so that the eye finds it again.
 *
 * @param rows the steps
 */
record Board(List<Row> rows) {
  /** The order of the columns: as one sees a baby that lies on its back. */
  static final List<Side> SIDES = List.of(Side.RIGHT, Side.LEFT);

  /**
   * A step.
   *
   * @param name its label
   * @param cells right and left, or one where it has no sides
   */
  record Row(String name, List<Cell> cells) {
    boolean sided() {
      return cells.size() > 1;
    }

    /** Whether something of it is missing, unsure or was recorded just now. */
    boolean pressing() {
      return cells.stream().anyMatch(Cell::pressing);
    }
  }

  /**
   * One side of a step.
   *
   * @param lines answers, what is missing, and what is unsure
   * @param pressing whether it is more than answers that were there before
   */
  record Cell(List<Line> lines, boolean pressing) {}

  boolean sided() {
    return rows.stream().anyMatch(Row::sided);
  }

  /**
   * Sets up the table.
   *
   * @param fresh numbers of the statements that were made just now
   */
  static Board of(RecordWording wording, Region region, List<Integer> fresh, Glyphs glyphs) {
    return new Maker(wording, Set.copyOf(wording.record().missing()), fresh, glyphs).board(region);
  }

  private record Maker(
      RecordWording wording, Set<Slot> missing, List<Integer> fresh, Glyphs glyphs) {

    Board board(Region region) {
      List<Row> rows = new ArrayList<>();
      for (Step step : region.steps()) {
        List<Cell> cells =
            step.sided()
                ? SIDES.stream().map(side -> cell(step, side)).toList()
                : List.of(cell(step, null));
        if (cells.stream().anyMatch(cell -> !cell.lines().isEmpty())) {
          rows.add(new Row(wording.words().step(step.id()), cells));
        }
      }
      return new Board(rows);
    }

    private Cell cell(Step step, Side side) {
      List<Line> lines = new ArrayList<>();
      boolean pressing = false;
      for (Answer answer : wording.record().answers(step.id())) {
        if (isHere(side, answer.side())) {
          lines.add(answer(side, answer));
          pressing |= isFresh(answer);
        }
      }
      if (Stream.of(side, (Side) null)
          .anyMatch(one -> missing.contains(new Slot(step.id(), one)))) {
        lines.add(
            step.key()
                ? new Line(glyphs.key() + " MISSING", Ink.KEY_MISSING)
                : new Line(glyphs.open() + " missing", Ink.MISSING));
        pressing = true;
      }
      for (Line line : more(step, side)) {
        lines.add(line);
        pressing = true;
      }
      return new Cell(List.copyOf(lines), pressing);
    }

    private List<Line> more(Step step, Side side) {
      List<Line> lines = new ArrayList<>();
      for (MissingDetail detail : wording.record().missingDetails()) {
        if (detail.slot().step().equals(step.id()) && isHere(side, detail.slot().side())) {
          String label = wording.words().detail(step.id(), detail.detail());
          lines.add(new Line(glyphs.open() + " missing: " + label, Ink.MISSING));
        }
      }
      for (Answer waiting : wording.waiting()) {
        if (waiting.step().equals(step.id()) && isHere(side, waiting.side())) {
          String text =
              glyphs.unsure() + " (" + wording.words().said(waiting.finding()) + ") not settled";
          lines.add(new Line(text, Ink.UNSURE));
        }
      }
      for (Utterance utterance : wording.record().unsure()) {
        for (Finding seems : utterance.seems().toList()) {
          if (seems.step().equals(step.id()) && isHere(side, seems.side())) {
            String text = glyphs.unsure() + " (" + wording.words().said(seems) + ") unsure";
            lines.add(new Line(text, Ink.UNSURE));
          }
        }
      }
      return lines.stream().distinct().toList();
    }

    // What was said without a side stands beside both.
    private static boolean isHere(Side column, Side said) {
      return column == null || said == null || column == said;
    }

    private boolean isFresh(Answer answer) {
      return fresh.contains(answer.statement());
    }

    private Line answer(Side column, Answer answer) {
      Sign sign = wording.sign(answer);
      String side = column == null && answer.side() != null ? answer.side().id() + ": " : "";
      String text = glyphs.of(sign) + " " + side + wording.said(answer);
      boolean now = isFresh(answer);
      Ink ink = sign == Sign.ABNORMAL ? Ink.ALERT : now ? Ink.FRESH : Ink.GOOD;
      return new Line(now ? text + " " + glyphs.fresh() : text, ink);
    }
  }

  /** The names of the sides, in the order of the columns. */
  static List<String> headings() {
    return SIDES.stream().map(Side::id).toList();
  }
}
