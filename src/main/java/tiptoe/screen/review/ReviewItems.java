package tiptoe.screen.review;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import tiptoe.clinical.Assessment;
import tiptoe.clinical.Flag;
import tiptoe.exam.Answer;
import tiptoe.exam.Asked;
import tiptoe.exam.Event;
import tiptoe.exam.ExamRecord;
import tiptoe.exam.MissingDetail;
import tiptoe.exam.RecordedFinding;
import tiptoe.exam.Remark;
import tiptoe.exam.Slot;
import tiptoe.exam.Status;
import tiptoe.exam.UnheardSound;
import tiptoe.exam.Utterance;
import tiptoe.finding.Finding;
import tiptoe.finding.Outcome;
import tiptoe.protocol.Region;
import tiptoe.protocol.Side;
import tiptoe.protocol.Step;
import tiptoe.screen.review.ReviewItem.Kind;
import tiptoe.wording.RecordWording;
import tiptoe.wording.Sign;
import tiptoe.wording.Words;

/**
 * All that a review goes through: what is to be decided, then what was flagged, then the rest from
 * head to toe. Each statement is there once.
 */
public final class ReviewItems {
  private static final Set<Status> AS_SAID = EnumSet.of(Status.STANDS, Status.CONFIRMS);

  private final ExamRecord record;
  private final Assessment assessment;
  private final Words words;
  private final RecordWording wording;
  private final List<ReviewItem> items = new ArrayList<>();

  private ReviewItems(RecordWording wording) {
    record = wording.record();
    assessment = wording.assessment();
    words = wording.words();
    this.wording = wording;
  }

  /** The items of a record, in the order of the review. */
  public static List<ReviewItem> of(RecordWording wording) {
    ReviewItems all = new ReviewItems(wording);
    all.undecided();
    Set<Integer> flagged = all.flagged();
    all.baby();
    all.record.protocol().regions().forEach(region -> all.region(region, flagged));
    all.remarks();
    all.unused();
    return List.copyOf(all.items);
  }

  /** A heading for each section and region, a line for each item, and what belongs to it below. */
  public static String text(RecordWording wording) {
    StringBuilder text = new StringBuilder();
    String before = "";
    for (ReviewItem item : of(wording)) {
      String heading = heading(item, wording);
      if (!heading.equals(before)) {
        text.append(before.isEmpty() ? "" : "\n").append(heading).append('\n');
        before = heading;
      }
      text.append("  ").append(item.sign().ascii()).append(' ').append(item.text()).append('\n');
      if (!item.provenance().text().isEmpty()) {
        text.append("      ").append(item.provenance().text()).append('\n');
      }
      item.notes().forEach(note -> text.append("      ").append(note).append('\n'));
    }
    return text.toString();
  }

  static String heading(ReviewItem item, RecordWording wording) {
    return item.section() == Section.BODY
        ? wording
            .words()
            .region(wording.record().protocol().region(item.region()).orElseThrow())
            .toUpperCase(Locale.ROOT)
        : item.section().title();
  }

  /** Open questions and unsure utterances, from head to toe. */
  private void undecided() {
    List<ReviewItem> open = new ArrayList<>();
    record.openQuestions().forEach(asked -> open.add(question(asked)));
    record.unsure().forEach(utterance -> open.add(unsure(utterance)));
    open.sort(Comparator.comparingInt(item -> place(item.region())));
    items.addAll(open);
  }

  private int place(String region) {
    List<String> ids = record.protocol().regions().stream().map(Region::id).toList();
    return ids.indexOf(region);
  }

  private ReviewItem question(Asked asked) {
    String step = asked.question().about() == null ? null : asked.question().about().step();
    Slot slot = step == null ? null : new Slot(step, asked.question().about().side());
    return new ReviewItem(
        Kind.QUESTION,
        Section.DECIDE,
        step == null ? null : region(step),
        asked.number(),
        "",
        slot,
        Sign.UNSURE,
        words.spelled(asked.question().text()),
        Provenance.of(record, asked.utterance(), "", null),
        slot == null ? List.of() : standing(slot),
        Set.of(Filter.UNSURE));
  }

