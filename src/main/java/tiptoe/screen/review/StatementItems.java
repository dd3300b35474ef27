package tiptoe.screen.review;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import tiptoe.clinical.Assessment;
import tiptoe.clinical.Flag;
import tiptoe.exam.Entry;
import tiptoe.exam.Event;
import tiptoe.exam.ExamRecord;
import tiptoe.exam.RecordedFinding;
import tiptoe.exam.Status;
import tiptoe.finding.Finding;
import tiptoe.protocol.Norm;
import tiptoe.protocol.Step;
import tiptoe.protocol.Value;
import tiptoe.wording.FindingWording;

/** Makes items of statements. */
record StatementItems(ExamRecord record, Assessment assessment) {
  private static final Set<Status> AS_SAID = EnumSet.of(Status.STANDS, Status.CONFIRMS);

  ReviewItem of(RecordedFinding said, Section section) {
    FindingWording phrasing = new FindingWording(record.protocol());
    Finding shown = new BeforeEdit(record).of(said);
    List<Flag> flags = flags(said);
    return new ReviewItem(
        ReviewItem.Kind.STATEMENT,
        section,
        record.protocol().step(said.statement().step()).region(),
        said.number(),
        "",
        said.slot(),
        sign(said, shown),
        phrasing.of(shown) + (said.stands() ? "" : " (" + words(said.status()) + ")"),
        Trace.of(record, said),
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

  private ReviewItem.Sign sign(RecordedFinding said, Finding shown) {
    if (said.status() == Status.WAITS) {
      return ReviewItem.Sign.UNSURE;
    }
    if (!AS_SAID.contains(said.status()) || Value.NOT_EXAMINED.equals(shown.value())) {
      return ReviewItem.Sign.SKIPPED;
    }
    Step step = record.protocol().step(shown.step());
    Norm norm = step.value(String.valueOf(shown.value())).map(Value::norm).orElse(Norm.NORMAL);
    return norm == Norm.ABNORMAL
        ? ReviewItem.Sign.ABNORMAL
        : norm == Norm.BENIGN ? ReviewItem.Sign.BENIGN : ReviewItem.Sign.DONE;
  }

  static String words(Status status) {
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
    flags.forEach(
        flag -> notes.add(flag.level().id().toUpperCase(Locale.ROOT) + ": " + flag.advice()));
    if (said.statement().group()) {
      notes.add("said for the whole region");
    }
    FindingWording phrasing = new FindingWording(record.protocol());
    if (said.status() == Status.REPLACED) {
      successor(said)
          .ifPresent(by -> notes.add("replaced by: " + phrasing.of(by.statement()) + by(by)));
    }
    if (said.status() == Status.REJECTED) {
      rejection(said)
          .ifPresent(event -> notes.add("taken out by " + event.author() + ": " + event.reason()));
    }
    if (said.stands() && !said.of().isEmpty()) {
      said.of().stream()
          .flatMap(number -> record.statement(number).stream())
          .forEach(old -> notes.add("in place of: " + phrasing.of(old.statement()) + by(old)));
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
    return record.entries().stream()
        .map(Entry::event)
        .filter(Event.StatementRejected.class::isInstance)
        .map(Event.StatementRejected.class::cast)
        .filter(event -> event.statement() == said.number())
        .reduce((first, last) -> last);
  }
}
