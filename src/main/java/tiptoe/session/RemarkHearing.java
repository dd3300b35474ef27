package tiptoe.session;

import java.io.IOException;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import tiptoe.audio.Chunk;
import tiptoe.audio.Pcm;
import tiptoe.exam.Changes;
import tiptoe.exam.Event;
import tiptoe.exam.ExamRecord;
import tiptoe.exam.Phase;
import tiptoe.exam.Remark;
import tiptoe.exam.Repair;
import tiptoe.speech.Hypothesis;
import tiptoe.speech.Recogniser;
import tiptoe.speech.RemarkRepair;

/**
 * Hears remarks in free words, beside the recogniser of the examination. It is given all the sound,
 * keeps the last of it, and listens from the second on at which a remark began.
 */
public final class RemarkHearing implements AutoCloseable {
  /** A remark is known only when the words that start it are over. */
  private static final int KEPT = 20 * Pcm.RATE;

  /** What is left of the words that end a remark; they belong to it no more. */
  private static final double TAIL = 0.1;

  private final FreeHearing free;
  private final ExamSession session;
  private final double offset;
  private final Deque<Chunk> recent = new ArrayDeque<>();
  private final List<Hypothesis> heard = new ArrayList<>();
  private Recogniser recogniser;
  private double from;

  /**
   * @param offset second of the examination at which the sound begins
   */
  RemarkHearing(FreeHearing free, ExamSession session, double offset) {
    this.free = free;
    this.session = session;
    this.offset = offset;
  }

  /** Takes the sound that the recogniser of the examination takes, before it does. */
  void accept(Chunk chunk) {
    if (recogniser != null) {
      heard.addAll(recogniser.accept(chunk.samples()));
      return;
    }
    recent.add(chunk);
    while (chunk.end() - recent.peek().position() > KEPT) {
      recent.remove();
    }
  }

  /** Looks whether a remark has begun or ended since; one that has ended is put in free words. */
  Optional<Changes> look() throws IOException {
    ExamRecord record = session.record();
    if (recogniser == null && record.phase() == Phase.REMARK) {
      record
          .events(Event.RemarkStarted.class)
          .reduce((first, last) -> last)
          .ifPresent(event -> from = event.start() - offset);
      begin();
    } else if (recogniser != null && record.phase() != Phase.REMARK) {
      List<Remark> remarks = record.remarks();
      return remarks.isEmpty()
          ? Optional.empty()
          : Optional.of(end(remarks.get(remarks.size() - 1)));
    }
    return Optional.empty();
  }

  private void begin() throws IOException {
    recogniser = free.recogniser();
    heard.clear();
    long first = Math.round(from * Pcm.RATE);
    Chunk oldest = recent.peek();
    from = oldest == null ? from : Math.max(from, (double) oldest.position() / Pcm.RATE);
    for (Chunk chunk : recent) {
      int skipped = (int) Math.max(0, Math.min(chunk.samples().length, first - chunk.position()));
      heard.addAll(recogniser.accept(chunk.samples(), skipped, chunk.samples().length - skipped));
    }
    recent.clear();
  }

  private Changes end(Remark made) throws IOException {
    recogniser.finish().ifPresent(heard::add);
    close();
    double end = made.end() - offset - TAIL;
    String text =
        heard.stream()
            .flatMap(utterance -> utterance.phraseWords().stream())
            .filter(word -> from + word.start() < end)
            .map(tiptoe.speech.Word::text)
            .collect(Collectors.joining(" "));
    RemarkRepair.Repaired repaired = free.repaired(text);
    return session.reword(
        made.number(),
        repaired.text(),
        repaired.repairs().stream().map(put -> new Repair(put.heard(), put.word())).toList());
  }

  @Override
  public void close() {
    if (recogniser != null) {
      recogniser.close();
      recogniser = null;
    }
  }
}
