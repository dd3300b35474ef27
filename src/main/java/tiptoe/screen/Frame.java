package tiptoe.screen;

import tiptoe.exam.Phase;

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
      new RegionList(canvas, state, overview).draw(new Area(0, 1, left, middle.height()));
      down(left, middle);
    }
    Area main = new Area(left + (left > 0 ? 2 : 0), 1, all.width() - left - 2, middle.height());
    int heard = main.height() >= TALL ? main.height() / 3 : main.height() >= 20 ? 6 : 4;
    new HeardPane(canvas, state, overview).draw(main.bottom(heard));
    Area work = main.top(main.height() - heard);
    if (all.width() >= WIDE) {
      int right = all.width() / 4;
      Area side = new Area(all.width() - right, 1, right, work.height());
      down(side.x() - 2, work);
      new AttentionPane(canvas, overview).column(side);
      work = new Area(work.x(), work.y(), work.width() - right - 2, work.height());
      work(work);
    } else {
      int rows = Math.min(overview.flags().size() + (overview.sizes().isEmpty() ? 0 : 1), 4);
      new AttentionPane(canvas, overview).rows(work.bottom(rows));
      work(work.top(work.height() - rows));
    }
  }

  private void work(Area area) {
    Area left =
        Prompt.of(state.record())
            .map(prompt -> new PromptPane(canvas).draw(area, prompt))
            .orElse(area);
    new HerePane(canvas, overview).draw(left);
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
    String right = elapsed + "  mic [" + meter + "] " + sound() + " ";
    String text = phase() + label;
    canvas.text(area, 0, 0, " " + text, Ink.BAR);
    canvas.text(area, 0, Math.max(0, area.width() - right.length()), right, Ink.BAR);
  }

  private String sound() {
    if (!state.listening()) {
      return "";
    }
    if (!state.trouble().isEmpty()) {
      return "TROUBLE";
    }
    if (state.loudness() > ScreenState.LOUDEST) {
      return "TOO LOUD";
    }
    boolean kept = state.keepsSound() && state.record().phase() != Phase.PAUSED;
    return kept ? "sound kept" : "sound not kept";
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
    StringBuilder text = new StringBuilder(" say/press");
    for (Voice voice : Voice.values()) {
      String more = "  " + voice.key() + " " + voice.quoted();
      if (text.length() + more.length() <= area.width()) {
        text.append(more);
      }
    }
    canvas.row(area, 0, Ink.BAR);
    canvas.text(area, 0, 0, text.toString(), Ink.BAR);
  }
}
