package tiptoe.language;

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
 */
public record Dialogue(String region, List<Finding> recent, Question open) {
  public static final Dialogue START = new Dialogue(null, List.of(), null);

  public Dialogue {
    recent = List.copyOf(recent);
  }

  public Dialogue asking(Question question) {
    return new Dialogue(region, recent, question);
  }
}
