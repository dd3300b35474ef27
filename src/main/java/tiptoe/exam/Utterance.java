package tiptoe.exam;

import java.time.Instant;
import java.util.List;
import java.util.stream.Stream;
import tiptoe.finding.Finding;
import tiptoe.finding.Outcome;
import tiptoe.language.Meaning;

/**
 * An utterance in the history of the record, used or not, as {@link Event.UtteranceHeard} has it.
 *
 * @param at when it was recorded
 * @param reviewed whether it was accepted or dismissed; null before that
 */
public record Utterance(
    int number,
    Instant at,
    Heard heard,
    List<Meaning.States> candidates,
    List<Meaning.Asks> asks,
    List<Meaning.Fact> facts,
    List<String> uncovered,
    Boolean reviewed) {
  public Utterance {
    candidates = List.copyOf(candidates);
    // Older records have none.
    asks = asks == null ? List.of() : List.copyOf(asks);
    facts = facts == null ? List.of() : List.copyOf(facts);
    uncovered = List.copyOf(uncovered);
  }

  /** Whether the reviewer still has to look at it. */
  public boolean waits() {
    return heard.outcome() == Outcome.UNSURE && reviewed == null;
  }

  /** What is offered when it is unsure, in the order that people are told. */
  public List<Meaning> offered() {
    return Stream.of(facts, candidates, asks).<Meaning>flatMap(List::stream).toList();
  }

  /** Findings that it may state when it is unsure, those that lack something included. */
  public Stream<Finding> seems() {
    return offered().stream().flatMap(offer -> offer.findings().stream());
  }

  Utterance withReviewed(boolean accepted) {
    return new Utterance(number, at, heard, candidates, asks, facts, uncovered, accepted);
  }
}
