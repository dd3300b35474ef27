package tiptoe.session;

import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Supplier;
import tiptoe.clinical.Assessment;
import tiptoe.clinical.Assessor;
import tiptoe.clinical.Flag;
import tiptoe.exam.Changes;
import tiptoe.exam.Event;
import tiptoe.exam.ExamRecord;
import tiptoe.exam.Examination;
import tiptoe.exam.Heard;
import tiptoe.exam.Phase;
import tiptoe.exam.Repair;
import tiptoe.exam.StatedIdentity;
import tiptoe.finding.Command;
import tiptoe.finding.Source;
import tiptoe.grammar.PhraseNetwork;
import tiptoe.language.Interpretation;
import tiptoe.language.Interpreter;
import tiptoe.session.UtteranceVerifier.Decision;
import tiptoe.settings.Settings;
import tiptoe.speech.Hypothesis;
import tiptoe.wording.RecordWording;

/**
 * One examination being dictated: from what was heard to what the record holds. What is heard and
 * what keys ask for may come from different threads.
 */
public final class ExamSession {
  private final Supplier<Interpreter> interpreter;
  private final UtteranceVerifier verifier = UtteranceVerifier.standard();
  private final Examination examination;
  private final Settings settings;
  private final ZonedDateTime examinedAt;
  private final Assessor assessor;

  /** A phrase that began in a pause does not count, though a key ended the pause before it did. */
  private double deafUntil;

  /**
   * @param interpreter asked for when something is heard, since it may still be loading
   */
  public ExamSession(
      Supplier<Interpreter> interpreter,
      Examination examination,
      Settings settings,
      ZonedDateTime examinedAt) {
    this.interpreter = interpreter;
    this.examination = examination;
    this.settings = settings;
    this.examinedAt = examinedAt;
    assessor = Assessor.of(examination.record().protocol());
  }

  /** The phrases that can be said. */
  public PhraseNetwork phrases() {
    return interpreter.get().phrases();
  }

  /** What follows from the record as it stands. */
  public Assessment assessment() {
    return wording().assessment();
  }

  /** The record as it stands and what follows from it, in words. */
  public RecordWording wording() {
    ExamRecord record = record();
    return new RecordWording(record, assessor.assess(record, settings, examinedAt), settings);
  }

  public synchronized ExamRecord record() {
    return examination.record();
  }

  Examination examination() {
    return examination;
  }

  /**
   * Takes in an utterance.
   *
   * @param offset second of the examination at which the recogniser was opened
   */
  public synchronized Changes hear(Hypothesis utterance, double offset) {
    if (utterance.start() + offset < deafUntil) {
      return new Changes(List.of(), List.of(), examination.record());
    }
    Decision decision = verifier.decide(utterance, this::meaning, examination.awaitsYesOrNo());
    Changes counts = take(heard(utterance, decision, offset), decision.interpretation());
    return decision
        .beside()
        .map(left -> counts.then(take(heard(utterance, left, offset), left.interpretation())))
        .orElse(counts);
  }

  private static Heard heard(Hypothesis utterance, Decision decision, double offset) {
    return new Heard(
        utterance.start() + offset,
        utterance.end() + offset,
        decision.text(),
        decision.words().stream().map(word -> word.later(offset)).toList(),
        decision.outcome(),
        decision.reason());
  }

  /** Takes in a typed line; words that no phrase covers make it unsure. */
  public synchronized Changes type(String text, List<String> words, double at) {
    return typed(text, interpret(words, Source.TYPED), at);
  }

  /** What typed words would mean now if they were dictated; changes nothing. */
  public synchronized Interpretation meaning(List<String> words) {
    return interpret(words, Source.GRAMMAR);
  }

  /** Takes in a typed line as if it were dictated. */
  public synchronized Changes dictate(String text, List<String> words, double at) {
    return typed(text, meaning(words), at);
  }

  // What of a sentence is certain counts; what is left of it waits as an utterance of its own.
  private Changes typed(String text, Interpretation meaning, double at) {
    if (!meaning.isParted()) {
      return typedWhole(text, meaning, at);
    }
    Changes counts = typedWhole(text, meaning.certain(), at);
    Interpretation left = meaning.doubtful();
    return left.statements().isEmpty() ? counts : counts.then(typedWhole(text, left, at));
  }

  private Changes typedWhole(String text, Interpretation meaning, double at) {
    Decision decision = verifier.decide(meaning, examination.awaitsYesOrNo());
    String reason = decision.reason().isEmpty() ? null : decision.reason();
    return take(new Heard(at, at, text, List.of(), decision.outcome(), reason), meaning);
  }

  /**
   * States who the baby is, as it was typed or scanned. What was stated otherwise before is left to
   * the review.
   *
   * @return what is wrong with it, for people; empty where it was taken
   */
  public synchronized List<String> identify(String typed) {
    StatedIdentity said = StatedIdentity.parse(typed, record().protocol());
    List<String> problems = new ArrayList<>(said.problems());
    said.facts()
        .forEach(
            (fact, value) ->
                record()
                    .baby()
                    .fact(fact)
                    .filter(before -> !before.equals(value))
                    .ifPresent(
                        before ->
                            problems.add(
                                fact.replace('-', ' ')
                                    + " was stated as "
                                    + before
                                    + ": to be put right in the review")));
    if (problems.isEmpty()) {
      String author = record().opened().author();
      said.facts().forEach((fact, value) -> examination.context(fact, value, author));
      noteFlags();
    }
    return problems;
  }

  /** Carries out what a key asks for, at this second of the audio. */
  public synchronized Changes command(Command command, double at) {
    boolean paused = examination.record().phase() == Phase.PAUSED;
    Changes changes = examination.command(command, at);
    if (paused && changes.record().phase() != Phase.PAUSED) {
      deafUntil = at;
    }
    if (!changes.isEmpty()) {
      noteFlags();
    }
    return changes;
  }

  /** Puts a remark in other words, as it was heard by the model's own vocabulary. */
  synchronized Changes reword(int remark, String text, List<Repair> repairs) {
    boolean better = !text.isBlank();
    return better
        ? examination.note(new Event.RemarkReworded(remark, text, repairs, null))
        : new Changes(List.of(), List.of(), examination.record());
  }

  /** Notes that sound was lost, from this second of the audio on. */
  public synchronized Changes gap(double from, double seconds) {
    return gap(from, seconds, "sound was lost");
  }

  /** The same, for a reason that is known. */
  public synchronized Changes gap(double from, double seconds, String reason) {
    return examination.note(new Event.AudioGap(from, seconds, reason));
  }

  private Interpretation interpret(List<String> words, Source source) {
    return interpreter.get().interpret(words, examination.dialogue(), source);
  }

  private Changes take(Heard heard, Interpretation meaning) {
    Changes changes = examination.hear(heard, meaning);
    if (!changes.isEmpty()) {
      noteFlags();
    }
    return changes;
  }

  // The record keeps which rules applied when, so that a flag that was corrected away is not lost.
  private void noteFlags() {
    examination.flags(assessment().flags().stream().map(Flag::recorded).toList());
  }
}
