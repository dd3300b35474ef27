package tiptoe.session;

import java.util.Locale;
import tiptoe.audio.CaptureEvent;

/** A microphone's level and its troubles, for a line of text. */
public final class MicrophoneWording {
  private static final int WIDTH = 10;
  private static final double LOWEST_DB = -60;
  private static final double STEP_DB = -LOWEST_DB / WIDTH;

  private MicrophoneWording() {}

  /**
   * The level as a bar of ten signs, 6 dB each; an exclamation mark where sound was cut off.
   *
   * @param rmsDb in dB below full scale
   */
  public static String bar(double rmsDb, boolean clipping) {
    int filled = (int) Math.round((rmsDb - LOWEST_DB) / STEP_DB);
    int shown = Math.max(0, Math.min(WIDTH, filled));
    return "[%s%s]%s".formatted("#".repeat(shown), ".".repeat(WIDTH - shown), clipping ? "!" : "");
  }

  /** What a microphone reports, for a line of text. */
  static String of(CaptureEvent event) {
    if (event instanceof CaptureEvent.Trouble trouble) {
      String detail = trouble.detail().isEmpty() ? "" : " (" + trouble.detail() + ")";
      return "no sound, " + trouble.cause().words() + detail;
    }
    CaptureEvent.Recovered back = (CaptureEvent.Recovered) event;
    return String.format(Locale.ROOT, "sound is back, %.1f s were not heard", back.gap().seconds());
  }
}
