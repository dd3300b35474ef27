package tiptoe.screen.review;

import java.io.IOException;
import java.util.Optional;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;
import tiptoe.session.Playback;

/** The sound of an item, with a little before and behind it. */
final class ItemSound {
  private static final double AROUND = 0.5;
  private static final String NONE = "there is no sound of this item";

  private final Playback playback;
  private final Queue<String> troubles = new ConcurrentLinkedQueue<>();

  ItemSound(Playback playback) {
    this.playback = playback;
  }

  /** What went wrong with playing since this was asked last, from whatever thread. */
  Optional<String> trouble() {
    return Optional.ofNullable(troubles.poll());
  }

  /** Begins to play; what to tell the reviewer. */
  String play(Trace trace, double speed) {
    if (!trace.hasSound()) {
      return NONE;
    }
    playback.stop();
    playback.play(from(trace), to(trace), speed, troubles::add);
    return "playing " + Trace.clock(trace.from()) + " to " + Trace.clock(trace.to());
  }

  /** Writes it to a file of its own; what to tell the reviewer. */
  String export(Trace trace) {
    if (!trace.hasSound()) {
      return NONE;
    }
    try {
      return "written, readable, outside the record: " + playback.export(from(trace), to(trace));
    } catch (IOException e) {
      return e.getMessage();
    }
  }

  private static double from(Trace trace) {
    return Math.max(0, trace.from() - AROUND);
  }

  private static double to(Trace trace) {
    return trace.to() + AROUND;
  }
}
