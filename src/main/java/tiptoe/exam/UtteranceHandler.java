package tiptoe.exam;

import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import tiptoe.finding.Command;
import tiptoe.finding.Finding;
import tiptoe.finding.Question;
import tiptoe.language.Interpretation;
import tiptoe.language.Meaning;
import tiptoe.protocol.Detail;
import tiptoe.protocol.Side;
import tiptoe.protocol.Step;
import tiptoe.protocol.Value;

/** Takes in what one utterance means. */
final class UtteranceHandler {
  private static final Set<Status> LIVE = EnumSet.of(Status.STANDS, Status.CONFIRMS, Status.WAITS);

  private final EventBatch batch;
  private final Integer utterance;
  private final Heard heard;
  private final List<Command> commands = new ArrayList<>();
  private List<Asked> answered = List.of();
  private Series series;

  UtteranceHandler(EventBatch batch, Integer utterance, Heard heard) {
    this.batch = batch;
    this.utterance = utterance;
    this.heard = heard;
  }

  List<Command> commands() {
    return commands;
  }

  void take(Interpretation meaning) {
    series = series(meaning.of(Meaning.States.class).toList());
    answered =
        meaning.of(Meaning.Answers.class).flatMap(one -> find(one.question()).stream()).toList();
    boolean finds = meaning.meanings().stream().anyMatch(UtteranceHandler::goesOn);
    if (batch.record().phase() == Phase.ENDING && finds) {
      batch.add(new Event.EndRefused(utterance));
    }
    meaning.meanings().forEach(this::take);
    answered.forEach(asked -> close(asked, meaning));
    new QuestionUpkeep(batch, utterance).run();
  }

  /**
   * The clinician says whether an unsure utterance was understood; only then it counts, and what it
   * lacks is asked.
   *
   * @param kept what of it was: all, some or nothing
   */
  void confirm(Utterance unsure, List<Meaning> kept) {
    series =
        series(
            kept.stream()
                .filter(Meaning.States.class::isInstance)
                .map(Meaning.States.class::cast)
                .toList());
    kept.forEach(this::take);
    batch.add(new Event.UtteranceReviewed(unsure.number(), !kept.isEmpty(), null));
  }

  private Series series(List<Meaning.States> said) {
    return new Series(
        batch.record().protocol(),
        said.stream().filter(one -> !one.correction()).map(Meaning.States::statement).toList());
  }

  private static boolean goesOn(Meaning meaning) {
    return meaning instanceof Meaning.States
        || meaning instanceof Meaning.Withdraws
        || meaning instanceof Meaning.Asks
        || meaning instanceof Meaning.Fact fact && fact.doubtful();
  }

  /** An answer that states nothing keeps the older of two that contradict each other. */
  private void close(Asked asked, Interpretation meaning) {
    if (asked.question().kind() != Question.Kind.CONTRADICTION) {
      batch.add(new Event.QuestionAnswered(asked.number(), heard.text(), utterance, null));
    } else if (meaning.statements().isEmpty() && commands.isEmpty()) {
      new ContradictionSettlement(batch, utterance, null).older(asked);
    }
  }

  private Optional<Asked> find(Question question) {
    List<Asked> same =
        batch.record().openQuestions().stream()
            .filter(asked -> asked.question().equals(question))
            .toList();
    return same.stream().reduce((first, last) -> last);
  }

  private void take(Meaning meaning) {
    if (meaning instanceof Meaning.States finding) {
      found(finding.statement(), finding.correction());
    } else if (meaning instanceof Meaning.Withdraws withdraws) {
      withdraw(withdraws.finding());
    } else if (meaning instanceof Meaning.Asks asks) {
      ask(asks.question(), asks.correction());
    } else if (meaning instanceof Meaning.Fact fact) {
      fact(fact);
    } else if (meaning instanceof Meaning.Instruction instruction) {
      CommandHandler handler = new CommandHandler(batch, utterance, heard);
      if (instruction.doubtful()) {
        handler.ask(instruction.command());
      } else {
        commands.add(instruction.command());
        handler.carryOut(instruction.command()).ifPresent(commands::add);
      }
    }
  }

  /**
   * What was said last does not hold; what it confirmed was said of the same thing and goes too.
   */
  private void withdraw(Finding said) {
    batch.record().statements().stream()
        .filter(one -> LIVE.contains(one.status()) && one.slot().equals(slot(said)))
        .filter(one -> Objects.equals(one.statement().value(), said.value()))
        .filter(one -> Objects.equals(one.statement().quantity(), said.quantity()))
        .reduce((first, last) -> last)
        .map(one -> one.status() == Status.CONFIRMS ? one.of().get(0) : one.number())
        .ifPresent(
            number ->
                batch.add(new Event.StatementSettled(number, Effect.WITHDRAWN, List.of(), null)));
  }

  private static Slot slot(Finding said) {
    return new Slot(said.step(), said.side());
  }

