package tiptoe.protocol;

import java.util.List;

/**
 * Something said beside a value: the grade of a murmur, the base of a dimple.
 *
 * @param id unique within its step
 * @param label for people
 * @param of the value it belongs to; null where it goes with any value of the step
 * @param ask whether the tool asks when it was not said
 * @param values what it can be; empty where it is a number
 * @param measure what its number means; null where it is a word
 * @param many whether several values may stand together
 */
public record Detail(
    String id,
    String label,
    String of,
    boolean ask,
    List<String> values,
    Measure measure,
    boolean many) {
  /** Which repeat of a measurement a number is; a first measurement does not have it. */
  public static final String REPEAT = "repeat";

  /** The detail that asks for the side of a value whose step has none. */
  public static final String SIDE = "side";

  public Detail {
    values = List.copyOf(values);
  }

  public boolean belongsTo(String value) {
    return of == null || of.equals(value);
  }
}
