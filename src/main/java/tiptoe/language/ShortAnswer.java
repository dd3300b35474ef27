package tiptoe.language;

import java.util.List;
import java.util.Optional;
import tiptoe.protocol.Norm;
import tiptoe.protocol.Region;
import tiptoe.protocol.Step;
import tiptoe.protocol.Value;

/** "Left negative" in the region being examined: which of its steps that can be said of. */
final class ShortAnswer {
  private ShortAnswer() {}

  /** The sided steps of the region that have such a value. */
  static List<Step> steps(Region region, String said) {
    return region.steps().stream()
        .filter(step -> step.sided() && value(step, said).isPresent())
        .toList();
  }

  /** The value of the step that was said; "intact" and "clear" are said of what is normal. */
  static Optional<String> value(Step step, String said) {
    Optional<Value> normal = step.normal();
    if (said.equals("normal")) {
      return normal.map(Value::id);
    }
    boolean saysNormal = said.equals("intact") || said.equals("clear");
    return step.value(said)
        .or(() -> saysNormal ? normal.filter(v -> v.norm() == Norm.NORMAL) : Optional.empty())
        .map(Value::id);
  }
}
