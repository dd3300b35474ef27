package tiptoe.clinical;

import java.util.List;

/**
 * Something about the baby that was not stated and that a rule cannot do without.
 *
 * @param fact id of the fact, as in {@link tiptoe.exam.Baby}
 * @param reasons what it decides, each for people
 */
public record Need(String fact, List<String> reasons) {
  public Need {
    reasons = List.copyOf(reasons);
  }
}
