package tiptoe.screen;

import java.util.ArrayList;
import java.util.List;

/** What needs action, and sizes with their centiles: all of it in full, on pages where need be. */
record AttentionPane(Canvas canvas, Overview overview, int seconds) {
  /** As a column of its own, with headings. */
  void column(Area area) {
    canvas.text(area, 0, 0, "TO ACT ON", Ink.STRONG);
    List<List<Line>> blocks = new ArrayList<>();
    for (Line flag : overview.flags()) {
      List<Line> block = wrapped(flag, area.width());
      block.add(new Line("", Ink.PLAIN));
      blocks.add(block);
    }
    if (blocks.isEmpty()) {
      blocks.add(List.of(new Line("nothing so far", Ink.PLAIN), new Line("", Ink.PLAIN)));
    }
    if (!overview.sizes().isEmpty()) {
      List<Line> block = new ArrayList<>();
      block.add(new Line("SIZE", Ink.STRONG));
      overview.sizes().forEach(size -> block.addAll(wrapped(size, area.width())));
      blocks.add(block);
    }
    canvas.lines(area.below(1), Pages.at(blocks, area.height() - 1, seconds));
  }

  /** How many rows it wants, at this width. */
  int wanted(int width) {
    return blocks(width).stream().mapToInt(List::size).sum();
  }

  /** As a few rows below the steps. */
  void rows(Area area) {
    canvas.lines(area, Pages.at(blocks(area.width()), area.height(), seconds));
  }

  private List<List<Line>> blocks(int width) {
    List<List<Line>> blocks = new ArrayList<>();
    overview.flags().forEach(flag -> blocks.add(wrapped(flag, width)));
    if (!overview.sizes().isEmpty()) {
      String all = String.join("; ", overview.sizes().stream().map(Line::text).toList());
      blocks.add(wrapped(new Line(all, Ink.PLAIN), width));
    }
    return blocks;
  }

  private static List<Line> wrapped(Line line, int width) {
    List<Line> lines = new ArrayList<>();
    for (String part : Wrap.words(line.text(), width)) {
      lines.add(new Line(part, line.ink()));
    }
    return lines;
  }
}
