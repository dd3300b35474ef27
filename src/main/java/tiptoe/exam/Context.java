package tiptoe.exam;

import java.util.List;
import tiptoe.finding.Question;
import tiptoe.protocol.Value;

/** States facts about the baby. */
record Context(EventBatch batch, Integer utterance, String author) {

  /** States a fact; findings that do not go with it are asked about. */
  void state(String id, String value) {
    batch.record().openQuestions().stream()
        .filter(asked -> asked.question().kind() == Question.Kind.NUMBER)
        .filter(asked -> id.equals(asked.question().detail()))
        .forEach(
            asked ->
                batch.add(new Event.QuestionAnswered(asked.number(), value, utterance, author)));
    if (batch.record().baby().is(id, value)) {
      return;
    }
    batch.add(new Event.ContextStated(id, value, utterance, author));
    if (id.equals("sex")) {
      batch.record().statements().stream().filter(RecordedFinding::stands).forEach(this::doubt);
    }
  }

  private void doubt(RecordedFinding said) {
    ExamRecord record = batch.record();
    var step = record.protocol().find(said.statement().step());
    String sex = record.baby().sex().orElse(null);
    if (step.isEmpty() || step.get().appliesTo(sex)) {
      return;
    }
    if (said.statement().group() || Value.NOT_EXAMINED.equals(said.statement().value())) {
      batch.add(new Event.StatementSettled(said.number(), Effect.UNUSED, List.of(), author));
      return;
    }
    batch.add(new Event.StatementSettled(said.number(), Effect.WAITS, List.of(), author));
    Placement verdict = new Placement(Effect.WAITS, List.of(), null);
    QuestionUpkeep.contradiction(batch, said.number(), said.statement(), verdict, utterance);
  }
}
