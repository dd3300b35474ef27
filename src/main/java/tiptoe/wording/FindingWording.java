package tiptoe.wording;

import java.util.ArrayList;
import java.util.List;
import tiptoe.finding.Finding;
import tiptoe.protocol.Labels;
import tiptoe.protocol.Norm;
import tiptoe.protocol.Protocol;
import tiptoe.protocol.Side;
import tiptoe.protocol.Step;
import tiptoe.protocol.Value;
import tiptoe.settings.Settings;

/** Puts statements into words for people. */
public final class FindingWording {
  private final Protocol protocol;
  private final QuantityWording units;

  /** In the units that are kept. */
  public FindingWording(Protocol protocol) {
    this(protocol, Settings.DEFAULT);
  }

  /** With the chosen units beside those that are kept. */
  public FindingWording(Protocol protocol, Settings settings) {
    this.protocol = protocol;
    this.units = new QuantityWording(settings);
  }

  /** Such as {@code left clavicle: crepitus} or {@code weight: 3420 g}. */
  public String of(Finding statement) {
    return name(statement.step(), statement.side()) + ": " + said(statement);
  }

  /** Such as {@code left clavicle}. */
  public String name(String stepId, Side side) {
    return protocol.step(stepId).name(side);
  }

  /** The value or number with its details: {@code present, grade 2, systolic}. */
  public String said(Finding statement) {
    Step step = protocol.step(statement.step());
    List<String> parts = new ArrayList<>();
    parts.add(
        statement.quantity() != null
            ? units.of(statement.quantity())
            : step.value(statement.value()).map(Value::label).orElse(Labels.of(statement.value())));
    statement.details().forEach((id, value) -> parts.add(detail(step, id, value)));
    if (hasSeveralFindings(step)) {
      statement.denied().forEach(id -> parts.add("no " + valueLabel(step, id)));
    }
    return String.join(", ", parts);
  }

  // Where there is but one thing to find, the normal value says already that it was not found.
  private static boolean hasSeveralFindings(Step step) {
    return step.values().stream().filter(value -> value.norm() != Norm.NORMAL).count() > 1;
  }

  private static String detail(Step step, String id, String value) {
    String unit =
        step.detail(id)
            .filter(detail -> detail.measure() != null && !detail.measure().unit().equals("1"))
            .map(detail -> " " + detail.measure().unit())
            .orElse("");
    return Labels.of(id) + " " + Labels.of(value).replace(",", " and ") + unit;
  }

  private static String valueLabel(Step step, String id) {
    return step.value(id).map(Value::label).orElse(Labels.of(id));
  }
}
