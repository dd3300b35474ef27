package tiptoe.language;

import java.time.Clock;
import java.util.List;
import tiptoe.finding.Finding;
import tiptoe.finding.Question;

/**
 * What earlier utterances leave behind for the next one.
 *
 * @param region id of the region being examined; null before the first
 * @param recent statements of that region since it was entered, oldest first, for "same on the
 *     right"
 * @param open the question that is being shown; null when there is none
 * @param overtaken whether something was stated since it was asked
 * @param offering whether a yes or no is for what is offered
 * @param clock tells when "this morning" was; null where moments are not understood
 */
public record Dialogue(
    String region,
    List<Finding> recent,
    Question open,
    boolean overtaken,
    boolean offering,
    Clock clock) {
  public static final Dialogue START = new Dialogue(null, List.of(), null);

  public Dialogue {
    recent = List.copyOf(recent);
  }

  public Dialogue(String region, List<Finding> recent, Question open) {
    this(region, recent, open, false, false, null);
  }

  public Dialogue asking(Question question, boolean isOvertaken, boolean offers) {
    return new Dialogue(region, recent, question, isOvertaken, offers, clock);
  }

  public Dialogue at(Clock newClock) {
    return new Dialogue(region, recent, open, overtaken, offering, newClock);
  }
}
