package tiptoe.exam.journal;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import tiptoe.exam.Entry;
import tiptoe.exam.Event;
import tiptoe.files.Sha256;

/** Numbers events and links each to the bytes of the one before. */
public final class Chain {
  private long seq;
  private String prev;

  private Chain(long seq, String prev) {
    this.seq = seq;
    this.prev = prev;
  }

  /** A chain that has no entry yet. */
  public static Chain start() {
    return new Chain(0, Entry.NONE_BEFORE);
  }

  /** A chain whose last entry has this number and these bytes, without the line feed. */
  public static Chain after(long seq, byte[] line) {
    return new Chain(seq, Sha256.hexOf(line));
  }

  /** The next entry, with its bytes. The chain goes on only when {@link #accept} is called. */
  public Line next(Instant at, Event event) {
    return EventLines.line(new Entry(seq + 1, at, prev, event));
  }

  /** Takes the line as written. */
  public void accept(Line line) {
    seq = line.entry().seq();
    prev = Sha256.hexOf(line.bytes());
  }

  /** The next entries, in order; the chain itself does not go on. */
  List<Line> next(Instant at, List<Event> events) {
    Chain ahead = new Chain(seq, prev);
    List<Line> lines = new ArrayList<>();
    for (Event event : events) {
      Line line = ahead.next(at, event);
      ahead.accept(line);
      lines.add(line);
    }
    return lines;
  }

  /** The head there would be behind these events. */
  String headAfter(Instant at, List<Event> events) {
    Chain ahead = new Chain(seq, prev);
    next(at, events).forEach(ahead::accept);
    return ahead.head();
  }

  public long seq() {
    return seq;
  }

  /** SHA-256 of the last line: it stands for everything up to there. */
  public String head() {
    return prev;
  }

  /** An entry and its bytes, without the line feed. */
  public record Line(Entry entry, byte[] bytes) {}
}
