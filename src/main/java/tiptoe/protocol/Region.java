package tiptoe.protocol;

import java.util.List;

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
}
