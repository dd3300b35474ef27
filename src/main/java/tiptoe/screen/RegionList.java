package tiptoe.screen;

import java.util.List;
import java.util.Locale;
import tiptoe.exam.Progress;
import tiptoe.protocol.Region;

/**
 * The regions from head to toe with their progress; those around the current one where not all fit.
 */
record RegionList(Canvas canvas, ScreenState state, Overview overview) {
  void draw(Area area) {
    List<Progress> regions = overview.regions();
    int at = regions.stream().map(Progress::region).toList().indexOf(overview.here().id());
    int rows = Math.min(area.height(), regions.size());
    int first = Math.max(0, Math.min(regions.size() - rows, at - rows / 2));
    for (int i = first; i < first + rows; i++) {
      region(area, i - first, regions.get(i), i == at);
    }
  }

  private void region(Area area, int row, Progress progress, boolean here) {
    Region region = state.record().protocol().region(progress.region()).orElseThrow();
    String mark =
        progress.done()
            ? canvas.glyphs().done()
            : progress.keyMissing() > 0 ? canvas.glyphs().key() : canvas.glyphs().open();
    String count = progress.answered() + "/" + progress.total();
    Ink ink = here ? Ink.STRONG : progress.done() ? Ink.GOOD : Ink.PLAIN;
    canvas.text(area, row, 0, here ? canvas.glyphs().here() : " ", ink);
    canvas.text(area, row, 1, mark, progress.done() ? ink : Ink.MISSING);
    String name = state.wording().words().region(region);
    canvas.text(area, row, 3, here ? name.toUpperCase(Locale.ROOT) : name, ink);
    int bar = area.width() - 24;
    if (bar > 0 && progress.total() > 0) {
      int full = bar * progress.answered() / progress.total();
      String text =
          canvas.glyphs().full().repeat(full) + canvas.glyphs().empty().repeat(bar - full);
      canvas.text(area, row, 17, text, ink);
    }
    canvas.text(area, row, area.width() - count.length(), count, ink);
  }
}
