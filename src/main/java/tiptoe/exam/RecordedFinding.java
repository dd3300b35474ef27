package tiptoe.exam;

import java.time.Instant;
import java.util.List;
import tiptoe.finding.Finding;

/**
 * A statement in the history of the record: nothing is ever erased, only its status changes.
 *
 * @param number counted from 1
 * @param correction whether it was said to replace what stood
 * @param at when it was recorded
 * @param utterance number of the utterance it was said in; null when the reviewer made it
 * @param words the words of that utterance; empty when there is none
 * @param start the second of the audio that utterance begins at; null when there is none
 * @param status how it stands now
 * @param of the statements it replaced, confirms or contradicts
 * @param author the reviewer who made it; null when the clinician said it
 */
public record RecordedFinding(
    int number,
    Finding statement,
    boolean correction,
    Instant at,
    Integer utterance,
    String words,
    Double start,
    Status status,
    List<Integer> of,
    String author) {
  public RecordedFinding {
    of = List.copyOf(of);
  }

  public Slot slot() {
    return new Slot(statement.step(), statement.side());
  }

  public boolean stands() {
    return status == Status.STANDS;
  }

  RecordedFinding with(Status newStatus, List<Integer> newOf) {
    return new RecordedFinding(
        number, statement, correction, at, utterance, words, start, newStatus, newOf, author);
  }
}
