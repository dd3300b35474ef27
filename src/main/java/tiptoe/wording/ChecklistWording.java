package tiptoe.wording;

import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import java.util.stream.Collectors;
import tiptoe.clinical.Assessment;
import tiptoe.clinical.Size;
import tiptoe.exam.Answer;
import tiptoe.exam.ExamRecord;
import tiptoe.exam.Progress;
import tiptoe.exam.Slot;
import tiptoe.protocol.Norm;
import tiptoe.protocol.Region;
import tiptoe.protocol.Step;
import tiptoe.protocol.Value;
import tiptoe.settings.Settings;
import tiptoe.settings.Spelling;

/** The checklist as plain text: region by region what is answered, and what is missing. */
public final class ChecklistWording {
  private final ExamRecord record;
  private final Assessment assessment;
  private final FindingWording phrasing;
  private final StringBuilder text = new StringBuilder();

  private ChecklistWording(ExamRecord record, Assessment assessment, Settings settings) {
    this.record = record;
    this.assessment = assessment;
    phrasing = new FindingWording(record.protocol(), settings);
  }

  public static String of(ExamRecord record, Assessment assessment, Settings settings) {
    ChecklistWording all = new ChecklistWording(record, assessment, settings);
    record
        .baby()
        .facts()
        .forEach((id, value) -> all.text.append("%-20s %s%n".formatted(id, value)));
    record.progress().forEach(all::region);
    all.open();
    all.assessed();
    return Spelling.of(all.text.toString(), settings);
  }

  private void region(Progress progress) {
    Region region = record.protocol().region(progress.region()).orElseThrow();
    String title = region.label().toUpperCase(Locale.ROOT);
    text.append("%n%-14s %d of %d%n".formatted(title, progress.answered(), progress.total()));
    for (Answer answer : record.answers()) {
      Step step = record.protocol().step(answer.step());
      if (step.region().equals(region.id())) {
        text.append("  %s %s%n".formatted(mark(step, answer), phrasing.of(answer.finding())));
      }
    }
    String missing = missing(region);
    if (!missing.isEmpty()) {
      text.append("    missing: ").append(missing).append('\n');
    }
  }

  private void open() {
    list("KEY STEPS MISSING", record.missingKeySteps(), this::name);
    list("OPEN QUESTIONS", record.openQuestions(), asked -> asked.question().text());
    list("LEFT TO THE REVIEWER", record.unsure(), heard -> "unsure: " + heard.heard().text());
  }

  private void assessed() {
    list(
        "TO ACT ON",
        assessment.flags(),
        flag -> flag.level().id().toUpperCase(Locale.ROOT) + ": " + flag.advice());
    list("SIZE", assessment.sizes(), ChecklistWording::size);
    list("LATER", assessment.plan(), item -> item.due() + ": " + item.what());
    list(
        "TO STATE",
        assessment.needs(),
        need -> need.fact() + ", for: " + String.join("; ", need.reasons()));
    text.append("\nRules: ").append(String.join(", ", assessment.ruleSets())).append('\n');
    text.append(assessment.caution()).append('\n');
  }

  private static String size(Size size) {
    return size.step()
        + size.against().stream()
            .map(place -> ", " + place.centileText() + " centile (" + place.standard() + ")")
            .collect(Collectors.joining())
        + size.remarks().stream().map(remark -> "; " + remark).collect(Collectors.joining());
  }

  private <T> void list(String title, List<T> things, Function<T, String> line) {
    if (!things.isEmpty()) {
      text.append('\n').append(title).append('\n');
      things.forEach(thing -> text.append("  ").append(line.apply(thing)).append('\n'));
    }
  }

  private String missing(Region region) {
    return record.missing().stream()
        .filter(slot -> record.protocol().step(slot.step()).region().equals(region.id()))
        .map(this::name)
        .collect(Collectors.joining(", "));
  }

  private String name(Slot slot) {
    return phrasing.name(slot.step(), slot.side());
  }

  // A sign beside each line, since colour alone must not tell normal from abnormal.
  private static String mark(Step step, Answer answer) {
    if (Value.NOT_EXAMINED.equals(answer.value())) {
      return "-";
    }
    Norm norm =
        step.value(answer.value() == null ? "" : answer.value()).map(Value::norm).orElse(null);
    return norm == Norm.ABNORMAL ? "!" : norm == Norm.BENIGN ? "~" : "+";
  }
}