  private ReviewItem unsure(Utterance utterance) {
    String seems = words.seems(utterance.offered());
    List<Slot> slots =
        utterance.seems().map(finding -> new Slot(finding.step(), finding.side())).toList();
    Slot slot = slots.isEmpty() ? null : slots.get(0);
    List<String> notes = new ArrayList<>();
    slots.forEach(one -> notes.addAll(standing(one)));
    return new ReviewItem(
        Kind.UTTERANCE,
        Section.DECIDE,
        slot == null ? null : region(slot.step()),
        utterance.number(),
        "",
        slot,
        Sign.UNSURE,
        seems.isEmpty() ? "unsure: \"" + utterance.heard().text() + "\"" : "unsure: " + seems,
        Provenance.of(utterance),
        notes,
        Set.of(Filter.UNSURE));
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
                items.add(statement(said, Section.FLAGGED));
              });
    }
    return listed;
  }

  private ReviewItem flag(Flag flag) {
    List<String> notes = new ArrayList<>();
    if (flag.when() != null && !flag.when().isBlank()) {
      notes.add("when: " + words.spelled(flag.when()));
    }
    notes.add("source: " + flag.source());
    return new ReviewItem(
        Kind.FLAG,
        Section.FLAGGED,
        flag.steps().isEmpty() ? null : region(flag.steps().get(0)),
        0,
        flag.rule() + " " + flag.statements(),
        null,
        flag.provisional() ? Sign.UNSURE : Sign.ABNORMAL,
        wording.flag(flag),
        Provenance.NONE,
        notes,
        Set.of(Filter.FLAGGED));
  }

  private String region(String step) {
    return record.protocol().step(step).region();
  }

  private void baby() {
    record.baby().facts().forEach((id, value) -> items.add(fact(id, value)));
    assessment
        .needs()
        .forEach(
            need ->
                items.add(
                    baby(
                        need.fact(),
                        Sign.OPEN,
                        words.label(need.fact()) + " was not stated",
                        Provenance.NONE,
                        need.reasons().stream()
                            .map(reason -> "needed for: " + words.spelled(reason))
                            .toList(),
                        Set.of(Filter.MISSING))));
  }

  private ReviewItem fact(String id, String value) {
    Event.ContextStated stated =
        record
            .events(Event.ContextStated.class)
            .filter(event -> event.fact().equals(id) && event.value().equals(value))
            .reduce((first, last) -> last)
            .orElse(new Event.ContextStated(id, value, null, null));
    return baby(
        id,
        Sign.DONE,
        words.stated(id, value),
        Provenance.of(record, stated.utterance(), "", stated.author()),
        List.of(),
        stated.author() == null ? Set.of() : Set.of(Filter.CHANGED));
  }

  private static ReviewItem baby(
      String fact, Sign sign, String text, Provenance from, List<String> notes, Set<Filter> of) {
    return new ReviewItem(
        Kind.FACT, Section.BABY, null, 0, fact, null, sign, text, from, notes, of);
  }

  private void region(Region region, Set<Integer> flagged) {
    for (Step step : region.steps()) {
      record.statements().stream()
          .filter(said -> said.statement().step().equals(step.id()))
          .filter(said -> !flagged.contains(said.number()))
          .sorted(
              Comparator.comparingInt((RecordedFinding said) -> place(said.statement().side()))
                  .thenComparing(RecordedFinding::number))
          .forEach(said -> items.add(statement(said, Section.BODY)));
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
        Kind.STEP,
        Section.BODY,
        step.region(),
        0,
        slot.toString(),
        slot,
        step.key() ? Sign.KEY : Sign.OPEN,
        wording.missing(slot) + ": missing" + (step.key() ? ", a key step" : ""),
        Provenance.NONE,
        step.reminder() == null ? List.of() : List.of(words.spelled(step.reminder())),
        Set.of(Filter.MISSING));
  }

  private ReviewItem detail(Step step, MissingDetail missing) {
    String label = words.detail(step.id(), missing.detail());
    return new ReviewItem(
        Kind.DETAIL,
        Section.BODY,
        step.region(),
        0,
        missing.slot() + " " + missing.value() + " " + missing.detail(),
        missing.slot(),
        Sign.OPEN,
        words.name(missing.slot()) + ": " + label + " was not stated",
        Provenance.NONE,
        standing(missing.slot()),
        Set.of(Filter.MISSING));
  }

  private void remarks() {
    for (Remark remark : record.remarks()) {
      boolean edited = remark.author() != null || !remark.text().equals(remark.heard());
      items.add(
          new ReviewItem(
              Kind.REMARK,
              Section.REMARKS,
              null,
              remark.number(),
              "",
              null,
              Sign.NONE,
              remark.text(),
              Provenance.at(remark.start(), remark.end(), remark.author()),
              remark.text().equals(remark.heard())
                  ? List.of()
                  : List.of("first read as: " + remark.heard()),
              edited ? Set.of(Filter.CHANGED) : Set.of()));
    }
  }

  private ReviewItem statement(RecordedFinding said, Section section) {
    Finding shown = current(record, said);
    List<Flag> flags = flags(said);
    return new ReviewItem(
        Kind.STATEMENT,
        section,
        record.protocol().step(said.statement().step()).region(),
        said.number(),
        "",
        said.slot(),
        sign(said, shown),
        words.of(shown) + (said.stands() ? "" : " (" + state(said.status()) + ")"),
        Provenance.of(record, said),
        notes(said, flags),
        filters(said, flags));
  }

  private List<Flag> flags(RecordedFinding said) {
    return assessment.flags().stream()
        .filter(flag -> flag.statements().contains(said.number()))
        .toList();
  }

  private Set<Filter> filters(RecordedFinding said, List<Flag> flags) {
    Set<Filter> filters = EnumSet.noneOf(Filter.class);
    if (!flags.isEmpty()) {
      filters.add(Filter.FLAGGED);
    }
    if (said.author() != null || !AS_SAID.contains(said.status())) {
      filters.add(Filter.CHANGED);
    }
    return filters;
  }

  private Sign sign(RecordedFinding said, Finding shown) {
    if (said.status() == Status.WAITS) {
      return Sign.UNSURE;
    }
    return AS_SAID.contains(said.status())
        ? wording.sign(new Answer(shown, said.number()))
        : Sign.SKIPPED;
  }

  private static String state(Status status) {
    return switch (status) {
      case STANDS -> "stands";
      case CONFIRMS -> "said again";
      case WAITS -> "waits for a decision";
      case UNUSED -> "had nothing left to fill";
      case WITHDRAWN -> "found not to count";
      case REPLACED -> "replaced";
      case STRUCK -> "taken back by the clinician";
      case REJECTED -> "taken out by the reviewer";
      case UNDONE -> "edit undone";
    };
  }

  private List<String> notes(RecordedFinding said, List<Flag> flags) {
    List<String> notes = new ArrayList<>();
    flags.forEach(flag -> notes.add(wording.flag(flag)));
    if (said.statement().group()) {
      notes.add("said for the whole region");
    }
    if (said.status() == Status.REPLACED) {
      successor(said)
          .ifPresent(by -> notes.add("replaced by: " + words.of(by.statement()) + by(by)));
    }
    if (said.status() == Status.REJECTED) {
      rejection(said)
          .ifPresent(event -> notes.add("taken out by " + event.author() + ": " + event.reason()));
    }
    if (said.stands() && !said.of().isEmpty()) {
      said.of().stream()
          .flatMap(number -> record.statement(number).stream())
          .forEach(old -> notes.add("in place of: " + words.of(old.statement()) + by(old)));
    }
    return notes;
  }

  private static String by(RecordedFinding said) {
    return said.author() == null ? "" : ", by " + said.author();
  }

  private Optional<RecordedFinding> successor(RecordedFinding said) {
    return record.statements().stream()
        .filter(later -> later.of().contains(said.number()))
        .filter(later -> later.status() != Status.UNDONE && later.status() != Status.CONFIRMS)
        .findFirst();
  }

  private Optional<Event.StatementRejected> rejection(RecordedFinding said) {
    return record
        .events(Event.StatementRejected.class)
        .filter(event -> event.statement() == said.number())
        .reduce((first, last) -> last);
  }

  /** What stands in a place, a line each, so that it is seen what an edit would replace. */
  private List<String> standing(Slot slot) {
    return record.answers(slot.step()).stream()
        .filter(answer -> slot.side() == null || answer.side() == slot.side())
        .map(answer -> "stands now: " + words.of(answer.finding()))
        .toList();
  }

  /** A statement with all that was added to it; as it was said where it does not stand. */
  static Finding current(ExamRecord record, RecordedFinding said) {
    if (!said.stands()) {
      return said.statement();
    }
    return record.answers(said.statement().step()).stream()
        .filter(answer -> answer.statement() == said.number())
        .findFirst()
        .map(Answer::finding)
        .orElse(said.statement());
  }

  /** What came to nothing: utterances of which nothing was made, then sound that was not heard. */
  private void unused() {
    record.utterances().stream()
        .filter(utterance -> !utterance.waits() && cameToNothing(utterance))
        .forEach(utterance -> items.add(unused(utterance)));
    record.gaps().forEach(gap -> items.add(gap(gap)));
  }

  /** Nothing that is in the record was made of it. */
  private boolean cameToNothing(Utterance utterance) {
    Integer number = utterance.number();
    boolean remark = utterance.heard().outcome() == Outcome.REMARK;
    return !remark
        && record.statements().stream().noneMatch(said -> number.equals(said.utterance()))
        && record.questions().stream().noneMatch(asked -> number.equals(asked.utterance()))
        && record
            .events(Event.ContextStated.class)
            .noneMatch(event -> number.equals(event.utterance()));
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
        Kind.UTTERANCE,
        Section.UNUSED,
        null,
        utterance.number(),
        "",
        null,
        Sign.SKIPPED,
        utterance.heard().outcome().id() + ": \"" + utterance.heard().text() + "\"",
        Provenance.of(utterance),
        notes,
        reviewed ? Set.of(Filter.CHANGED) : Set.of());
  }

  private static ReviewItem gap(UnheardSound gap) {
    return new ReviewItem(
        Kind.GAP,
        Section.UNUSED,
        null,
        0,
        "gap " + gap.from(),
        null,
        Sign.OPEN,
        String.format(Locale.ROOT, "not heard for %.1f s: %s", gap.seconds(), gap.reason()),
        new Provenance("", "", "", null, gap.from(), gap.from() + gap.seconds(), null),
        List.of(),
        Set.of());
  }
}
