package tiptoe.exam;

import java.util.Map;
import java.util.Optional;

/**
 * What is known of the baby beside the findings. Nothing is assumed: what was not stated is empty.
 *
 * @param facts fact id to value: {@code label}, {@code sex} girl|boy|undetermined, {@code
 *     gestation} such as 39+4, {@code age} in hours, {@code born-at} ISO date-time, {@code
 *     first-born} yes|no, {@code presentation} breech|cephalic, {@code breech-in-last-month}
 *     yes|no, {@code hip-family-history} yes|no, {@code multiple} yes|no, {@code birth-mode}
 *     vaginal|forceps|vacuum|caesarean, {@code heart-family-history} yes|no, {@code
 *     eye-family-history} yes|no, {@code birth-weight} in g
 */
public record Baby(Map<String, String> facts) {
  public static final Baby UNKNOWN = new Baby(Map.of());

  public Baby {
    facts = java.util.Collections.unmodifiableMap(new java.util.TreeMap<>(facts));
  }

  public Optional<String> fact(String id) {
    return Optional.ofNullable(facts.get(id));
  }

  public Optional<String> sex() {
    return fact("sex");
  }

  public Optional<Gestation> gestation() {
    return fact("gestation").map(Gestation::parse);
  }

  /** Age in hours at the examination. */
  public Optional<Double> ageHours() {
    return fact("age").map(Double::valueOf);
  }

  /** Birth weight in g. */
  public Optional<Double> birthWeight() {
    return fact("birth-weight").map(Double::valueOf);
  }

  public boolean is(String factId, String value) {
    return value.equals(facts.get(factId));
  }

  public Baby with(String factId, String value) {
    Map<String, String> more = new java.util.TreeMap<>(facts);
    more.put(factId, value);
    return new Baby(more);
  }

  /** Without this fact, as if it had never been stated. */
  public Baby without(String factId) {
    Map<String, String> less = new java.util.TreeMap<>(facts);
    less.remove(factId);
    return new Baby(less);
  }
}
