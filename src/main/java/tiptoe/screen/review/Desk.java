package tiptoe.screen.review;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import tiptoe.clinical.Assessment;
import tiptoe.clinical.Flag;
import tiptoe.exam.Answer;
import tiptoe.exam.Asked;
import tiptoe.exam.Changes;
import tiptoe.exam.ExamRecord;
import tiptoe.exam.Examination;
import tiptoe.exam.NotRecorded;
import tiptoe.exam.Review;
import tiptoe.exam.Said;
import tiptoe.exam.Slot;
import tiptoe.exam.Status;
import tiptoe.language.Dialogue;
import tiptoe.language.Interpretation;
import tiptoe.language.Meaning;
import tiptoe.language.Phrasing;
import tiptoe.language.Question;
import tiptoe.language.Source;
import tiptoe.language.Statement;
import tiptoe.protocol.Side;
import tiptoe.protocol.Step;
import tiptoe.protocol.Value;

/**
 * Where a record is reviewed: carries out what the reviewer asks for and says what came of it, in
 * words. Knows nothing of keys and screens.
 */
public final class Desk {
  private static final String SIGNED = "the record is signed: start an addendum first, by A";

  private final Supplier<ExamRecord> source;
  private final Examination examination;
  private final String readOnly;
  private final TypedWords words;
  private final Function<ExamRecord, Assessment> assessor;
  private final Sealing sealing;
  private ExamRecord record;
  private Assessment assessment;
  private Reviewer reviewer;
  private Review review;

  private Desk(
      Supplier<ExamRecord> source,
      Examination examination,
      String readOnly,
      TypedWords words,
      Function<ExamRecord, Assessment> assessor,
      Sealing sealing) {
    this.source = source;
    this.examination = examination;
    this.readOnly = readOnly;
    this.words = words;
    this.assessor = assessor;
    this.sealing = sealing;
    refresh();
  }

  /** A desk that edits. */
  public static Desk editing(
      Examination examination,
      TypedWords words,
      Function<ExamRecord, Assessment> assessor,
      Sealing sealing) {
    return new Desk(examination::record, examination, null, words, assessor, sealing);
  }

