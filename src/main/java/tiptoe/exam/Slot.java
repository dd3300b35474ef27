package tiptoe.exam;

import com.fasterxml.jackson.annotation.JsonInclude;
import tiptoe.protocol.Side;

/**
 * A place in the checklist: a step, on one side where it has sides.
 *
 * @param step id of the step
 * @param side null where the step has none
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record Slot(String step, Side side) {
  @Override
  public String toString() {
    return side == null ? step : step + " " + side.id();
  }
}
