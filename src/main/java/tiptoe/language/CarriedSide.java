package tiptoe.language;

import java.util.Collection;
import java.util.List;
import tiptoe.protocol.Protocol;
import tiptoe.protocol.Side;
import tiptoe.protocol.Value;

/**
 * A side said once: it carries to the next finding of the same utterance and region, no further.
 */
final class CarriedSide {
  private final Protocol protocol;
  private Collection<Side> sides = List.of();
  private String region;

  CarriedSide(Protocol protocol) {
    this.protocol = protocol;
  }

  /** The sides a finding is on, those it says or those carried to it; carries what it says on. */
  Collection<Side> of(Clause clause, List<String> steps) {
    String here = protocol.step(steps.get(0)).region();
    boolean carries = clause.sides.isEmpty() && here.equals(region) && wantsSide(clause, steps);
    Collection<Side> found = carries ? sides : clause.sides;
    sides = List.copyOf(clause.sides);
    region = here;
    return found;
  }

  // "Caput on the left, sutures overriding": sutures have no side, none is carried to them.
  private boolean wantsSide(Clause clause, List<String> steps) {
    return steps.stream()
        .map(protocol::step)
        .anyMatch(
            step ->
                step.sided()
                    || clause.values.stream()
                        .anyMatch(id -> step.value(id).map(Value::sided).orElse(false)));
  }
}
