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
    List<Chain.Line> lines = chain.next(at, events);
    lines.forEach(chain::accept);
    List<Entry> added = lines.stream().map(Chain.Line::entry).toList();
    entries.addAll(added);
    return added;
  }

  @Override
  public String headAfter(Instant at, List<Event> events) {
    return chain.headAfter(at, events);
  }

  public List<Entry> entries() {
    return List.copyOf(entries);
  }
}
