package tiptoe.session;

import java.time.ZonedDateTime;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import java.util.stream.Stream;
import tiptoe.clinical.Assessment;
import tiptoe.clinical.Assessor;
import tiptoe.clinical.Flag;
import tiptoe.exam.Changes;
import tiptoe.exam.ExamRecord;
import tiptoe.exam.Examination;
import tiptoe.exam.Heard;
import tiptoe.exam.Phase;
import tiptoe.exam.Repair;
import tiptoe.finding.Command;
import tiptoe.finding.Outcome;
import tiptoe.finding.Source;
import tiptoe.grammar.PhraseNetwork;
import tiptoe.language.Interpretation;
import tiptoe.language.Interpreter;
import tiptoe.language.Meaning;
import tiptoe.settings.Settings;
import tiptoe.speech.FreeWording;
import tiptoe.speech.Hypothesis;
import tiptoe.speech.Verdict;
import tiptoe.speech.Word;

/**
 * One examination being dictated: from what was heard to what the record holds. What is heard and
 * what keys ask for may come from different threads.
 */
public final class ExamSession {
  private final Supplier<Interpreter> interpreter;
  private final LikelihoodVerifier rejection = LikelihoodVerifier.standard();
  private final Examination examination;
  private final Settings settings;
  private final ZonedDateTime examinedAt;
  private final Assessor assessor = Assessor.standard();

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
  }

  /** The phrases that can be said. */
  public PhraseNetwork phrases() {
    return interpreter.get().phrases();
  }

  /** What follows from the record as it stands. */
  public Assessment assessment() {
    ExamRecord record = record();
    return assessor.assess(record.baby(), record.answers(), settings, examinedAt);
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
    Verdict verdict = rejection.decide(utterance);
    Heard heard =
        heard(
            utterance,
            utterance.text(),
            utterance.phraseWords(),
            offset,
            verdict.outcome(),
            verdict.reason());
    List<String> words = heard.words().stream().map(Word::text).toList();
    Interpretation meaning = interpret(words, Source.GRAMMAR);
    Optional<String> doubt =
        heard.outcome() == Outcome.ACCEPTED ? doubt(utterance, meaning) : Optional.empty();
    Heard judged = doubt.map(why -> because(heard, Outcome.UNSURE, why)).orElse(heard);
    Optional<FreeWording> free = rejection.freely(utterance);
    if (judged.outcome() != Outcome.ACCEPTED && free.isPresent()) {
      Interpretation other = inOtherWords(free.get().known().stream().map(Word::text).toList());
      if (!other.statements().isEmpty()) {
        String reason = doubt.orElse("heard in free wordings");
        return hear(
            heard(utterance, free.get().text(), free.get().known(), offset, Outcome.UNSURE, reason),
            other);
      }
    }
    return hear(judged, meaning);
  }

  private static Heard heard(
      Hypothesis utterance,
      String text,
      List<Word> words,
      double offset,
      Outcome outcome,
      String reason) {
    return new Heard(
        utterance.start() + offset,
        utterance.end() + offset,
        text,
        words.stream().map(word -> word.later(offset)).toList(),
        outcome,
        reason);
  }

  /** Takes in a typed line; words that no phrase covers make it unsure. */
  public synchronized Changes type(String text, List<String> words, double at) {
    return hear(Heard.typed(text, at), interpret(words, Source.TYPED));
  }

  /** What typed words would mean now if they were dictated; changes nothing. */
  public synchronized Interpretation meaning(List<String> words) {
    return interpret(words, Source.GRAMMAR);
  }

  /** Takes in a typed line as if it were dictated. */
  public synchronized Changes dictate(String text, List<String> words, double at) {
    return hear(Heard.typed(text, at), meaning(words));
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
        ? examination.reword(remark, text, repairs, null)
        : new Changes(List.of(), List.of(), examination.record());
  }

  /** Notes that sound was lost, from this second of the audio on. */
  public synchronized Changes gap(double from, double seconds) {
    return gap(from, seconds, "sound was lost");
  }

  /** The same, for a reason that is known. */
  public synchronized Changes gap(double from, double seconds, String reason) {
    return examination.gap(from, seconds, reason);
  }

  // What may as well have been said and means something else makes an utterance unsure.
  private Optional<String> doubt(Hypothesis utterance, Interpretation meaning) {
    return Stream.concat(rejection.rivals(utterance).stream(), rejection.better(utterance).stream())
        .filter(rival -> !means(rival).equals(meaning.meanings()))
        .findFirst()
        .map(rival -> "may also be: " + (rival.isEmpty() ? "other speech" : rival));
  }

  private List<Meaning> means(String text) {
    List<String> words = text.isEmpty() ? List.of() : List.of(text.split(" "));
    return interpret(words, Source.GRAMMAR).meanings();
  }

  private Interpretation interpret(List<String> words, Source source) {
    return interpreter.get().interpret(words, examination.dialogue(), source);
  }

  // Whatever it rests on, it waits for someone to confirm it.
  private Interpretation inOtherWords(List<String> words) {
    Interpretation meaning = interpret(words, Source.GRAMMAR);
    List<Meaning> meanings =
        meaning.meanings().stream()
            .filter(Meaning.States.class::isInstance)
            .map(one -> ((Meaning.States) one).statement().withSource(Source.TAGGER))
            .<Meaning>map(statement -> new Meaning.States(statement, false))
            .toList();
    return new Interpretation(
        meanings, meaning.uncovered(), meaning.spans(), false, meaning.dialogue());
  }

  private Changes hear(Heard heard, Interpretation meaning) {
    Changes changes = examination.hear(judged(heard, meaning), meaning);
    if (!changes.isEmpty()) {
      noteFlags();
    }
    return changes;
  }

  // The record keeps which rules applied when, so that a flag that was corrected away is not lost.
  private void noteFlags() {
    examination.flags(assessment().flags().stream().map(Flag::recorded).toList());
  }

  private Heard judged(Heard heard, Interpretation meaning) {
    if (heard.outcome() == Outcome.IGNORED) {
      return heard;
    }
    if (saysNothing(meaning) && !meaning.withheld()) {
      return because(heard, Outcome.IGNORED, "nothing that is recorded");
    }
    if (heard.outcome() == Outcome.ACCEPTED && !meaning.uncovered().isEmpty()) {
      return because(
          heard, Outcome.UNSURE, "not understood: " + String.join(" ", meaning.uncovered()));
    }
    boolean onlyCommands =
        meaning.meanings().stream().allMatch(Meaning.Instruction.class::isInstance);
    return heard.outcome() == Outcome.ACCEPTED && onlyCommands
        ? heard.withOutcome(Outcome.COMMAND)
        : heard;
  }

  // A bare "yes" or "no" is no command where nothing was asked.
  private boolean saysNothing(Interpretation meaning) {
    boolean asked = examination.awaitsYesOrNo() && !meaning.meanings().isEmpty();
    return !asked
        && meaning.meanings().stream()
            .allMatch(
                one ->
                    one instanceof Meaning.Instruction instruction
                        && (instruction.command() == Command.YES
                            || instruction.command() == Command.NO));
  }

  private static Heard because(Heard heard, Outcome outcome, String reason) {
    return new Heard(heard.start(), heard.end(), heard.text(), heard.words(), outcome, reason);
  }
}
