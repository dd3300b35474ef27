package tiptoe.exam;

/** What the reviewer's events do to the record. */
final class FoldReview {
  private FoldReview() {}

  static void register() {
    Fold.on(
        Event.StatementRejected.class,
        (fold, entry, event) -> fold.settle(event.statement(), Status.REJECTED));
    Fold.on(
        Event.UtteranceReviewed.class,
        (fold, entry, event) ->
            fold.utterances.computeIfPresent(
                event.utterance(),
                (number, utterance) -> utterance.withReviewed(event.accepted())));
    Fold.on(Event.Signed.class, FoldReview::signed);
    Fold.on(
        Event.AddendumStarted.class,
        (fold, entry, event) -> {
          fold.phase = Phase.ADDENDUM;
          fold.notes.add(new Note(entry.at(), "addendum by " + event.author()));
        });
  }

  private static void signed(Fold fold, Entry entry, Event.Signed event) {
    fold.phase = Phase.SIGNED;
    fold.signatures.add(Signature.of(entry, event));
  }

  /** What was undone stays visible; its number is never given again. */
  static void keepUndone(Fold fold, Entry entry) {
    if (entry.event() instanceof Event.QuestionAsked asked) {
      fold.questions.put(asked.number(), FoldTalk.asked(entry, asked).closed("undone"));
    }
    if (entry.event() instanceof Event.StatementMade made) {
      fold.statements.put(made.number(), FoldTalk.said(fold, entry, made, Status.UNDONE));
    }
  }
}
