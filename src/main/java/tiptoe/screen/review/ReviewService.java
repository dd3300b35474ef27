package tiptoe.screen.review;

import java.io.IOException;
import java.util.List;
import java.util.function.Function;
import java.util.function.Supplier;
import tiptoe.clinical.Assessment;
import tiptoe.exam.Asked;
import tiptoe.exam.Changes;
import tiptoe.exam.ExamRecord;
import tiptoe.exam.Examination;
import tiptoe.exam.NotRecorded;
import tiptoe.exam.Review;
import tiptoe.exam.Slot;
import tiptoe.finding.Finding;
import tiptoe.finding.Question;
import tiptoe.finding.Source;
import tiptoe.language.Dialogue;
import tiptoe.language.Interpretation;
import tiptoe.protocol.Side;
import tiptoe.wording.FindingWording;

/**
 * Where a record is reviewed: carries out what the reviewer asks for and says what came of it, in
 * words. Knows nothing of keys and screens.
 */
public final class ReviewService {
  private final UnderReview under;
  private final TypedWords words;
  private final Sealing sealing;

  private ReviewService(UnderReview under, TypedWords words, Sealing sealing) {
    this.under = under;
    this.words = words;
    this.sealing = sealing;
  }

  /** A desk that edits. */
  public static ReviewService editing(
      Examination examination,
      TypedWords words,
      Function<ExamRecord, Assessment> assessor,
      Sealing sealing) {
    return new ReviewService(
        new UnderReview(examination::record, examination, null, assessor), words, sealing);
  }

  /**
   * A desk that only shows.
   *
   * @param source the record as it is now, which another process may go on writing
   * @param why it can only be read
   */
  public static ReviewService readOnly(
      Supplier<ExamRecord> source,
      String why,
      TypedWords words,
      Function<ExamRecord, Assessment> assessor) {
    return new ReviewService(new UnderReview(source, null, why, assessor), words, null);
  }

  /** Takes in what changed; whether something has. */
  boolean refresh() {
    return under.refresh();
  }

  public ExamRecord record() {
    return under.record();
  }

  public Assessment assessment() {
    return under.assessment();
  }

  TypedWords words() {
    return words;
  }

  /** Why it can only be read; null when it can be edited. */
  String whyReadOnly() {
    return under.whyReadOnly();
  }

  /** Who reviews; null while nobody has said so. */
  Reviewer reviewer() {
    return under.reviewer();
  }

  /** From here on edits are this reviewer's. */
  public void reviewer(Reviewer who) {
    under.reviewer(who);
  }

  List<String> beforeSigning() throws IOException {
    return BeforeSigning.of(record(), assessment(), sealing.problems());
  }

  private Reply edit(Function<Review, Changes> what) {
    return edit(what, changes -> new ChangeWords(record()).of(changes));
  }

  private Reply edit(Function<Review, Changes> what, Function<Changes, String> told) {
    return under.refusal().orElseGet(() -> under.carryOut(what, told));
  }

  /**
   * Takes in a typed line.
   *
   * @param region id of the region that short answers are about; may be null
   * @param asking a question that it may answer; null when there is none
   */
  public Reply type(String line, String region, Question asking) {
    Integer number = number(asking);
    return understood(
        line, region, asking, meaning -> edit(review -> review.enter(line, meaning, number)));
  }

  private Integer number(Question asking) {
    return record().openQuestions().stream()
        .filter(asked -> asked.question().equals(asking))
        .map(Asked::number)
        .findFirst()
        .orElse(null);
  }

  /** Takes in what an utterance said in truth; it takes the place of what it seemed to say. */
  public Reply typeFor(int utterance, String line, String region, Question asking) {
    return understood(
        line,
        region,
        asking,
        meaning ->
            meaning.statements().isEmpty()
                ? edit(review -> review.enter(line, meaning, null))
                : edit(review -> review.accept(utterance, meaning.statements())));
  }

  /** Takes in what is to stand in the place of a statement. */
  public Reply typeInstead(int statement, String line, String region, Question asking) {
    return understood(
        line,
        region,
        asking,
        meaning -> {
          if (meaning.statements().size() != 1) {
            return Reply.refused(
                "expected one finding in its place, found " + meaning.statements().size());
          }
          Finding to = meaning.statements().get(0);
          return edit(review -> review.change(statement, to));
        });
  }

