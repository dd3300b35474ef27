package tiptoe.screen.review;

import java.util.Optional;
import java.util.function.Function;
import java.util.function.Supplier;
import tiptoe.clinical.Assessment;
import tiptoe.clinical.Flag;
import tiptoe.exam.Changes;
import tiptoe.exam.ExamRecord;
import tiptoe.exam.Examination;
import tiptoe.exam.NotRecorded;
import tiptoe.exam.Review;

/** The record as it is now with its assessment, who reviews it, and whether it may be edited. */
final class UnderReview {
  private final Supplier<ExamRecord> source;
  private final Examination examination;
  private final String whyReadOnly;
  private final Function<ExamRecord, Assessment> assessor;
  private ExamRecord record;
  private Assessment assessment;
  private Reviewer reviewer;
  private Review review;

  /**
   * @param examination takes the edits; null where {@code whyReadOnly} says that there are none
   */
  UnderReview(
      Supplier<ExamRecord> source,
      Examination examination,
      String whyReadOnly,
      Function<ExamRecord, Assessment> assessor) {
    this.source = source;
    this.examination = examination;
    this.whyReadOnly = whyReadOnly;
    this.assessor = assessor;
    refresh();
  }

  /** Takes in what changed; whether something has. */
  boolean refresh() {
    ExamRecord now = source.get();
    if (now == record) {
      return false;
    }
    record = now;
    assessment = assessor.apply(now);
    return true;
  }

  ExamRecord record() {
    return record;
  }

  Assessment assessment() {
    return assessment;
  }

  /** Null when it can be edited. */
  String whyReadOnly() {
    return whyReadOnly;
  }

  /** Null while nobody has said who it is. */
  Reviewer reviewer() {
    return reviewer;
  }

  void reviewer(Reviewer who) {
    reviewer = who;
    review = examination == null ? null : examination.review(who.name());
  }

  /** Why no edit can be made now. */
  Optional<Reply> refusal() {
    return readOnly()
        .or(
            () ->
                record.signed()
                    ? Optional.of(
                        Reply.refused("the record is signed: start an addendum first, by A"))
                    : Optional.empty());
  }

  /** Why nothing at all can be written, not even an addendum. */
  Optional<Reply> readOnly() {
    return Optional.ofNullable(whyReadOnly).map(why -> Reply.refused("read only: " + why));
  }

  /** Makes an edit and keeps the flags it raises or clears; tells what came of it. */
  Reply carryOut(Function<Review, Changes> edit, Function<Changes, String> told) {
    try {
      Changes changes = edit.apply(review);
      if (changes.isEmpty()) {
        return Reply.refused("there is nothing to change");
      }
      refresh();
      examination.flags(assessment.flags().stream().map(Flag::recorded).toList());
      refresh();
      return Reply.done(told.apply(changes));
    } catch (NotRecorded e) {
      return Reply.refused("NOT RECORDED: " + e.getMessage());
    } catch (IllegalArgumentException | IllegalStateException e) {
      return Reply.refused(e.getMessage());
    }
  }
}
