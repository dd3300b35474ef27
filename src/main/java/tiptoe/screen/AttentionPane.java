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
      List<Line> block = new ArrayList<>(flag.wrapped(area.width()));
      block.add(Line.BLANK);
      blocks.add(block);
    }
    if (blocks.isEmpty()) {
      blocks.add(List.of(new Line("nothing so far", Ink.PLAIN), Line.BLANK));
    }
    if (!overview.sizes().isEmpty()) {
      List<Line> block = new ArrayList<>();
      block.add(new Line("SIZE", Ink.STRONG));
      overview.sizes().forEach(size -> block.addAll(size.wrapped(area.width())));
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
    overview.flags().forEach(flag -> blocks.add(flag.wrapped(width)));
    if (!overview.sizes().isEmpty()) {
      String all = String.join("; ", overview.sizes().stream().map(Line::text).toList());
      blocks.add(new Line(all, Ink.PLAIN).wrapped(width));
    }
    return blocks;
  }
}