  private Reply understood(
      String line, String region, Question asking, Function<Interpretation, Reply> then) {
    Interpretation meaning = words.meaning(line, new Dialogue(region, List.of(), asking));
    TypedLine typed = new TypedLine(meaning, record());
    Reply refusal = typed.refusal().orElse(null);
    if (refusal != null) {
      return refusal;
    }
    Reply reply = then.apply(meaning);
    return new Reply(
        reply.text(), reply.refused(), reply.refused() ? List.of() : typed.questions());
  }

  /** Puts a finding on the other side. */
  public Reply otherSide(int statement) {
    Finding now = new BeforeEdit(record()).typed(statement);
    if (now.side() == null) {
      return Reply.refused("that finding has no side");
    }
    Side other = now.side().other();
    return edit(review -> review.change(statement, now.withSide(other)));
  }

  /** Gives a finding another value; what was said beside it is kept where it still belongs. */
  public Reply value(int statement, String value) {
    Finding to = new BeforeEdit(record()).typed(statement, value);
    return edit(review -> review.change(statement, to));
  }

  /** Answers a step that is missing. */
  public Reply fill(Slot slot, String value) {
    Finding statement = Finding.of(slot.step(), slot.side(), value).withSource(Source.TYPED);
    return edit(review -> review.state(statement));
  }

  /** Lets a statement count that does not count any more. */
  public Reply restate(int statement) {
    Finding again = new BeforeEdit(record()).typed(statement);
    return edit(review -> review.state(again));
  }

  public Reply reject(int statement, String reason) {
    FindingWording phrasing = new FindingWording(record().protocol());
    String what = phrasing.of(record().statement(statement).orElseThrow().statement());
    return edit(review -> review.reject(statement, reason), changes -> "taken out: " + what);
  }

  public Reply accept(int utterance) {
    boolean nothing =
        record().utterance(utterance).map(heard -> heard.candidates().isEmpty()).orElse(true);
    return nothing
        ? Reply.refused("it was not understood: type what was said, by e")
        : edit(review -> review.accept(utterance));
  }

  public Reply dismiss(int utterance) {
    return edit(review -> review.dismiss(utterance), changes -> "not to be used");
  }

  public Reply notExamined(Slot slot, String reason) {
    return edit(review -> review.notExamined(slot.step(), slot.side(), reason));
  }

  /** Answers a contradiction. */
  public Reply settle(int question, boolean newerIsRight) {
    return edit(
        review -> review.settle(question, newerIsRight),
        changes -> newerIsRight ? "the second stands" : "the first stands");
  }

  public Reply drop(int question, String reason) {
    return edit(review -> review.drop(question, reason), changes -> "question closed");
  }

  public Reply remark(String text) {
    return edit(review -> review.remark(text), changes -> "remark added");
  }

  public Reply reword(int remark, String text) {
    return edit(review -> review.reword(remark, text), changes -> "remark reworded");
  }

  public Reply undo() {
    return edit(Review::undo, changes -> "undone");
  }

  public Reply redo() {
    return edit(Review::redo, changes -> "done again");
  }

  /** Opens a signed record for edits with a signature of their own. */
  public Reply startAddendum(String reason) {
    return under
        .readOnly()
        .orElseGet(
            () ->
                under.carryOut(
                    review -> review.startAddendum(reason),
                    changes -> "addendum begun: " + reason));
  }

  /** Seals the record. */
  public Reply sign(String name, String role) {
    return under.refusal().orElseGet(() -> seal(name, role));
  }

  private Reply seal(String name, String role) {
    if (name.isBlank() || role.isBlank()) {
      return Reply.refused("not signed: expected a name and a role");
    }
    try {
      sealing.sign(name.strip(), role.strip());
      reviewer(new Reviewer(name, role));
      return Reply.done("signed by " + reviewer());
    } catch (IOException | NotRecorded | IllegalStateException e) {
      return Reply.refused("NOT SIGNED: " + e.getMessage());
    } finally {
      refresh();
    }
  }
}
