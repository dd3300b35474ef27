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
}
