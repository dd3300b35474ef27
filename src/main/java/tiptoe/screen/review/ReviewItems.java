package tiptoe.screen.review;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import tiptoe.clinical.Assessment;
import tiptoe.clinical.Flag;
import tiptoe.clinical.Need;
import tiptoe.exam.Entry;
import tiptoe.exam.Event;
import tiptoe.exam.ExamRecord;
import tiptoe.exam.MissingDetail;
import tiptoe.exam.RecordedFinding;
import tiptoe.exam.Remark;
import tiptoe.exam.Slot;
import tiptoe.protocol.Labels;
import tiptoe.protocol.Region;
import tiptoe.protocol.Side;
import tiptoe.protocol.Step;
import tiptoe.wording.FindingWording;

/**
 * All that a review goes through: what is to be decided, then what was flagged, then the rest from
 * head to toe. Each statement is there once.
 */
public final class ReviewItems {
  private final ExamRecord record;
  private final Assessment assessment;
  private final FindingWording phrasing;
  private final StatementItems statements;
  private final List<ReviewItem> items = new ArrayList<>();

  private ReviewItems(ExamRecord record, Assessment assessment) {
    this.record = record;
    this.assessment = assessment;
    phrasing = new FindingWording(record.protocol());
    statements = new StatementItems(record, assessment);
  }

  /** The items of a record, in the order of the review. */
  public static List<ReviewItem> of(ExamRecord record, Assessment assessment) {
    ReviewItems all = new ReviewItems(record, assessment);
    all.items.addAll(new UndecidedItems(record).list());
    Set<Integer> flagged = all.flagged();
    all.baby();
    record.protocol().regions().forEach(region -> all.region(region, flagged));
    all.remarks();
    all.items.addAll(new UnusedItems(record).list());
    return List.copyOf(all.items);
  }

  private Set<Integer> flagged() {
    Set<Integer> listed = new HashSet<>();
    for (Flag flag : assessment.flags()) {
      items.add(flag(flag));
      flag.statements().stream()
          .filter(number -> !listed.contains(number))
          .flatMap(number -> record.statement(number).stream())
          .forEach(
              said -> {
                listed.add(said.number());
                items.add(statements.of(said, Section.FLAGGED));
              });
    }
    return listed;
  }

  private ReviewItem flag(Flag flag) {
    List<String> notes = new ArrayList<>();
    if (flag.when() != null && !flag.when().isBlank()) {
      notes.add("when: " + flag.when());
    }
    notes.add("source: " + flag.source());
    return new ReviewItem(
        ReviewItem.Kind.FLAG,
        Section.FLAGGED,
        flag.steps().isEmpty() ? null : region(flag.steps().get(0)),
        0,
        flag.rule() + " " + flag.statements(),
        null,
        ReviewItem.Sign.ABNORMAL,
        flag.level().id().toUpperCase(Locale.ROOT) + ": " + flag.advice(),
        Trace.NONE,
        notes,
        EnumSet.of(Filter.FLAGGED));
  }

  private String region(String step) {
    return record.protocol().step(step).region();
  }

  private void baby() {
    record.baby().facts().forEach((id, value) -> items.add(fact(id, value)));
    assessment.needs().forEach(need -> items.add(need(need)));
  }

  private ReviewItem fact(String id, String value) {
    Event.ContextStated stated =
        record.entries().stream()
            .map(Entry::event)
            .filter(Event.ContextStated.class::isInstance)
            .map(Event.ContextStated.class::cast)
            .filter(event -> event.fact().equals(id) && event.value().equals(value))
            .reduce((first, last) -> last)
            .orElse(new Event.ContextStated(id, value, null, null));
    return new ReviewItem(
        ReviewItem.Kind.FACT,
        Section.BABY,
        null,
        0,
        id,
        null,
        ReviewItem.Sign.DONE,
        Labels.of(id) + ": " + value,
        Trace.of(record, stated.utterance(), "", stated.author()),
        List.of(),
        stated.author() == null ? Set.of() : EnumSet.of(Filter.CHANGED));
  }

  private ReviewItem need(Need need) {
    return new ReviewItem(
        ReviewItem.Kind.FACT,
        Section.BABY,
        null,
        0,
        need.fact(),
        null,
        ReviewItem.Sign.OPEN,
        Labels.of(need.fact()) + " was not stated",
        Trace.NONE,
        need.reasons().stream().map(reason -> "needed for: " + reason).toList(),
        EnumSet.of(Filter.MISSING));
  }

  private void region(Region region, Set<Integer> flagged) {
    for (Step step : region.steps()) {
      record.statements().stream()
          .filter(said -> said.statement().step().equals(step.id()))
          .filter(said -> !flagged.contains(said.number()))
          .sorted(
              Comparator.comparingInt((RecordedFinding said) -> place(said.statement().side()))
                  .thenComparing(RecordedFinding::number))
          .forEach(said -> items.add(statements.of(said, Section.BODY)));
      record.missing().stream()
          .filter(slot -> slot.step().equals(step.id()))
          .forEach(slot -> items.add(missing(step, slot)));
      record.missingDetails().stream()
          .filter(detail -> detail.slot().step().equals(step.id()))
          .forEach(detail -> items.add(detail(step, detail)));
    }
  }

  private static int place(Side side) {
    return side == null ? 0 : side == Side.RIGHT ? 1 : 2;
  }

  private ReviewItem missing(Step step, Slot slot) {
    return new ReviewItem(
        ReviewItem.Kind.STEP,
        Section.BODY,
        step.region(),
        0,
        slot.toString(),
        slot,
        step.key() ? ReviewItem.Sign.KEY : ReviewItem.Sign.OPEN,
        phrasing.name(slot.step(), slot.side()) + " is missing" + (step.key() ? " (key step)" : ""),
        Trace.NONE,
        step.reminder() == null ? List.of() : List.of(step.reminder()),
        EnumSet.of(Filter.MISSING));
  }

  private ReviewItem detail(Step step, MissingDetail missing) {
    String label =
        step.detail(missing.detail()).map(one -> one.label()).orElse(Labels.of(missing.detail()));
    return new ReviewItem(
        ReviewItem.Kind.DETAIL,
        Section.BODY,
        step.region(),
        0,
        missing.slot() + " " + missing.value() + " " + missing.detail(),
        missing.slot(),
        ReviewItem.Sign.OPEN,
        phrasing.name(missing.slot().step(), missing.slot().side())
            + ": "
            + label
            + " was not stated",
        Trace.NONE,
        new BeforeEdit(record).lines(missing.slot()),
        EnumSet.of(Filter.MISSING));
  }

  private void remarks() {
    for (Remark remark : record.remarks()) {
      boolean edited = remark.author() != null || !remark.text().equals(remark.heard());
      items.add(
          new ReviewItem(
              ReviewItem.Kind.REMARK,
              Section.REMARKS,
              null,
              remark.number(),
              "",
              null,
              ReviewItem.Sign.NONE,
              remark.text(),
              Trace.at(remark.start(), remark.end(), remark.author()),
              remark.text().equals(remark.heard())
                  ? List.of()
                  : List.of("first read as: " + remark.heard()),
              edited ? EnumSet.of(Filter.CHANGED) : Set.of()));
    }
  }
}
