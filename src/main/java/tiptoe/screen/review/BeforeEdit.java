package tiptoe.screen.review;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import tiptoe.exam.Answer;
import tiptoe.exam.ExamRecord;
import tiptoe.exam.RecordedFinding;
import tiptoe.exam.Slot;
import tiptoe.finding.Finding;
import tiptoe.finding.Source;
import tiptoe.protocol.Step;
import tiptoe.protocol.Value;
import tiptoe.wording.FindingWording;

/** What an edit starts from: what stands, with the details that later statements added. */
record BeforeEdit(ExamRecord record) {
  /** What stands in a place, a line each, so that it is seen what an edit would replace. */
  List<String> lines(Slot slot) {
    FindingWording phrasing = new FindingWording(record.protocol());
    return record.answers(slot.step()).stream()
        .filter(answer -> slot.side() == null || answer.side() == slot.side())
        .map(answer -> "stands now: " + phrasing.of(answer.finding()))
        .toList();
  }

  /** A statement with all that was added to it; as it was said where it does not stand. */
  Finding of(RecordedFinding said) {
    if (!said.stands()) {
      return said.statement();
    }
    return record.answers(said.statement().step()).stream()
        .filter(answer -> answer.statement() == said.number())
        .findFirst()
        .map(Answer::finding)
        .orElse(said.statement());
  }

  /** A statement as a reviewer would type it. */
  Finding typed(int number) {
    return of(record.statement(number).orElseThrow()).withSource(Source.TYPED);
  }

  /** The same with another value; what was said beside it is kept where it still belongs. */
  Finding typed(int number, String value) {
    Finding now = typed(number);
    Step step = record.protocol().step(now.step());
    Map<String, String> details = new TreeMap<>(now.details());
    details
        .keySet()
        .removeIf(id -> step.detail(id).map(detail -> !detail.belongsTo(value)).orElse(true));
    boolean sided = step.sided() || step.value(value).map(Value::sided).orElse(false);
    return new Finding(
        now.step(),
        sided ? now.side() : null,
        value,
        null,
        details,
        List.of(),
        false,
        Source.TYPED);
  }
}
