package tiptoe.screen.review;

import java.io.IOException;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import tiptoe.clinical.Flag;
import tiptoe.exam.Asked;
import tiptoe.exam.Changes;
import tiptoe.exam.Event;
import tiptoe.exam.ExamRecord;
import tiptoe.exam.Examination;
import tiptoe.exam.NotRecorded;
import tiptoe.exam.RecordedFinding;
import tiptoe.exam.Review;
import tiptoe.exam.Slot;
import tiptoe.exam.StatedIdentity;
import tiptoe.exam.Status;
import tiptoe.exam.Utterance;
import tiptoe.finding.Finding;
import tiptoe.finding.Outcome;
import tiptoe.finding.Question;
import tiptoe.finding.Source;
import tiptoe.language.Dialogue;
import tiptoe.language.Interpretation;
import tiptoe.language.Meaning;
import tiptoe.protocol.Side;
import tiptoe.protocol.Step;
import tiptoe.protocol.Value;
import tiptoe.wording.OutcomeWording;
import tiptoe.wording.QuestionWording;
import tiptoe.wording.RecordWording;
import tiptoe.wording.StoredExamWording;
import tiptoe.wording.Words;

/**
 * Where a record is reviewed: carries out what the reviewer asks for and says what came of it, in
 * words. Knows nothing of keys and screens.
 */
public final class ReviewService {
  public interface Sealing {
    /** What is wrong with the sound that is kept; empty when nothing is. */
    List<String> problems() throws IOException;

    /** Those of them that somebody caused: only who names a reason signs in spite of them. */
    List<String> alterations() throws IOException;

    /** Signs the record with all that belongs to it. */
    void sign(String name, String role) throws IOException;
  }

  static final String NO_FINDING =
      "it was a heading, an answer, a command or talk, and stays so; t types a finding";

  private final Supplier<ExamRecord> source;
  private final Examination examination;
  private final String whyReadOnly;
  private final Function<ExamRecord, RecordWording> assessor;
  private final TypedWords words;
  private final Sealing sealing;
  private RecordWording wording;
  private Reviewer reviewer;
  private Review review;

  private ReviewService(
      Supplier<ExamRecord> source,
      Examination examination,
      String whyReadOnly,
      TypedWords words,
      Function<ExamRecord, RecordWording> assessor,
      Sealing sealing) {
    this.source = source;
    this.examination = examination;
    this.whyReadOnly = whyReadOnly;
    this.words = words;
    this.assessor = assessor;
    this.sealing = sealing;
    refresh();
  }

  public static ReviewService editing(
      Examination examination,
      TypedWords words,
      Function<ExamRecord, RecordWording> assessor,
      Sealing sealing) {
    return new ReviewService(examination::record, examination, null, words, assessor, sealing);
  }

  /**
   * A service that only shows.
   *
   * @param source the record as it is now, which another process may go on writing
   * @param why it can only be read
   */
  public static ReviewService readOnly(
      Supplier<ExamRecord> source,
      String why,
      TypedWords words,
      Function<ExamRecord, RecordWording> assessor) {
    return new ReviewService(source, null, why, words, assessor, null);
  }

  /** Takes in what changed; whether something has. */
  boolean refresh() {
    ExamRecord now = source.get();
    if (wording != null && now == wording.record()) {
      return false;
    }
    wording = assessor.apply(now);
    return true;
  }

  public ExamRecord record() {
    return wording.record();
  }

  /** The record as it is now and what follows from it, in words. */
  RecordWording wording() {
    return wording;
  }

  /** Why it can only be read; null when it can be edited. */
  String whyReadOnly() {
    return whyReadOnly;
  }

  /** Who reviews; null while nobody has said so. */
  Reviewer reviewer() {
    return reviewer;
  }

  /** From here on edits are this reviewer's. */
  public void reviewer(Reviewer who) {
    reviewer = who;
    review = examination == null ? null : examination.review(who.name());
  }

  /** Why no edit can be made now. */
  private Optional<Reply> refusal() {
    return record().signed() && whyReadOnly == null
        ? Optional.of(Reply.refused("the record is signed: start an addendum first, by A"))
        : readOnly();
  }

  /** Why nothing at all can be written, not even an addendum. */
  private Optional<Reply> readOnly() {
    return Optional.ofNullable(whyReadOnly).map(why -> Reply.refused("read only: " + why));
  }

  /** Makes an edit and keeps the flags it raises or clears; tells what came of it. */
  private Reply carryOut(Function<Review, Changes> edit, Function<Changes, String> told) {
    try {
      Changes changes = edit.apply(review);
      if (changes.isEmpty()) {
        return Reply.refused("there is nothing to change");
      }
      refresh();
      examination.flags(wording.assessment().flags().stream().map(Flag::recorded).toList());
      refresh();
      return Reply.done(told.apply(changes));
    } catch (NotRecorded e) {
      return Reply.refused("NOT RECORDED: " + e.getMessage());
    } catch (IllegalArgumentException | IllegalStateException e) {
      return Reply.refused(e.getMessage());
    }
  }

