package tiptoe.exam;

import java.util.List;
import java.util.Map;
import tiptoe.finding.Finding;
import tiptoe.finding.Quantity;
import tiptoe.finding.Source;
import tiptoe.protocol.Side;

/**
 * What now stands for one step on one side. A step that can take several values at once has one
 * answer for each.
 *
 * @param step id of the step
 * @param side the side; null where the step and the value have none
 * @param value id of the value, or {@link tiptoe.protocol.Value#NOT_EXAMINED}; null for a number
 * @param quantity the number, in the unit of the step; null where the step has values
 * @param details what was said beside it: id of the detail to its value, several joined by {@code
 *     ,}
 * @param denied abnormal values that were denied
 * @param group whether it was said for a whole region and not for this step alone
 * @param statement number of the statement it stands on, counted from 1 in the examination
 */
public record Answer(
    String step,
    Side side,
    String value,
    Quantity quantity,
    Map<String, String> details,
    List<String> denied,
    boolean group,
    int statement) {
  public Answer {
    details = java.util.Collections.unmodifiableMap(new java.util.TreeMap<>(details));
    denied = List.copyOf(denied);
  }

  /** The same as one statement, to be put into words. */
  public Finding asStatement() {
    return new Finding(step, side, value, quantity, details, denied, group, Source.GRAMMAR);
  }

  public boolean is(String stepId, String valueId) {
    return step.equals(stepId) && valueId.equals(value);
  }
}
