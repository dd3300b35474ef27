package tiptoe.exam;

import java.time.Instant;
import java.util.List;
import tiptoe.finding.Outcome;
import tiptoe.finding.Source;
import tiptoe.language.Meaning;

/**
 * An utterance in the history of the record, used or not.
 *
 * @param number counted from 1
 * @param at when it was recorded
 * @param candidates what it seems to say, when it is unsure
 * @param uncovered words no phrase covers
 * @param reviewed whether the reviewer has accepted or dismissed it; null before that
 */
public record Utterance(
    int number,
    Instant at,
    Heard heard,
    List<Meaning.States> candidates,
    List<String> uncovered,
    Boolean reviewed) {
  public Utterance {
    candidates = List.copyOf(candidates);
    uncovered = List.copyOf(uncovered);
  }

  /** Whether the reviewer still has to look at it. */
  public boolean waits() {
    return heard.outcome() == Outcome.UNSURE && reviewed == null;
  }

  /** Whether some of what it seems to say was read beyond the grammars. */
  boolean wasTagged() {
    return candidates.stream()
        .anyMatch(candidate -> candidate.statement().source() == Source.TAGGER);
  }

  Utterance withReviewed(boolean accepted) {
    return new Utterance(number, at, heard, candidates, uncovered, accepted);
  }
}
