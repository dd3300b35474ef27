package tiptoe.exam;

import java.util.List;
import java.util.Map;
import tiptoe.finding.Finding;
import tiptoe.finding.Quantity;
import tiptoe.protocol.Side;

/**
 * What now stands for one step on one side. A step that can take several values at once has one
 * answer for each.
 *
 * @param finding what was said of it, taken together; its source is that of the statement
 * @param statement number of the statement it stands on, counted from 1 in the examination; {@link
 *     #NO_STATEMENT} for what was heard unsurely
 */
public record Answer(Finding finding, int statement) {
  /** No statement was made of it, since it was heard unsurely or lacks its side. */
  public static final int NO_STATEMENT = 0;

  public String step() {
    return finding.step();
  }

  public Side side() {
    return finding.side();
  }

  public String value() {
    return finding.value();
  }

  public Quantity quantity() {
    return finding.quantity();
  }

  public Map<String, String> details() {
    return finding.details();
  }

  public List<String> denied() {
    return finding.denied();
  }

  public boolean group() {
    return finding.group();
  }

  public boolean is(String stepId, String valueId) {
    return step().equals(stepId) && valueId.equals(value());
  }
}
