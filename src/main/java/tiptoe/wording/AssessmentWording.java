package tiptoe.wording;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import tiptoe.clinical.Assessment;
import tiptoe.clinical.Flag;
import tiptoe.clinical.MissingItem;
import tiptoe.clinical.PlanItem;
import tiptoe.clinical.Result;
import tiptoe.clinical.Size;
import tiptoe.finding.Quantity;
import tiptoe.protocol.Labels;
import tiptoe.protocol.Protocol;
import tiptoe.protocol.Side;
import tiptoe.settings.Settings;
import tiptoe.settings.Spelling;

/** An assessment as plain text, the most pressing first, in the chosen units and spelling. */
public final class AssessmentWording {
  private final Protocol protocol;
  private final Settings settings;
  private final List<String> lines = new ArrayList<>();

  private AssessmentWording(Protocol protocol, Settings settings) {
    this.protocol = protocol;
    this.settings = settings;
  }

  /** The text, each line ended. */
  public static String of(Assessment assessment, Protocol protocol, Settings settings) {
    return new AssessmentWording(protocol, settings).text(assessment);
  }

  private String text(Assessment assessment) {
    heading("flags", assessment.flags());
    assessment.flags().forEach(this::flag);
    if (assessment.flags().isEmpty()) {
      lines.add("flags: none raised by what was stated");
    }
    heading("size at birth", assessment.sizes());
    assessment.sizes().forEach(this::size);
    heading("computed", assessment.results());
    assessment.results().forEach(this::result);
    heading("plan", assessment.plan());
    assessment.plan().forEach(this::planned);
    heading("to be stated", assessment.needs());
    assessment
        .needs()
        .forEach(
            need ->
                lines.add(
                    "  " + Labels.of(need.fact()) + ": " + String.join("; ", need.reasons())));
    heading("missing", assessment.missing());
    assessment.missing().forEach(item -> lines.add("  " + missing(item) + ": " + item.reason()));
    lines.add("rules: " + String.join(", ", assessment.ruleSets()));
    lines.add(assessment.caution());
    return lines.stream()
        .map(line -> Spelling.of(line, settings) + "\n")
        .collect(Collectors.joining());
  }

  private void heading(String text, List<?> below) {
    if (!below.isEmpty()) {
      lines.add(text);
    }
  }

  private void flag(Flag flag) {
    String sides = flag.sides().stream().map(Side::id).collect(Collectors.joining(" and "));
    String about = flag.steps().stream().map(this::label).collect(Collectors.joining(", "));
    lines.add(
        "  "
            + flag.level().id().toUpperCase(Locale.ROOT)
            + ", "
            + flag.when()
            + ": "
            + about
            + (sides.isEmpty() ? "" : " (" + sides + ")"));
    lines.add("    " + flag.advice());
    lines.add("    " + flag.rule() + "; " + flag.source() + statements(flag.statements()));
  }

  private static String statements(List<Integer> numbers) {
    if (numbers.isEmpty()) {
      return "";
    }
    String listed = numbers.stream().map(Object::toString).collect(Collectors.joining(", "));
    return (numbers.size() == 1 ? "; statement " : "; statements ") + listed;
  }

  private void size(Size size) {
    StringBuilder line = new StringBuilder("  " + label(size.step()) + " " + measured(size));
    String separator = ": ";
    for (Size.Place place : size.against()) {
      line.append(separator)
          .append(place.centileText())
          .append(" centile, z ")
          .append(String.format(Locale.ROOT, "%.2f", place.z()))
          .append(" (")
          .append(place.source())
          .append(")");
      separator = "; ";
    }
    for (String remark : size.remarks()) {
      line.append("; ").append(remark);
    }
    lines.add(line.toString());
  }

  private String measured(Size size) {
    return new QuantityWording(settings).of(new Quantity(size.number(), size.unit()));
  }

  private void result(Result result) {
    String remarks = result.remarks().stream().map(r -> "; " + r).collect(Collectors.joining());
    lines.add("  " + result.text() + remarks + " (" + result.source() + ")");
  }

  private void planned(PlanItem item) {
    lines.add("  " + dates(item) + item.due() + ": " + item.what() + " (" + item.reason() + ")");
  }

  private static String dates(PlanItem item) {
    if (item.from() == null && item.to() == null) {
      return "";
    }
    if (item.from() == null) {
      return "by " + item.to() + ", ";
    }
    if (item.to() == null) {
      return "from " + item.from() + ", ";
    }
    return item.from().equals(item.to())
        ? item.from() + ", "
        : item.from() + " to " + item.to() + ", ";
  }

  private String missing(MissingItem item) {
    return item.detail() == null
        ? label(item.step())
        : label(item.step())
            + ", "
            + protocol.step(item.step()).detail(item.detail()).orElseThrow().label();
  }

  private String label(String step) {
    return protocol.step(step).label();
  }
}
