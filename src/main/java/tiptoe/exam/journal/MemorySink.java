package tiptoe.exam.journal;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import tiptoe.exam.Entry;
import tiptoe.exam.Event;
import tiptoe.exam.EventSink;

/** Keeps events in memory only, for typed text, replays and tests. */
public final class MemorySink implements EventSink {
  private final Chain chain = Chain.start();
  private final List<Entry> entries = new ArrayList<>();

  @Override
  public List<Entry> append(Instant at, List<Event> events) {
    List<Entry> added = new ArrayList<>();
    for (Event event : events) {
      Chain.Line line = chain.next(at, event);
      chain.accept(line);
      added.add(line.entry());
    }
    entries.addAll(added);
    return List.copyOf(added);
  }

  @Override
  public String headAfter(Instant at, List<Event> events) {
    return chain.headAfter(at, events);
  }

  public List<Entry> entries() {
    return List.copyOf(entries);
  }
}
