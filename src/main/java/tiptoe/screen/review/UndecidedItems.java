package tiptoe.screen.review;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import tiptoe.exam.Asked;
import tiptoe.exam.ExamRecord;
import tiptoe.exam.Slot;
import tiptoe.exam.Utterance;
import tiptoe.language.Meaning;
import tiptoe.protocol.Region;
import tiptoe.wording.FindingWording;

/** What is to be decided: open questions and unsure utterances. */
final class UndecidedItems {
  private final ExamRecord record;
  private final FindingWording phrasing;
  private final BeforeEdit before;

  UndecidedItems(ExamRecord record) {
    this.record = record;
    phrasing = new FindingWording(record.protocol());
    before = new BeforeEdit(record);
  }

  /** The items, from head to toe. */
  List<ReviewItem> list() {
    List<ReviewItem> open = new ArrayList<>();
    record.openQuestions().forEach(asked -> open.add(question(asked)));
    record.unsure().forEach(utterance -> open.add(unsure(utterance)));
    open.sort(Comparator.comparingInt(item -> place(item.region())));
    return open;
  }

  private int place(String region) {
    List<String> ids = record.protocol().regions().stream().map(Region::id).toList();
    return ids.indexOf(region);
  }

  private ReviewItem question(Asked asked) {
    String step = asked.question().about() == null ? null : asked.question().about().step();
    Slot slot = step == null ? null : new Slot(step, asked.question().about().side());
    return new ReviewItem(
        ReviewItem.Kind.QUESTION,
        Section.DECIDE,
        step == null ? null : region(step),
        asked.number(),
        "",
        slot,
        ReviewItem.Sign.UNSURE,
        asked.question().text(),
        Trace.of(record, asked.utterance(), "", null),
        slot == null ? List.of() : before.lines(slot),
        EnumSet.of(Filter.UNSURE));
  }

  private ReviewItem unsure(Utterance utterance) {
    List<Meaning.States> candidates = utterance.candidates();
    String seems =
        String.join("; ", candidates.stream().map(one -> phrasing.of(one.statement())).toList());
    Slot slot =
        candidates.isEmpty()
            ? null
            : new Slot(candidates.get(0).statement().step(), candidates.get(0).statement().side());
    List<String> notes = new ArrayList<>();
    candidates.forEach(
        one ->
            notes.addAll(before.lines(new Slot(one.statement().step(), one.statement().side()))));
    return new ReviewItem(
        ReviewItem.Kind.UTTERANCE,
        Section.DECIDE,
        slot == null ? null : region(slot.step()),
        utterance.number(),
        "",
        slot,
        ReviewItem.Sign.UNSURE,
        seems.isEmpty() ? "unsure: \"" + utterance.heard().text() + "\"" : "unsure: " + seems,
        Trace.of(utterance),
        notes,
        EnumSet.of(Filter.UNSURE));
  }

  private String region(String step) {
    return record.protocol().step(step).region();
  }
}
