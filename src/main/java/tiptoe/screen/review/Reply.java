package tiptoe.screen.review;

import java.util.List;
import tiptoe.finding.Question;

/**
 * What became of something the reviewer asked for.
 *
 * @param text for people
 * @param refused whether nothing was done
 * @param questions what has to be answered before the rest can be recorded
 */
public record Reply(String text, boolean refused, List<Question> questions) {
  public Reply {
    questions = List.copyOf(questions);
  }

  static Reply done(String text) {
    return new Reply(text, false, List.of());
  }

  static Reply refused(String text) {
    return new Reply(text, true, List.of());
  }
}
