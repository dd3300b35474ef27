package tiptoe.exam;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;
import tiptoe.finding.Finding;
import tiptoe.finding.Question;
import tiptoe.protocol.Detail;

/** Closes questions that lost their point, and lets statements stand that nothing is against. */
record QuestionUpkeep(EventBatch batch, Integer utterance) {

  /** Asks which of two statements is right. */
  static void contradiction(
      EventBatch batch, int number, Finding statement, Placement verdict, Integer utterance) {
    Question which = Question.contradiction(statement, verdict.against());
    batch.ask(which, false, utterance, number, verdict.of(), null, null);
  }

  /** The answers a question about a detail can be about. */
  static List<Answer> answersAbout(ExamRecord record, Question question) {
    Finding about = question.about();
    return record.answers(about.step()).stream()
        .filter(answer -> Objects.equals(answer.value(), about.value()))
        .filter(answer -> about.side() == null || about.side() == answer.side())
        .toList();
  }

  void run() {
    for (Asked asked : batch.record().openQuestions()) {
      if (asked.question().lapsesByAll()) {
        if (!Objects.equals(asked.utterance(), utterance)) {
          dropped(asked, "passed over");
        }
      } else if (asked.statement() != null) {
        contradiction(asked);
      } else if (asked.fact() != null) {
        if (batch.record().baby().is(asked.fact(), asked.value())) {
          answered(asked, "settled");
        }
      } else if (asked.question().kind() == Question.Kind.DETAIL) {
        detail(asked);
      } else if (!Objects.equals(asked.utterance(), utterance)) {
        other(asked);
      }
    }
  }

  /** What only a yes right behind it can answer is asked until something else is heard. */
  void dropLapsed() {
    batch.record().openQuestions().stream()
        .filter(asked -> asked.question().lapsesByAll())
        .forEach(asked -> dropped(asked, "passed over"));
  }

  private void other(Asked asked) {
    Question question = asked.question();
    boolean ofStep = question.kind() == Question.Kind.STEP;
    if (ofStep && !question.meant().isEmpty()) {
      if (statements().anyMatch(one -> question.steps().contains(one.step()) && !one.group())) {
        answered(asked, "stated in full");
      }
    } else if (ofStep && statements().findAny().isPresent()) {
      dropped(asked, "passed over");
    } else if (statedInFull(asked)) {
      answered(asked, "stated in full");
    }
  }

  private Stream<Finding> statements() {
    return batch.events().stream()
        .filter(Event.StatementMade.class::isInstance)
        .map(event -> ((Event.StatementMade) event).statement());
  }

  private void answered(Asked asked, String words) {
    batch.add(new Event.QuestionAnswered(asked.number(), words, utterance, null));
  }

  private void dropped(Asked asked, String reason) {
    batch.add(new Event.QuestionDropped(asked.number(), reason, null));
  }

  private void contradiction(Asked asked) {
    Optional<RecordedFinding> found = batch.record().statement(asked.statement());
    if (found.isEmpty() || found.get().status() != Status.WAITS) {
      answered(asked, found.map(said -> said.status().id()).orElse("gone"));
      return;
    }
    RecordedFinding waiting = found.get();
    Placement now = new Placing(batch.record(), utterance).again(waiting);
    if (now.waits() && now.of().equals(asked.against())) {
      return;
    }
    batch.add(new Event.StatementSettled(waiting.number(), now.effect(), now.of(), null));
    if (now.waits()) {
      dropped(asked, "asked again");
      contradiction(batch, waiting.number(), waiting.statement(), now, asked.utterance());
    } else {
      dropped(asked, "nothing is against it any more");
    }
  }

  private void detail(Asked asked) {
    List<Answer> about = answersAbout(batch.record(), asked.question());
    if (about.stream().anyMatch(answer -> has(answer, asked.question().detail()))) {
      answered(asked, "stated");
    } else if (about.isEmpty() && !waits(asked.question().about())) {
      dropped(asked, "its finding does not stand any more");
    }
  }

  /** Whether the answer holds this detail; a value whose step has no sides can want its side. */
  static boolean has(Answer answer, String detail) {
    return Detail.SIDE.equals(detail)
        ? answer.side() != null
        : detail != null && answer.details().containsKey(detail);
  }

  private boolean waits(Finding about) {
    return batch.record().statements().stream()
        .filter(said -> said.status() == Status.WAITS)
        .map(RecordedFinding::statement)
        .anyMatch(
            one -> one.step().equals(about.step()) && Objects.equals(one.value(), about.value()));
  }

  /** The finding was said again with its side, or with a number that can be right. */
  private boolean statedInFull(Asked asked) {
    Finding about = asked.question().about();
    boolean number = asked.question().kind() == Question.Kind.NUMBER;
    return about != null
        && statements()
            .filter(one -> one.step().equals(about.step()) && !one.group())
            .anyMatch(one -> number || Objects.equals(one.value(), about.value()));
  }
}
