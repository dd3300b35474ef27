package tiptoe.protocol;

import java.util.List;
import java.util.stream.Stream;

/**
 * A part of the body or of the examination.
 *
 * @param id unique in the protocol
 * @param label for people
 * @param steps in the order they are usually taken
 */
public record Region(String id, String label, List<Step> steps) {
  public Region {
    steps = List.copyOf(steps);
  }

  /** The same with what a ward adds. */
  Region with(LocalProtocol local) {
    return new Region(
        id,
        label,
        Stream.concat(
                steps.stream().map(step -> step.with(local)),
                local.steps().stream().filter(step -> step.region().equals(id)))
            .toList());
  }
}
