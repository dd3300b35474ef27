package tiptoe.session;

import java.time.Duration;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.function.LongSupplier;

/**
 * When the tool spoke. What is decoded now may have come in a while ago, where a machine is slow.
 */
final class OwnVoice {
  /** Longer than sound waits to be decoded, in ns. */
  private static final long KEPT = Duration.ofMinutes(2).toNanos();

  /**
   * A stretch in which it spoke, by the system's own clock.
   *
   * @param latest when it is over in any case: a voice that never ends, or sound that nothing
   *     plays, must not keep the microphone shut
   */
  private record Stretch(long from, long latest) {}

  private final LongSupplier clock;
  private final Deque<Stretch> over = new ArrayDeque<>();
  private Stretch now;
  private int speaking;

  /**
   * @param clock in ns, such as {@link System#nanoTime}
   */
  OwnVoice(LongSupplier clock) {
    this.clock = clock;
  }

  /** Something is to be said, which takes no longer than this. */
  synchronized void begin(Duration longest) {
    long at = clock.getAsLong();
    long from = speaking == 0 ? at : now.from();
    long busy = speaking == 0 ? at : Math.max(at, now.latest());
    now = new Stretch(from, busy + longest.toNanos());
    speaking++;
  }

  /** What was to be said first was said. */
  synchronized void end() {
    speaking--;
    if (speaking == 0) {
      over.add(new Stretch(now.from(), Math.min(now.latest(), clock.getAsLong())));
      now = null;
      while (over.peek().latest() < clock.getAsLong() - KEPT) {
        over.poll();
      }
    }
  }

  /** Whether it spoke so many seconds ago. */
  synchronized boolean spoke(double secondsAgo) {
    long at = clock.getAsLong() - Math.round(secondsAgo * 1e9);
    return now != null && holds(now, at) || over.stream().anyMatch(one -> holds(one, at));
  }

  private static boolean holds(Stretch stretch, long at) {
    return stretch.from() <= at && at < stretch.latest();
  }
}
