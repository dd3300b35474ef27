package tiptoe.protocol;

import java.util.List;
import java.util.Optional;

/**
 * One thing to look at, listen to, feel or measure.
 *
 * @param id unique in the protocol
 * @param region id of the region it belongs to
 * @param label for people
 * @param one the label of one side alone, where it is another word: "eye" of "eyes"; else null
 * @param sided whether left and right are answers of their own
 * @param key whether it must be stated for itself: "all normal" for the region never fills it
 * @param optional whether its absence is not a missing step (a third Apgar score, the spleen tip)
 * @param sex {@code boy} or {@code girl} where it applies to one only, else null
 * @param many whether several values may stand together, such as two skin findings
 * @param measure what its number means; null where the step has values instead
 * @param values what it can be, normal first; empty where it is a number
 * @param details what can be said beside a value
 * @param series whether it is measured again and again: a second number is a repeat that stands
 *     beside the first, with the detail {@code repeat}, and contradicts nothing
 * @param beside values that are told beside the answer and do not answer the step by themselves: a
 *     hydrocele does not say where the testis is
 * @param reminder good practice to remind of, never to enforce; null where there is none
 */
public record Step(
    String id,
    String region,
    String label,
    String one,
    boolean sided,
    boolean key,
    boolean optional,
    String sex,
    boolean many,
    Measure measure,
    List<Value> values,
    List<Detail> details,
    boolean series,
    List<String> beside,
    String reminder) {
  public Step {
    values = List.copyOf(values);
    details = List.copyOf(details);
    beside = List.copyOf(beside);
  }

  /** The same where a ward makes it a key step, or reminds of more. */
  Step with(LocalProtocol local) {
    String more = local.remarks().get(id);
    String all = reminder == null || more == null ? more : reminder + "; " + more;
    return new Step(
        id,
        region,
        label,
        one,
        sided,
        key || local.keySteps().contains(id),
        optional,
        sex,
        many,
        measure,
        values,
        details,
        series,
        beside,
        more == null ? reminder : all);
  }

  /** Such as {@code left eye}; the label alone where there is no side. */
  public String name(Side side) {
    return side == null ? label : side.id() + " " + (one == null ? label : one);
  }

  public Optional<Value> value(String valueId) {
    return values.stream().filter(value -> value.id().equals(valueId)).findFirst();
  }

  /** How a value stands to what is expected; neutral where there is none or it is not known. */
  public Norm norm(String valueId) {
    return value(valueId).map(Value::norm).orElse(Norm.NEUTRAL);
  }

  /** Whether a value is what is expected; false where there is none or it is not known. */
  public boolean isNormal(String valueId) {
    return norm(valueId) == Norm.NORMAL;
  }

  /**
   * Whether two values may stand beside each other: where several may, what is normal and what is
   * abnormal may not; what is benign contradicts neither ("pink", and the hands and feet blue).
   */
  public boolean allows(String one, String other) {
    boolean contradiction =
        norm(one) == Norm.NORMAL && norm(other) == Norm.ABNORMAL
            || norm(one) == Norm.ABNORMAL && norm(other) == Norm.NORMAL;
    return many && !contradiction && value(one).isPresent() && value(other).isPresent();
  }

  public Optional<Detail> detail(String detailId) {
    return details.stream().filter(detail -> detail.id().equals(detailId)).findFirst();
  }

  /** The first normal value, stored when an abnormal one is denied; empty for a measurement. */
  public Optional<Value> normal() {
    return values.stream().filter(value -> value.norm() == Norm.NORMAL).findFirst();
  }

  public boolean isMeasured() {
    return measure != null;
  }

  /** Whether the step applies to a baby of this sex; a sex not yet stated rules nothing out. */
  public boolean appliesTo(String babySex) {
    return sex == null || babySex == null || babySex.equals("undetermined") || sex.equals(babySex);
  }
}
