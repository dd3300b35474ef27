package tiptoe.exam;

import java.time.Instant;
import java.util.List;

/** Where events are kept. */
public interface EventSink {
  /**
   * Keeps events, in order, and returns only once they are safe. Either all of them count or none.
   *
   * @throws NotRecorded when they could not be kept
   */
  List<Entry> append(Instant at, List<Event> events);

  /** SHA-256 of the line that would be the last if these were kept; nothing is kept by it. */
  String headAfter(Instant at, List<Event> events);
}
