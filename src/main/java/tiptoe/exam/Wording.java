package tiptoe.exam;

import java.util.Map;
import java.util.stream.Collectors;
import tiptoe.finding.Finding;
import tiptoe.finding.Quantity;
import tiptoe.protocol.Labels;
import tiptoe.protocol.Step;
import tiptoe.protocol.Value;

/** Findings and questions in words. */
public final class Wording {
  private Wording() {}

  /** {@code positive}, {@code 3420 g}, {@code present (grade 2)}. */
  public static String finding(
      Step step, String value, Quantity quantity, Map<String, String> details) {
    String what =
        quantity != null
            ? quantity.toString()
            : step.value(value).map(Value::label).orElseGet(() -> Labels.of(value));
    return details.isEmpty()
        ? what
        : what
            + details.entrySet().stream()
                .map(detail -> detail(step, detail.getKey(), detail.getValue()))
                .collect(Collectors.joining(", ", " (", ")"));
  }

  private static String detail(Step step, String id, String value) {
    String label = step.detail(id).map(detail -> detail.label()).orElseGet(() -> Labels.of(id));
    return label + " " + Labels.of(value).replace(",", ", ");
  }

  static String contradiction(Step step, Finding newer, StandingFinding older) {
    boolean across = step.sided() && older.side() != newer.side();
    return (across ? step.label() : step.name(newer.side()))
        + ": first "
        + (across ? older.side().id() + " " : "")
        + finding(step, older.value(), older.quantity(), older.details())
        + ", then "
        + (across ? newer.side().id() + " " : "")
        + finding(step, newer.value(), newer.quantity(), newer.details())
        + "; keep the first or the second?";
  }

  static String otherSex(Step step, String sex) {
    return step.label() + " was stated, but this baby is a " + sex + "; is that right, yes or no?";
  }

  static String otherFact(String fact, String before, String now) {
    return Labels.of(fact)
        + ": first "
        + before
        + ", then "
        + now
        + "; is it "
        + now
        + ", yes or no?";
  }

  static String whichSide(Step step, Finding statement) {
    return step.label()
        + " "
        + finding(step, statement.value(), statement.quantity(), Map.of())
        + ": left, right or both?";
  }
}
