package tiptoe.cli;

import java.util.List;
import java.util.stream.Collectors;
import tiptoe.clinical.Assessment;
import tiptoe.clinical.Size;
import tiptoe.exam.Answer;
import tiptoe.exam.ExamRecord;
import tiptoe.exam.Progress;
import tiptoe.exam.Slot;
import tiptoe.language.Phrasing;
import tiptoe.protocol.Norm;
import tiptoe.protocol.Protocol;
import tiptoe.protocol.Region;
import tiptoe.protocol.Step;
import tiptoe.protocol.Value;
import tiptoe.settings.Settings;
import tiptoe.settings.Spelling;

/** The checklist as plain text: region by region what is answered, and what is missing. */
final class ChecklistText {
  private ChecklistText() {}

  static String of(ExamRecord record, Assessment assessment, Settings settings) {
    StringBuilder text = new StringBuilder();
    Protocol protocol = record.protocol();
    Phrasing phrasing = new Phrasing(protocol, settings);
    record.baby().facts().forEach((id, value) -> text.append("%-20s %s%n".formatted(id, value)));
    for (Progress progress : record.progress()) {
      Region region = protocol.region(progress.region()).orElseThrow();
      text.append(
          "%n%-14s %d of %d%n"
              .formatted(
                  region.label().toUpperCase(java.util.Locale.ROOT),
                  progress.answered(),
                  progress.total()));
      for (Answer answer : record.answers()) {
        Step step = protocol.step(answer.step());
        if (step.region().equals(region.id())) {
          text.append("  %s %s%n".formatted(mark(step, answer), phrasing.of(answer.asStatement())));
        }
      }
      String open = missing(record, region, phrasing);
      if (!open.isEmpty()) {
        text.append("    missing: ").append(open).append('\n');
      }
    }
    append(
        text,
        "KEY STEPS MISSING",
        record.missingKeySteps().stream().map(slot -> name(slot, phrasing)).toList());
    append(
        text,
        "OPEN QUESTIONS",
        record.openQuestions().stream().map(asked -> asked.question().text()).toList());
    append(
        text,
        "LEFT TO THE REVIEWER",
        record.unsure().stream().map(heard -> "unsure: " + heard.heard().text()).toList());
    append(
        text,
        "TO ACT ON",
        assessment.flags().stream()
            .map(
                flag -> flag.level().id().toUpperCase(java.util.Locale.ROOT) + ": " + flag.advice())
            .toList());
    append(text, "SIZE", assessment.sizes().stream().map(ChecklistText::size).toList());
    append(
        text,
        "LATER",
        assessment.plan().stream().map(item -> item.due() + ": " + item.what()).toList());
    append(
        text,
        "TO STATE",
        assessment.needs().stream()
            .map(need -> need.fact() + ", for: " + String.join("; ", need.reasons()))
            .toList());
    text.append("\nRules: ").append(String.join(", ", assessment.ruleSets())).append('\n');
    text.append(assessment.caution()).append('\n');
    return Spelling.of(text.toString(), settings);
  }

  private static String size(Size size) {
    return size.step()
        + size.against().stream()
            .map(place -> ", " + place.centileText() + " centile (" + place.standard() + ")")
            .collect(Collectors.joining())
        + size.remarks().stream().map(remark -> "; " + remark).collect(Collectors.joining());
  }

  private static void append(StringBuilder text, String title, List<String> lines) {
    if (!lines.isEmpty()) {
      text.append('\n').append(title).append('\n');
      lines.forEach(line -> text.append("  ").append(line).append('\n'));
    }
  }

  private static String missing(ExamRecord record, Region region, Phrasing phrasing) {
    return record.missing().stream()
        .filter(slot -> record.protocol().step(slot.step()).region().equals(region.id()))
        .map(slot -> name(slot, phrasing))
        .collect(Collectors.joining(", "));
  }

  private static String name(Slot slot, Phrasing phrasing) {
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
