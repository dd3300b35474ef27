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
import tiptoe.protocol.Side;

/**
 * An assessment as plain text, the most pressing first, in the chosen units and spelling; sources
 * stay as cited.
 */
public final class AssessmentWording {
  private final Words words;
  private final List<String> lines = new ArrayList<>();

  private AssessmentWording(Words words) {
    this.words = words;
  }

  /** The text, each line ended. */
  public static String of(Assessment assessment, Words words) {
    return new AssessmentWording(words).text(assessment);
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
    words.needs(assessment.needs()).forEach(need -> lines.add("  " + need));
    heading("missing", assessment.missing());
    assessment
        .missing()
        .forEach(item -> lines.add("  " + missing(item) + ": " + words.spelled(item.reason())));
    lines.add("rules: " + String.join(", ", assessment.ruleSets()));
    lines.add(words.spelled(assessment.caution()));
    return lines.stream().map(line -> line + "\n").collect(Collectors.joining());
  }

  private void heading(String text, List<?> below) {
    if (!below.isEmpty()) {
      lines.add(text);
    }
  }

  private void flag(Flag flag) {
    String sides = flag.sides().stream().map(Side::id).collect(Collectors.joining(" and "));
    String about = flag.steps().stream().map(words::step).collect(Collectors.joining(", "));
    lines.add(
        "  "
            + words.level(flag)
            + ", "
            + words.spelled(flag.when())
            + ": "
            + about
            + (sides.isEmpty() ? "" : " (" + sides + ")"));
    lines.add("    " + words.spelled(flag.advice()));
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
    StringBuilder line = new StringBuilder("  " + words.measured(size));
    String separator = ": ";
    for (Size.Place place : size.against()) {
      line.append(separator)
          .append(words.centile(place))
          .append(", z ")
          .append(String.format(Locale.ROOT, "%.2f", place.z()))
          .append(" (")
          .append(place.source())
          .append(")");
      separator = "; ";
    }
    for (String remark : size.remarks()) {
      line.append("; ").append(words.spelled(remark));
    }
    lines.add(line.toString());
  }

  private void result(Result result) {
    String remarks = result.remarks().stream().map(one -> "; " + one).collect(Collectors.joining());
    lines.add("  " + words.spelled(result.text() + remarks) + " (" + result.source() + ")");
  }

  private void planned(PlanItem item) {
    String dates = Words.dates(item.from(), item.to());
    lines.add(
        "  "
            + (dates.isEmpty() ? "" : dates + ", ")
            + words.spelled(item.due() + ": " + item.what() + " (" + item.reason() + ")"));
  }

  private String missing(MissingItem item) {
    String detail = item.detail() == null ? "" : ", " + words.detail(item.step(), item.detail());
    return words.step(item.step()) + detail;
  }
}
