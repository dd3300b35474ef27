package tiptoe.exam;

import java.time.Instant;
import java.util.List;
import tiptoe.finding.Question;

/**
 * A question in the history of the record, as {@link Event.QuestionAsked} has it.
 *
 * @param at when it was asked
 * @param utterance number of the utterance that raised it; null when none did
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
