package tiptoe.exam;

import java.util.List;
import java.util.Optional;
import tiptoe.protocol.Step;

/**
 * Settles a question by yes or no: in a contradiction yes means that the newer one is right.
 *
 * @param author the reviewer; null when the clinician answers
 */
record ContradictionSettlement(EventBatch batch, Integer utterance, String author) {

  /** The newer one is right. */
  void newer(Asked asked) {
    if (asked.fact() != null) {
      close(asked, "yes");
      new Context(batch, utterance, author).state(asked.fact(), asked.value());
    } else if (asked.statement() != null) {
      close(asked, "yes");
      batch.record().statement(asked.statement()).ifPresent(this::letStand);
    }
  }

  /** The older one is right; an impossible number, or what may be of several steps, is let go. */
  void older(Asked asked) {
    if (asked.fact() != null || asked.question().lapsesByNo()) {
      close(asked, "no");
    } else if (asked.statement() != null) {
      close(asked, "no");
      withdraw(asked.statement());
    }
  }

  /** Nobody can tell. */
  void none(Asked asked, String reason) {
    batch.add(new Event.QuestionDropped(asked.number(), reason, author));
    withdrawWaiting(asked);
  }

  /** The answer says something else, which is to stand. */
  void instead(Asked asked, String words) {
    close(asked, words);
    withdrawWaiting(asked);
  }

  // With its question gone it would wait for ever.
  private void withdrawWaiting(Asked asked) {
    Optional.ofNullable(asked.statement())
        .flatMap(batch.record()::statement)
        .filter(said -> said.status() == Status.WAITS)
        .ifPresent(said -> withdraw(said.number()));
  }

  private void withdraw(int statement) {
    batch.add(new Event.StatementSettled(statement, Effect.WITHDRAWN, List.of(), author));
  }

  private void close(Asked asked, String words) {
    batch.add(new Event.QuestionAnswered(asked.number(), words, utterance, author));
  }

  /** It takes the place of what it contradicts; the other side keeps what was said of it. */
  private void letStand(RecordedFinding said) {
    ExamRecord record = batch.record();
    Step step = record.protocol().step(said.statement().step());
    List<StandingFinding> here =
        StandingFinding.of(record.protocol(), record.statements(), Status.STANDS).stream()
            .filter(old -> said.of().contains(old.base().number()))
            .filter(old -> Placing.samePlace(step, old, said.statement()))
            .toList();
    Optional<StandingFinding> same =
        here.stream()
            .filter(old -> said.statement().value() != null)
            .filter(old -> said.statement().value().equals(old.value()))
            .filter(old -> old.side() == said.statement().side())
            .findFirst();
    List<Integer> of =
        same.map(List::of).orElse(here).stream().map(old -> old.base().number()).toList();
    Effect effect = same.isPresent() ? Effect.CONFIRMS : Effect.STANDS;
    batch.add(new Event.StatementSettled(said.number(), effect, of, author));
  }
}
