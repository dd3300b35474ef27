package tiptoe.screen.review;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import tiptoe.exam.Entry;
import tiptoe.exam.Event;
import tiptoe.exam.ExamRecord;
import tiptoe.exam.UnheardSound;
import tiptoe.exam.Utterance;
import tiptoe.finding.Outcome;

/** What came to nothing: utterances of which nothing was made, and sound that was not heard. */
record UnusedItems(ExamRecord record) {
  /** The items, utterances first. */
  List<ReviewItem> list() {
    List<ReviewItem> items = new ArrayList<>();
    record.utterances().stream()
        .filter(utterance -> !utterance.waits() && cameToNothing(utterance))
        .forEach(utterance -> items.add(unused(utterance)));
    record.gaps().forEach(gap -> items.add(gap(gap)));
    return items;
  }

  /** Nothing that is in the record was made of it. */
  private boolean cameToNothing(Utterance utterance) {
    Integer number = utterance.number();
    boolean remark = utterance.heard().outcome() == Outcome.REMARK;
    return !remark
        && record.statements().stream().noneMatch(said -> number.equals(said.utterance()))
        && record.questions().stream().noneMatch(asked -> number.equals(asked.utterance()))
        && record.entries().stream()
            .map(Entry::event)
            .filter(Event.ContextStated.class::isInstance)
            .noneMatch(event -> number.equals(((Event.ContextStated) event).utterance()));
  }

  private ReviewItem unused(Utterance utterance) {
    boolean reviewed = utterance.reviewed() != null;
    List<String> notes = new ArrayList<>();
    if (reviewed) {
      notes.add(utterance.reviewed() ? "reviewed: accepted" : "reviewed: not to be used");
    }
    if (!utterance.uncovered().isEmpty()) {
      notes.add("not understood: " + String.join(" ", utterance.uncovered()));
    }
    return new ReviewItem(
        ReviewItem.Kind.UTTERANCE,
        Section.UNUSED,
        null,
        utterance.number(),
        "",
        null,
        ReviewItem.Sign.SKIPPED,
        utterance.heard().outcome().id() + ": \"" + utterance.heard().text() + "\"",
        Trace.of(utterance),
        notes,
        reviewed ? EnumSet.of(Filter.CHANGED) : Set.of());
  }

  private static ReviewItem gap(UnheardSound gap) {
    return new ReviewItem(
        ReviewItem.Kind.GAP,
        Section.UNUSED,
        null,
        0,
        "gap " + gap.from(),
        null,
        ReviewItem.Sign.OPEN,
        String.format(Locale.ROOT, "not heard for %.1f s: %s", gap.seconds(), gap.reason()),
        new Trace("", "", "", null, gap.from(), gap.from() + gap.seconds(), null),
        List.of(),
        Set.of());
  }
}