  private void found(Finding statement, boolean correction) {
    Optional<Asked> settled =
        answered.stream()
            .filter(asked -> asked.question().kind() == Question.Kind.CONTRADICTION)
            .filter(asked -> statement.equals(asked.question().about()))
            .findFirst();
    if (settled.isPresent()) {
      new ContradictionSettlement(batch, utterance, null).newer(settled.get());
      return;
    }
    Step step = batch.record().protocol().step(statement.step());
    if (!step.sided() || statement.side() != null) {
      state(statement, correction || correctedBy(statement));
    } else if (statement.group() || Value.NOT_EXAMINED.equals(statement.value())) {
      for (Side side : List.of(Side.RIGHT, Side.LEFT)) {
        state(statement.withSide(side), correction);
      }
    } else {
      ask(Question.side(statement), correction);
    }
  }

  /** An answer takes over that its finding was a correction, or settles what it contradicts. */
  private boolean correctedBy(Finding statement) {
    return answered.stream()
        .filter(asked -> asked.question().about() != null)
        .filter(asked -> asked.question().about().step().equals(statement.step()))
        .anyMatch(
            asked ->
                asked.correction()
                    || asked.question().kind() == Question.Kind.CONTRADICTION
                        && asked.question().about().side() == statement.side());
  }

  private void state(Finding said, boolean correction) {
    Finding statement =
        correction ? ofTheLastMeasured(said) : series.numbered(batch.record(), said);
    Placement verdict = new Placing(batch.record(), utterance).of(statement, correction);
    Finding full = correction ? withWhatIsKept(statement, verdict) : statement;
    int number = batch.nextStatement();
    batch.add(
        new Event.StatementMade(
            number, full, correction, utterance, verdict.effect(), verdict.of(), null));
    if (verdict.waits()) {
      QuestionUpkeep.contradiction(batch, number, full, verdict, utterance);
    }
  }

  /** "Correction, sats foot ninety four" behind a repeat corrects the repeat. */
  private Finding ofTheLastMeasured(Finding statement) {
    if (statement.details().containsKey(Detail.REPEAT)) {
      return statement;
    }
    return batch.record().answers(statement.step()).stream()
        .max(java.util.Comparator.comparingInt(Answer::statement))
        .map(answer -> answer.details().get(Detail.REPEAT))
        .map(repeat -> statement.withDetails(java.util.Map.of(Detail.REPEAT, repeat)))
        .orElse(statement);
  }

  /** "Correction, murmur grade three" keeps the place that was stated with grade two. */
  private Finding withWhatIsKept(Finding statement, Placement verdict) {
    ExamRecord record = batch.record();
    Step step = record.protocol().step(statement.step());
    return StandingFinding.of(record.protocol(), record.statements(), Status.STANDS).stream()
        .filter(old -> verdict.effect() == Effect.STANDS)
        .filter(old -> verdict.of().contains(old.base().number()))
        .filter(old -> statement.value() != null && statement.value().equals(old.value()))
        .findFirst()
        .map(old -> kept(step, old, statement))
        .orElse(statement);
  }

  private static Finding kept(Step step, StandingFinding old, Finding statement) {
    var details = new java.util.TreeMap<>(old.details());
    if (step.sided()) {
      details.remove(StandingFinding.SYMMETRIC);
    }
    details.putAll(statement.details());
    return statement.withDetails(details);
  }

  private void ask(Question question, boolean correction) {
    if (alreadyStated(question)) {
      return;
    }
    find(question)
        .ifPresent(
            asked -> batch.add(new Event.QuestionDropped(asked.number(), "asked again", null)));
    batch.ask(question, correction, utterance);
  }

  private boolean alreadyStated(Question question) {
    return question.kind() == Question.Kind.DETAIL
        && QuestionUpkeep.answersAbout(batch.record(), question).stream()
            .anyMatch(answer -> QuestionUpkeep.has(answer, question.detail()));
  }

  /** A correction to a third value leaves nothing to choose between the first two. */
  private void dropQuestionsAbout(Meaning.Fact fact) {
    batch.record().openQuestions().stream()
        .filter(asked -> fact.id().equals(asked.fact()) && !fact.value().equals(asked.value()))
        .forEach(asked -> batch.add(new Event.QuestionDropped(asked.number(), "corrected", null)));
  }

  /** Whether it is an age and a moment of birth was stated, or the other way round, that differ. */
  private boolean isAtOdds(String id, String value) {
    Baby baby = batch.record().baby();
    boolean known = baby.is(id, value);
    Instant aged =
        id.equals("age") ? null : batch.record().stated("age").map(Stated::at).orElse(null);
    return !known
        && List.of("age", "born-at").contains(id)
        && StatedAge.isAtOdds(
            baby.with(id, value), Objects.requireNonNullElse(aged, batch.at()), batch.zone());
  }

  private void fact(Meaning.Fact fact) {
    String id = fact.id();
    String value = fact.value();
    String before = batch.record().baby().fact(id).orElse(value);
    if (batch.record().protocol().problem(id, value).isPresent()) {
      ask(Question.fact(id, value), fact.correction());
      return;
    }
    if (fact.correction()) {
      dropQuestionsAbout(fact);
    }
    boolean fits = before.equals(value) && !isAtOdds(id, value);
    if (fits && fact.doubtful() && !batch.record().baby().is(id, value)) {
      batch.ask(Question.readBack(id, value), false, utterance, null, List.of(), id, value);
    } else if (fact.correction() || fits) {
      new Context(batch, utterance, null).state(id, value);
    } else {
      Question which = Question.contradiction(null, null);
      batch.ask(which, false, utterance, null, List.of(), id, value);
    }
  }
}
