package tiptoe.screen;

import com.googlecode.lanterna.screen.Screen;
import java.io.IOException;
import tiptoe.exam.ExamRecord;
import tiptoe.exam.Phase;

/** Paints states on a screen; the terminal is sent only those cells that changed. */
final class Painter {
  private final Screen screen;
  private final Look look;
  private ExamRecord seen;
  private Overview overview;

  Painter(Screen screen, Look look) {
    this.screen = screen;
    this.look = look;
  }

  /**
   * Paints a state.
   *
   * @param resized whether the size has changed: a terminal then moves its text about, so that
   *     every cell is written again
   */
  void paint(ScreenState state, boolean resized) throws IOException {
    if (state.record() != seen) {
      seen = state.record();
      overview = Overview.of(state.wording(), look.glyphs());
    }
    Canvas canvas = look.canvas(screen);
    if (seen.phase() == Phase.ENDED || state.showing() == ScreenState.Showing.SUMMARY) {
      new SummaryFrame(canvas, state).draw();
    } else {
      new Frame(canvas, state, overview).draw();
    }
    screen.refresh(resized ? Screen.RefreshType.COMPLETE : Screen.RefreshType.DELTA);
  }
}