  TypedWords words() {
    return words;
  }

  List<String> beforeSigning() throws IOException {
    return BeforeSigning.of(wording, sealing.problems());
  }

  private Reply edit(Function<Review, Changes> what) {
    return edit(what, this::told);
  }

  private Reply edit(Function<Review, Changes> what, Function<Changes, String> told) {
    return refusal().orElseGet(() -> carryOut(what, told));
  }

  /** What an edit did to the record, in words. */
  private String told(Changes changes) {
    Words words = wording.words();
    List<String> parts = new ArrayList<>();
    for (RecordedFinding said : changes.statements()) {
      String what = words.of(said.statement());
      switch (said.status()) {
        case STANDS -> parts.add("recorded " + what + replaced(said));
        case CONFIRMS -> parts.add("recorded already: " + what);
        default -> {}
      }
    }
    changes
        .of(Event.ContextStated.class)
        .forEach(fact -> parts.add("noted " + words.stated(fact.fact(), fact.value())));
    return parts.isEmpty() ? "noted" : String.join("; ", parts);
  }

  private String replaced(RecordedFinding said) {
    String old =
        said.of().stream()
            .flatMap(number -> record().statement(number).stream())
            .filter(one -> one.status() == Status.REPLACED)
            .map(one -> wording.words().of(one.statement()))
            .distinct()
            .collect(Collectors.joining(", "));
    return old.isEmpty() ? "" : ", in place of " + old;
  }

  /**
   * Takes in a typed line.
   *
   * @param region id of the region that short answers are about; may be null
   * @param asking a question that it may answer; null when there is none
   */
  public Reply type(String line, String region, Question asking) {
    Optional<StatedIdentity> identity = StatedIdentity.ofLine(line, record().protocol());
    if (identity.isPresent()) {
      return identity.get().problems().isEmpty()
          ? edit(review -> review.context(identity.get().facts()))
          : Reply.refused(String.join("; ", identity.get().problems()));
    }
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
    if (isNoFinding(utterance)) {
      return Reply.refused(NO_FINDING);
    }
    return understood(
        line,
        region,
        asking,
        meaning ->
            meaning.statements().isEmpty()
                ? edit(review -> review.enter(line, meaning, null))
                : edit(review -> review.accept(utterance, meaning.statements())));
  }

  /**
   * Whether what was heard told something to the tool, or to somebody else, and no finding. What
   * was understood and stated nothing announced a region or answered a question.
   */
  boolean isNoFinding(int utterance) {
    return record()
        .utterance(utterance)
        .map(Utterance::heard)
        .filter(
            heard ->
                !EnumSet.of(Outcome.UNSURE, Outcome.IGNORED).contains(heard.outcome())
                    || OutcomeWording.isTalk(heard))
        .isPresent();
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
    Reply refusal = refusal(meaning).orElse(null);
    if (refusal != null) {
      return refusal;
    }
    Reply reply = then.apply(meaning);
    return new Reply(
        reply.text(), reply.refused(), reply.refused() ? List.of() : questions(meaning));
  }

  /** Why nothing is recorded, with the questions to ask first; empty where it can be recorded. */
  private Optional<Reply> refusal(Interpretation meaning) {
    if (!meaning.uncovered().isEmpty()) {
      return Optional.of(
          Reply.refused(
              "nothing recorded; not understood: " + String.join(" ", meaning.uncovered())));
    }
    if (meaning.of(Meaning.Instruction.class).findAny().isPresent()) {
      return refused("that is a command of the examination");
    }
    for (Finding statement : meaning.statements()) {
      Step step = record().protocol().step(statement.step());
      if (!fits(statement, step)) {
        String sex = record().baby().sex().orElse(null);
        return refused(
            wording.words().step(step.id())
                + " does not go with a "
                + sex
                + "; correct the sex first if it is wrong");
      }
    }
    if (says(meaning)) {
      return Optional.empty();
    }
    List<Question> questions = questions(meaning);
    return questions.isEmpty()
        ? refused("that states no finding")
        : Optional.of(new Reply("nothing recorded yet", true, questions));
  }

  /** What a line leaves open, in words. */
  private List<Question> questions(Interpretation meaning) {
    QuestionWording asking = new QuestionWording(record().protocol());
    return meaning.questions().stream()
        .map(question -> question.withText(asking.of(question)))
        .toList();
  }

  private boolean fits(Finding statement, Step step) {
    return step.appliesTo(record().baby().sex().orElse(null))
        || statement.group()
        || Value.NOT_EXAMINED.equals(statement.value());
  }