  /**
   * A desk that only shows.
   *
   * @param source the record as it is now, which another process may go on writing
   * @param why it can only be read
   */
  public static Desk readOnly(
      Supplier<ExamRecord> source,
      String why,
      TypedWords words,
      Function<ExamRecord, Assessment> assessor) {
    return new Desk(source, null, why, words, assessor, null);
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

  public ExamRecord record() {
    return record;
  }

  public Assessment assessment() {
    return assessment;
  }

  TypedWords words() {
    return words;
  }

  /** Why it can only be read; null when it can be edited. */
  String whyReadOnly() {
    return readOnly;
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

  List<String> beforeSigning() throws IOException {
    return BeforeSigning.of(record, assessment, sealing.problems());
  }

  private Reply edit(Function<Review, Changes> what, Function<Changes, String> told) {
    if (readOnly != null) {
      return Reply.refused("read only: " + readOnly);
    }
    if (record.signed()) {
      return Reply.refused(SIGNED);
    }
    return carryOut(what, told);
  }

  private Reply carryOut(Function<Review, Changes> what, Function<Changes, String> told) {
    try {
      Changes changes = what.apply(review);
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

  /**
   * Takes in a typed line.
   *
   * @param region id of the region that short answers are about; may be null
   * @param asking a question that it may answer; null when there is none
   */
  public Reply type(String line, String region, Question asking) {
    Integer number = number(asking);
    return understood(
        line,
        region,
        asking,
        meaning -> edit(review -> review.enter(line, meaning, number), this::recorded));
  }

  private Integer number(Question asking) {
    return record.openQuestions().stream()
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
                ? edit(review -> review.enter(line, meaning, null), this::recorded)
                : edit(review -> review.accept(utterance, meaning.statements()), this::recorded));
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
          Statement to = meaning.statements().get(0);
          return edit(review -> review.change(statement, to), this::recorded);
        });
  }

  private Reply understood(
      String line, String region, Question asking, Function<Interpretation, Reply> then) {
    Interpretation meaning = words.meaning(line, new Dialogue(region, List.of(), asking));
    if (!meaning.uncovered().isEmpty()) {
      return Reply.refused(
          "nothing recorded; not understood: " + String.join(" ", meaning.uncovered()));
    }
    if (meaning.of(Meaning.Instruction.class).findAny().isPresent()) {
      return Reply.refused("nothing recorded: that is a command of the examination");
    }
    for (Statement statement : meaning.statements()) {
      Step step = record.protocol().step(statement.step());
      String sex = record.baby().sex().orElse(null);
      boolean left = statement.group() || Value.NOT_EXAMINED.equals(statement.value());
      if (!step.appliesTo(sex) && !left) {
        return Reply.refused(
            "nothing recorded: "
                + step.label()
                + " does not go with a "
                + sex
                + "; correct the sex first if it is wrong");
      }
    }
    List<Question> questions = meaning.questions();
    boolean says =
        !meaning.statements().isEmpty()
            || meaning.of(Meaning.Fact.class).findAny().isPresent()
            || meaning.of(Meaning.Answers.class).findAny().isPresent();
    if (!says) {
      return questions.isEmpty()
          ? Reply.refused("nothing recorded: that states no finding")
          : new Reply("nothing recorded yet", true, questions);
    }
    Reply reply = then.apply(meaning);
    return new Reply(reply.text(), reply.refused(), reply.refused() ? List.of() : questions);
  }

  private String recorded(Changes changes) {
    Phrasing phrasing = new Phrasing(record.protocol());
    List<String> parts = new ArrayList<>();
    for (Said said : changes.statements()) {
      String what = phrasing.of(said.statement());
      switch (said.status()) {
        case STANDS -> parts.add("recorded " + what + replaced(said, phrasing));
        case CONFIRMS -> parts.add("recorded already: " + what);
        default -> {}
      }
    }
    changes
        .of(tiptoe.exam.Event.ContextStated.class)
        .forEach(fact -> parts.add("noted " + fact.fact() + ": " + fact.value()));
    return parts.isEmpty() ? "noted" : String.join("; ", parts);
  }

  private String replaced(Said said, Phrasing phrasing) {
    String old =
        said.of().stream()
            .flatMap(number -> record.statement(number).stream())
            .filter(one -> one.status() == Status.REPLACED)
            .map(one -> phrasing.of(one.statement()))
            .distinct()
            .collect(Collectors.joining(", "));
    return old.isEmpty() ? "" : ", in place of " + old;
  }

  /** Puts a finding on the other side. */
  public Reply otherSide(int statement) {
    Statement now = whole(statement);
    if (now.side() == null) {
      return Reply.refused("that finding has no side");
    }
    Side other = now.side() == Side.LEFT ? Side.RIGHT : Side.LEFT;
    return edit(review -> review.change(statement, now.withSide(other)), this::recorded);
  }

  /** Gives a finding another value; what was said beside it is kept where it still belongs. */
  public Reply value(int statement, String value) {
    Statement now = whole(statement);
    Step step = record.protocol().step(now.step());
    Map<String, String> details = new TreeMap<>(now.details());
    details
        .keySet()
        .removeIf(id -> step.detail(id).map(detail -> !detail.belongsTo(value)).orElse(true));
    boolean sided = step.sided() || step.value(value).map(Value::sided).orElse(false);
    Statement to =
        new Statement(
            now.step(),
            sided ? now.side() : null,
            value,
            null,
            details,
            List.of(),
            false,
            Source.TYPED);
    return edit(review -> review.change(statement, to), this::recorded);
  }

  /** The statement with the details of those that confirm it. */
  private Statement whole(int number) {
    Said said = record.statement(number).orElseThrow();
    Answer answer = said.stands() ? Items.answer(record, said) : null;
    return (answer == null ? said.statement() : answer.asStatement()).withSource(Source.TYPED);
  }

  /** Answers a step that is missing. */
  public Reply fill(Slot slot, String value) {
    Statement statement = Statement.of(slot.step(), slot.side(), value).withSource(Source.TYPED);
    return edit(review -> review.state(statement), this::recorded);
  }

  /** Lets a statement count that does not count any more. */
  public Reply restate(int statement) {
    Statement again = whole(statement);
    return edit(review -> review.state(again), this::recorded);
  }

  public Reply reject(int statement, String reason) {
    Phrasing phrasing = new Phrasing(record.protocol());
    String what = phrasing.of(record.statement(statement).orElseThrow().statement());
    return edit(review -> review.reject(statement, reason), changes -> "taken out: " + what);
  }

  public Reply accept(int utterance) {
    boolean nothing =
        record.utterance(utterance).map(heard -> heard.candidates().isEmpty()).orElse(true);
    return nothing
        ? Reply.refused("it was not understood: type what was said, by e")
        : edit(review -> review.accept(utterance), this::recorded);
  }

  public Reply dismiss(int utterance) {
    return edit(review -> review.dismiss(utterance), changes -> "not to be used");
  }

  public Reply notExamined(Slot slot, String reason) {
    return edit(review -> review.notExamined(slot.step(), slot.side(), reason), this::recorded);
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
    if (readOnly != null) {
      return Reply.refused("read only: " + readOnly);
    }
    return carryOut(review -> review.startAddendum(reason), changes -> "addendum begun: " + reason);
  }

  /** Seals the record. */
  public Reply sign(String name, String role) {
    if (readOnly != null) {
      return Reply.refused("read only: " + readOnly);
    }
    if (record.signed()) {
      return Reply.refused(SIGNED);
    }
    if (name.isBlank() || role.isBlank()) {
      return Reply.refused("not signed: expected a name and a role");
    }
    try {
      sealing.sign(name.strip(), role.strip());
      reviewer(new Reviewer(name, role));
      return Reply.done("signed by " + reviewer);
    } catch (IOException | NotRecorded | IllegalStateException e) {
      return Reply.refused("NOT SIGNED: " + e.getMessage());
    } finally {
      refresh();
    }
  }
}
