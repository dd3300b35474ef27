package tiptoe.exam;

import java.time.Instant;
import java.util.List;
import tiptoe.finding.Question;

/**
 * A question in the history of the record.
 *
 * @param number counted from 1
 * @param question what is asked; its {@code about} is null when it is about the context alone
 * @param correction whether the finding it is about was said as a correction
 * @param at when it was asked
 * @param utterance number of the utterance that raised it; null when none did
 * @param statement the statement that waits for it; null when none does
 * @param against the statements that one contradicts
 * @param fact the fact that waits for it; null when none does
 * @param value the value of that fact
 * @param open whether it still wants an answer
 * @param outcome how it was closed, for people; null while it is open
 */
public record Asked(
    int number,
    Question question,
    boolean correction,
    Instant at,
    Integer utterance,
    Integer statement,
    List<Integer> against,
    String fact,
    String value,
    boolean open,
    String outcome) {
  public Asked {
    against = List.copyOf(against);
  }

  static Asked of(Event.QuestionAsked event, Instant at) {
    return new Asked(
        event.number(),
        event.question(),
        event.correction(),
        at,
        event.utterance(),
        event.statement(),
        event.against(),
        event.fact(),
        event.value(),
        true,
        null);
  }

  Asked closed(String newOutcome) {
    return new Asked(
        number,
        question,
        correction,
        at,
        utterance,
        statement,
        against,
        fact,
        value,
        false,
        newOutcome);
  }
}
