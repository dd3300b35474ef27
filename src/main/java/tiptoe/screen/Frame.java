package tiptoe.screen;

import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import tiptoe.clinical.Flag;
import tiptoe.clinical.Level;
import tiptoe.exam.Baby;
import tiptoe.exam.Phase;

/**
 * One frame of an examination: on the left the regions from head to toe, beside them the open
 * question, what is missing here and what is recorded here, below what was just heard. Someone who
 * looks up from the baby for half a second finds the question or what is missing first.
 */
record Frame(Canvas canvas, ScreenState state, Overview overview) {
  /** From so many columns on there is room for what is not of the region being examined. */
  static final int WIDE = 120;

  private static final int TALL = 36;

  void draw() {
    canvas.blank();
    Area all = canvas.all();
    header(all.top(1));
    new HelpLine(canvas).draw(all.bottom(1), state);
    Area middle = new Area(0, 1, all.width(), all.height() - 2);
    int left = all.width() >= 100 ? 30 : all.width() >= 60 ? 20 : 0;
    if (left > 0) {
      new RegionList(canvas, state, overview).draw(new Area(0, 1, left, middle.height()));
      down(left, middle);
    }
    Area main = new Area(left + (left > 0 ? 2 : 0), 1, all.width() - left - 2, middle.height());
    AttentionPane attention = new AttentionPane(canvas, overview, state.sound().seconds());
    int heard = heard(main, all.width() >= WIDE, attention);
    new HeardPane(canvas, state, overview).draw(main.bottom(heard));
    Area work = main.top(main.height() - heard);
    if (all.width() >= WIDE) {
      int right = all.width() / 4;
      Area side = new Area(all.width() - right, 1, right, work.height());
      down(side.x() - 2, work);
      attention.column(side);
      work = new Area(work.x(), work.y(), work.width() - right - 2, work.height());
    } else {
      int rows = Math.min(attention.wanted(work.width()), Math.max(4, work.height() / 3));
      attention.rows(work.bottom(rows));
      work = work.top(work.height() - rows);
    }
    if (state.showing() == ScreenState.Showing.HELP) {
      new HelpPane(canvas, state.sound().seconds()).draw(work);
    } else if (HeardPane.longNotice(state, main.bottom(heard))) {
      notice(work);
    } else {
      work(work);
    }
  }

  /** Rows for what was heard: more than a few where nothing is asked and the table leaves room. */
  private int heard(Area main, boolean wide, AttentionPane attention) {
    int few = main.height() >= TALL ? main.height() / 3 : main.height() >= 20 ? 6 : 4;
    if (Prompt.of(state.wording()).isPresent()
        || state.showing() != ScreenState.Showing.EXAMINATION) {
      return few;
    }
    int width = wide ? main.width() - canvas.all().width() / 4 - 2 : main.width();
    int flags = wide ? 0 : Math.min(attention.wanted(width), Math.max(4, main.height() / 3));
    int room = main.height() - flags - new HerePane(canvas, overview).wanted(width);
    int wanted = new HeardPane(canvas, state, overview).wanted(main.width(), Math.max(few, room));
    return Math.max(few, Math.min(wanted, room));
  }

  private void notice(Area area) {
    List<List<Line>> blocks =
        new Line(state.notice(), Ink.STRONG).wrapped(area.width()).stream().map(List::of).toList();
    canvas.lines(area, Pages.at(blocks, area.height(), state.sound().seconds()));
  }

  private void work(Area area) {
    Area left =
        IdentityPane.wanted(state.wording())
            ? new IdentityPane(canvas).draw(area, state.wording())
            : Prompt.of(state.wording())
                .map(prompt -> new PromptPane(canvas).draw(area, prompt))
                .orElse(area);
    new HerePane(canvas, overview).draw(left);
  }

  private void down(int x, Area rows) {
    for (int row = 0; row < rows.height(); row++) {
      canvas.text(
          new Area(x, rows.y(), 1, rows.height()), row, 0, canvas.glyphs().down(), Ink.QUIET);
    }
  }

  private void header(Area area) {
    canvas.row(area, 0, Ink.BAR);
    String elapsed =
        "%02d:%02d".formatted(state.sound().seconds() / 60, state.sound().seconds() % 60);
    int loud = Math.min(state.sound().loudness(), SoundState.LOUDEST);
    String meter =
        canvas.glyphs().full().repeat(loud)
            + canvas.glyphs().empty().repeat(SoundState.LOUDEST - loud);
    String right = elapsed + "  mic [" + meter + "] " + sound() + " ";
    if (phase().length() + right.length() + 2 > area.width()) {
      // What state it is in goes before how loud it is.
      right = sound() + " ";
    }
    StringBuilder left = new StringBuilder(" " + phase());
    for (String more : List.of(pressing(), state.wording().whose().orElse(""), baby())) {
      if (!more.isEmpty() && left.length() + 2 + more.length() + right.length() < area.width()) {
        left.append("  ").append(more);
      }
    }
    canvas.text(area, 0, 0, left.toString(), Ink.BAR);
    canvas.text(area, 0, Math.max(0, area.width() - right.length()), right, Ink.BAR);
  }

  /** How many flags are pressing, in words. */
  private String pressing() {
    List<Level> levels = state.wording().assessment().flags().stream().map(Flag::level).toList();
    return Stream.of(Level.EMERGENCY, Level.URGENT)
        .filter(levels::contains)
        .map(level -> Collections.frequency(levels, level) + " " + level.name())
        .collect(Collectors.joining(", "));
  }

  /** Whom the judgements are about, as far as it was said. */
  private String baby() {
    Baby baby = state.record().baby();
    // The gestation in the short form that every clinician reads, since there is little room.
    return Stream.of(
            baby.sex(),
            baby.fact("gestation"),
            baby.fact("age").map(age -> state.wording().words().fact("age", age)))
        .flatMap(Optional::stream)
        .collect(Collectors.joining(", "));
  }

  private String sound() {
    if (!state.sound().listening()) {
      return "";
    }
    if (!state.sound().trouble().isEmpty()) {
      return "TROUBLE";
    }
    if (state.sound().loudness() > SoundState.LOUDEST) {
      return "TOO LOUD";
    }
    boolean kept = state.sound().kept() && state.record().phase() != Phase.PAUSED;
    return kept ? "sound kept" : "sound not kept";
  }

  private String phase() {
    if (state.sound().speaking()) {
      return "SPEAKING: NOTHING IS HEARD";
    }
    return switch (state.record().phase()) {
      case LISTENING -> state.sound().listening() ? "LISTENING" : "NOT LISTENING YET";
      case PAUSED -> "PAUSED: NOTHING IS HEARD";
      case REMARK -> "REMARK";
      case ENDING -> "END? SAY YES OR NO";
      case ENDED -> "ENDED";
      case SIGNED -> "SIGNED";
      case ADDENDUM -> "ADDENDUM";
    };
  }
}
