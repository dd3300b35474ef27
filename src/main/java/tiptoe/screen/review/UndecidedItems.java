package tiptoe.screen.review;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import tiptoe.exam.Asked;
import tiptoe.exam.Candidate;
import tiptoe.exam.ExamRecord;
import tiptoe.exam.Slot;
import tiptoe.exam.Utterance;
import tiptoe.language.Phrasing;
import tiptoe.protocol.Region;

/** What is to be decided: open questions and unsure utterances. */
final class UndecidedItems {
  private final ExamRecord record;
  private final Phrasing phrasing;
  private final BeforeEdit before;

  UndecidedItems(ExamRecord record) {
    this.record = record;
    phrasing = new Phrasing(record.protocol());
    before = new BeforeEdit(record);
  }

  /** The items, from head to toe. */
  List<Item> list() {
    List<Item> open = new ArrayList<>();
    record.openQuestions().forEach(asked -> open.add(question(asked)));
    record.unsure().forEach(utterance -> open.add(unsure(utterance)));
    open.sort(Comparator.comparingInt(item -> place(item.region())));
    return open;
  }

  private int place(String region) {
    List<String> ids = record.protocol().regions().stream().map(Region::id).toList();
    return ids.indexOf(region);
  }

  private Item question(Asked asked) {
    String step = asked.question().about() == null ? null : asked.question().about().step();
    Slot slot = step == null ? null : new Slot(step, asked.question().about().side());
    return new Item(
        Item.Kind.QUESTION,
        Section.DECIDE,
        step == null ? null : region(step),
        asked.number(),
        "",
        slot,
        Item.Sign.UNSURE,
        asked.question().text(),
        Trace.of(record, asked.utterance(), "", null),
        slot == null ? List.of() : before.lines(slot),
        EnumSet.of(Filter.UNSURE));
  }

  private Item unsure(Utterance utterance) {
    List<Candidate> candidates = utterance.candidates();
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
    return new Item(
        Item.Kind.UTTERANCE,
        Section.DECIDE,
        slot == null ? null : region(slot.step()),
        utterance.number(),
        "",
        slot,
        Item.Sign.UNSURE,
        seems.isEmpty() ? "unsure: \"" + utterance.heard().text() + "\"" : "unsure: " + seems,
        Trace.of(utterance),
        notes,
        EnumSet.of(Filter.UNSURE));
  }

  private String region(String step) {
    return record.protocol().step(step).region();
  }
}
