package tiptoe.finding;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Pattern;
import tiptoe.protocol.Side;

/**
 * One finding as it was said: about one step, on one side.
 *
 * @param step id of the step
 * @param side the side; null where the step or the value has none, or where none was said
 * @param value id of the value; null for a measurement
 * @param quantity the number, in the unit of the step; null where the step has values
 * @param details what was said beside the value: id of the detail to its value, several values
 *     joined by {@code ,}
 * @param denied abnormal values that were denied ("no crepitus"), in the order they were said
 * @param group whether it was said for a whole region ("eyes normal") and not for this step alone
 * @param source how it was understood
 */
@JsonInclude(JsonInclude.Include.NON_EMPTY)
public record Finding(
    String step,
    Side side,
    String value,
    Quantity quantity,
    Map<String, String> details,
    List<String> denied,
    boolean group,
    Source source) {
  private static final Pattern BARE = Pattern.compile("[\\p{L}\\p{N},.+-]+");
  private static final String GROUP = "[region]";

  public Finding {
    details = Collections.unmodifiableMap(new TreeMap<>(details));
    denied = List.copyOf(denied);
    if ((value == null) == (quantity == null)) {
      throw new IllegalArgumentException("expected a value or a quantity for step " + step);
    }
  }

  public static Finding of(String step, Side side, String value) {
    return new Finding(step, side, value, null, Map.of(), List.of(), false, Source.GRAMMAR);
  }

  public static Finding of(String step, Quantity quantity) {
    return new Finding(step, null, null, quantity, Map.of(), List.of(), false, Source.GRAMMAR);
  }

  /** Step, side and value or number alone, as answers are compared and questions put. */
  public Finding bare() {
    return new Finding(step, side, value, quantity, Map.of(), List.of(), false, Source.GRAMMAR);
  }

  /** Whether the other says the same of the other side. */
  public boolean isAcross(Finding other) {
    return side != null
        && other.side != null
        && side != other.side
        && withSide(other.side).equals(other);
  }

  public Finding withSide(Side newSide) {
    return new Finding(step, newSide, value, quantity, details, denied, group, source);
  }

  public Finding withQuantity(Quantity newQuantity) {
    return new Finding(step, side, value, newQuantity, details, denied, group, source);
  }

  public Finding withDetails(Map<String, String> newDetails) {
    return new Finding(step, side, value, quantity, newDetails, denied, group, source);
  }

  public Finding withDenied(List<String> newDenied) {
    return new Finding(step, side, value, quantity, details, newDenied, group, source);
  }

  public Finding withSource(Source newSource) {
    return new Finding(step, side, value, quantity, details, denied, group, newSource);
  }

  /**
   * The one notation of a finding, in tables, measurements and messages for developers: step and
   * side, value or number, details, {@code !} before what was denied, and in brackets whether it
   * was said of a whole region and how it was understood, unless by the grammars: {@code
   * clavicle.left swelling size="2 cm" !crepitus [tagger]}, {@code capillary-refill < 2 s}.
   */
  @Override
  public String toString() {
    StringBuilder text = new StringBuilder(step);
    if (side != null) {
      text.append('.').append(side.id());
    }
    text.append(' ').append(quantity == null ? value : quantity);
    details.forEach((id, said) -> text.append(' ').append(id).append('=').append(quoted(said)));
    denied.forEach(id -> text.append(" !").append(id));
    text.append(group ? " " + GROUP : "");
    return source == Source.GRAMMAR ? text.toString() : text + " [" + source.id() + "]";
  }

  private static String quoted(String text) {
    return BARE.matcher(text).matches()
        ? text
        : '"' + text.replace("\\", "\\\\").replace("\"", "\\\"") + '"';
  }
}
