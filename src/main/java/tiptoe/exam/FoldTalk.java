package tiptoe.exam;

import java.util.List;

/** What the events of the spoken examination do to the record. */
final class FoldTalk {
  private FoldTalk() {}

  static void register() {
    Fold.on(
        Event.ContextStated.class,
        (fold, entry, event) -> fold.baby = fold.baby.with(event.fact(), event.value()));
    Fold.on(Event.UtteranceHeard.class, FoldTalk::heard);
    Fold.on(Event.StatementMade.class, FoldTalk::made);
    Fold.on(
        Event.StatementSettled.class,
        (fold, entry, event) -> settled(fold, event.statement(), event.effect(), event.of()));
    Fold.on(
        Event.QuestionAsked.class,
        (fold, entry, event) -> fold.questions.put(event.number(), asked(entry, event)));
    Fold.on(
        Event.QuestionAnswered.class,
        (fold, entry, event) -> close(fold, event.number(), event.answer()));
    Fold.on(
        Event.QuestionDropped.class,
        (fold, entry, event) -> close(fold, event.number(), event.reason()));
    Fold.on(Event.Struck.class, FoldTalk::struck);
    Fold.on(Event.RemarkStarted.class, (fold, entry, event) -> fold.phase = Phase.REMARK);
    Fold.on(Event.RemarkMade.class, FoldTalk::remarked);
    Fold.on(
        Event.RemarkReworded.class,
        (fold, entry, event) ->
            fold.remarks.computeIfPresent(
                event.number(),
                (number, remark) -> remark.reworded(event.text(), event.repairs())));
  }

  private static void heard(Fold fold, Entry entry, Event.UtteranceHeard event) {
    if (event.region() != null) {
      fold.region = event.region();
    }
    fold.utterances.put(
        event.number(),
        new Utterance(
            event.number(),
            entry.at(),
            event.heard(),
            event.candidates(),
            event.uncovered(),
            null));
  }

  private static void made(Fold fold, Entry entry, Event.StatementMade event) {
    fold.statements.put(event.number(), said(fold, entry, event, Status.of(event.effect())));
    settled(fold, event.number(), event.effect(), event.of());
  }

  static RecordedFinding said(Fold fold, Entry entry, Event.StatementMade event, Status status) {
    Utterance utterance = event.utterance() == null ? null : fold.utterances.get(event.utterance());
    return new RecordedFinding(
        event.number(),
        event.statement(),
        event.correction(),
        entry.at(),
        event.utterance(),
        utterance == null ? "" : utterance.heard().text(),
        utterance == null ? null : Double.valueOf(utterance.heard().start()),
        status,
        event.of(),
        event.author());
  }

  private static void settled(Fold fold, int number, Effect effect, List<Integer> of) {
    RecordedFinding said = fold.statements.get(number);
    if (said == null) {
      return;
    }
    fold.statements.put(number, said.with(said.status(), of));
    fold.settle(number, Status.of(effect));
    if (effect == Effect.STANDS) {
      of.stream()
          .filter(replaced -> replaced != number)
          .forEach(replaced -> fold.settle(replaced, Status.REPLACED));
    }
  }

  static Asked asked(Entry entry, Event.QuestionAsked event) {
    return new Asked(
        event.number(),
        event.question(),
        event.correction(),
        entry.at(),
        event.utterance(),
        event.statement(),
        event.against(),
        event.fact(),
        event.value(),
        true,
        null);
  }

  private static void close(Fold fold, int number, String outcome) {
    fold.questions.computeIfPresent(number, (key, asked) -> asked.closed(outcome));
  }

  private static void struck(Fold fold, Entry entry, Event.Struck event) {
    event.statements().forEach(number -> fold.settle(number, Status.STRUCK));
    event.questions().forEach(number -> close(fold, number, "taken back"));
    event.facts().forEach((fact, before) -> fold.baby = fold.baby.with(fact, before));
    event.cleared().forEach(fact -> fold.baby = fold.baby.without(fact));
  }

  private static void remarked(Fold fold, Entry entry, Event.RemarkMade event) {
    if (fold.phase == Phase.REMARK) {
      fold.phase = Phase.LISTENING;
    }
    fold.remarks.put(
        event.number(),
        new Remark(
            event.number(),
            entry.at(),
            event.text(),
            event.text(),
            event.start(),
            event.end(),
            List.of(),
            event.author()));
  }
}