  private static boolean says(Interpretation meaning) {
    return !meaning.statements().isEmpty()
        || meaning.of(Meaning.Fact.class).findAny().isPresent()
        || meaning.of(Meaning.Answers.class).findAny().isPresent();
  }

  private static Optional<Reply> refused(String why) {
    return Optional.of(Reply.refused("nothing recorded: " + why));
  }

  public Reply otherSide(int statement) {
    Finding now = typed(statement);
    if (now.side() == null) {
      return Reply.refused("that finding has no side");
    }
    Side other = now.side().other();
    return edit(review -> review.change(statement, now.withSide(other)));
  }

  /** Gives a finding another value; what was said beside it is kept where it still belongs. */
  public Reply value(int statement, String value) {
    Finding to = typed(statement, value);
    return edit(review -> review.change(statement, to));
  }

  /** Answers a step that is missing. */
  public Reply fill(Slot slot, String value) {
    Finding statement = Finding.of(slot.step(), slot.side(), value).withSource(Source.TYPED);
    return edit(review -> review.state(statement));
  }

  /** Lets a statement count that does not count any more. */
  public Reply restate(int statement) {
    Finding again = typed(statement);
    return edit(review -> review.state(again));
  }

  public Reply reject(int statement, String reason) {
    String what = wording.words().of(record().statement(statement).orElseThrow().statement());
    return edit(review -> review.reject(statement, reason), changes -> "taken out: " + what);
  }

  /** What an utterance seems to say, each part to be accepted by itself. */
  List<Meaning> parts(int utterance) {
    return record().utterance(utterance).stream()
        .flatMap(heard -> heard.offered().stream())
        .filter(part -> !(part instanceof Meaning.Asks))
        .toList();
  }

  public Reply accept(int utterance) {
    return accept(utterance, parts(utterance));
  }

  /** Accepts some parts of what an utterance seems to say; the others are not to be used. */
  public Reply accept(int utterance, List<Meaning> parts) {
    if (isNoFinding(utterance)) {
      return Reply.refused(NO_FINDING);
    }
    if (record().utterance(utterance).stream().allMatch(heard -> heard.offered().isEmpty())) {
      return Reply.refused("it was not understood: type what was said, by e");
    }
    return parts.isEmpty() && !parts(utterance).isEmpty()
        ? dismiss(utterance)
        : edit(review -> review.acceptOffered(utterance, parts));
  }

  public Reply dismiss(int utterance) {
    return edit(review -> review.dismiss(utterance), changes -> "not to be used");
  }

  public Reply notExamined(Slot slot, String reason) {
    return edit(review -> review.notExamined(slot.step(), slot.side(), reason));
  }

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
    return readOnly()
        .orElseGet(
            () ->
                carryOut(
                    review -> review.startAddendum(reason),
                    changes -> "addendum begun: " + reason));
  }

  /** What must be settled before a signature, or named by the signer. */
  List<String> unsettled() throws IOException {
    return Stream.concat(wording.toSettle().stream(), sealing.alterations().stream()).toList();
  }

  /**
   * Seals the record.
   *
   * @param despite the signer's own words for signing what is not settled; empty where all is
   */
  public Reply sign(String name, String role, String despite) {
    return refusal().orElseGet(() -> seal(name, role, despite.strip()));
  }

  private Reply seal(String name, String role, String despite) {
    if (name.isBlank() || role.isBlank()) {
      return Reply.refused("not signed: expected a name and a role");
    }
    try {
      List<String> open = unsettled();
      if (!open.isEmpty() && despite.isEmpty()) {
        return Reply.refused("not signed: settle it or name why not: " + String.join("; ", open));
      }
      if (!open.isEmpty()) {
        remark(Review.despite(despite, sealing.alterations()));
      }
      sealing.sign(name.strip(), role.strip());
      reviewer(new Reviewer(name, role));
      refresh();
      return Reply.done(StoredExamWording.signatures(record()));
    } catch (IOException | NotRecorded | IllegalStateException | IllegalArgumentException e) {
      return Reply.refused("NOT SIGNED: " + e.getMessage());
    } finally {
      refresh();
    }
  }

  /** A statement as a reviewer would type it. */
  private Finding typed(int number) {
    return ReviewItems.current(record(), record().statement(number).orElseThrow())
        .withSource(Source.TYPED);
  }

  /** The same with another value; what was said beside it is kept where it still belongs. */
  private Finding typed(int number, String value) {
    Finding now = typed(number);
    Step step = record().protocol().step(now.step());
    Map<String, String> details = new TreeMap<>(now.details());
    details
        .keySet()
        .removeIf(id -> step.detail(id).map(detail -> !detail.belongsTo(value)).orElse(true));
    boolean sided = step.sided() || step.value(value).map(Value::sided).orElse(false);
    return new Finding(
        now.step(),
        sided ? now.side() : null,
        value,
        null,
        details,
        List.of(),
        false,
        Source.TYPED);
  }
}
