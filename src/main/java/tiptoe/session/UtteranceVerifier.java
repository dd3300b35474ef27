package tiptoe.session;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;
import tiptoe.finding.Command;
import tiptoe.finding.Outcome;
import tiptoe.finding.Source;
import tiptoe.language.Interpretation;
import tiptoe.language.Meaning;
import tiptoe.speech.Evidence;
import tiptoe.speech.FreeWording;
import tiptoe.speech.Hypothesis;
import tiptoe.speech.Verdict;
import tiptoe.speech.Word;

/**
 * Decides whether an utterance is recorded, offered for confirmation or left alone. How well its
 * words fit the sound decides first, then what else may have been said, then what the words mean;
 * the most doubtful of these holds: a false entry is worse than a missed one.
 */
public final class UtteranceVerifier {
  private static final String OTHER_SPEECH = "sounds like other speech";

  private final VerifierLimits limits;

  public UtteranceVerifier(VerifierLimits limits) {
    this.limits = limits;
  }

  /** With the limits in use. */
  public static UtteranceVerifier standard() {
    return new UtteranceVerifier(VerifierLimits.shipped());
  }

  /**
   * What becomes of an utterance.
   *
   * @param verdict the outcome, and why it was not accepted
   * @param text the words that are taken, as one text
   * @param words the words that are taken: those of phrases, or of free wordings where these are
   *     offered instead
   * @param interpretation what they mean
   */
  public record Decision(
      Verdict verdict, String text, List<Word> words, Interpretation interpretation) {
    public Decision {
      words = List.copyOf(words);
    }

    public Outcome outcome() {
      return verdict.outcome();
    }
  }

  /**
   * Decides about what was heard.
   *
   * @param interpret what words mean in the dialogue as it stands
   * @param awaitsYesOrNo whether a question is open that yes or no answers
   */
  public Decision decide(
      Hypothesis utterance,
      Function<List<String>, Interpretation> interpret,
      boolean awaitsYesOrNo) {
    Interpretation said = interpret.apply(texts(utterance.phraseWords()));
    Verdict fit = byEvidence(utterance);
    boolean fits = fit.outcome() == Outcome.ACCEPTED;
    Optional<String> rival = fits ? otherMeaning(utterance, said, interpret) : Optional.empty();
    Verdict verdict =
        rival.map(other -> new Verdict(Outcome.UNSURE, "may also be: " + other)).orElse(fit);
    Decision asPhrases = new Decision(verdict, utterance.text(), utterance.phraseWords(), said);
    if (verdict.outcome() == Outcome.ACCEPTED) {
      return byMeaning(asPhrases, awaitsYesOrNo);
    }
    String reason = fits ? verdict.reason() : "heard in free wordings";
    return byMeaning(
        offered(utterance)
            .map(free -> inFreeWordings(free, reason, interpret))
            .filter(free -> !free.interpretation().statements().isEmpty())
            .orElse(asPhrases),
        awaitsYesOrNo);
  }

  /**
   * Decides about words that were surely said, such as typed ones: by what they mean alone.
   *
   * @param awaitsYesOrNo whether a question is open that yes or no answers
   */
  public Verdict decide(Interpretation meaning, boolean awaitsYesOrNo) {
    return byMeaning(Verdict.ACCEPTED, meaning, awaitsYesOrNo);
  }

  // By the sound

  private Verdict byEvidence(Hypothesis utterance) {
    Verdict filler = byFiller(utterance);
    Verdict support = bySupport(utterance);
    Verdict worse = support.outcome().compareTo(filler.outcome()) > 0 ? support : filler;
    return worse.outcome() == Outcome.UNSURE && isOtherSpeech(utterance)
        ? new Verdict(Outcome.IGNORED, OTHER_SPEECH)
        : worse;
  }

  /**
   * Speech that is no phrase, next to a phrase, is most often a conversation; where it takes up
   * more time than the phrase, the phrase is a chance likeness in it.
   */
  private static Verdict byFiller(Hypothesis utterance) {
    if (!utterance.hasPhrase()) {
      return new Verdict(Outcome.IGNORED, "no phrase of the examination");
    }
    if (!utterance.hasFiller()) {
      return Verdict.ACCEPTED;
    }
    return utterance.isMostlyFiller()
        ? new Verdict(Outcome.IGNORED, "mostly other speech")
        : new Verdict(Outcome.UNSURE, "other speech beside the phrase");
  }

  /**
   * How well the phrases fit the sound, where it was heard twice. Where any other words could have
   * fitted better and did not, phrases may fit less well: noise spoils the fit of all words.
   */
  private Verdict bySupport(Hypothesis utterance) {
    if (utterance.evidence().isEmpty()) {
      return Verdict.ACCEPTED;
    }
    double support = utterance.evidence().get().support();
    boolean contested = !utterance.hasFiller() && freeWordings(utterance).isPresent();
    if (support >= (contested ? limits.contestedFrom() : limits.acceptedFrom())) {
      return Verdict.ACCEPTED;
    }
    return support < limits.unsureFrom()
        ? new Verdict(Outcome.IGNORED, OTHER_SPEECH)
        : new Verdict(Outcome.UNSURE, "does not sound much like the phrase");
  }

  /**
   * Where not even free wordings fit what is said beside a phrase, the examination is not what is
   * being talked about.
   */
  private boolean isOtherSpeech(Hypothesis utterance) {
    return utterance.hasFiller() && freeWordings(utterance).map(free -> !fits(free)).orElse(false);
  }

  private boolean fits(FreeWording free) {
    return free.support() >= limits.freeFrom() * free.seconds();
  }

  /** Free wordings that count for themselves: a word or two may be anything. */
  private Optional<FreeWording> freeWordings(Hypothesis utterance) {
    return utterance
        .otherwise()
        .filter(free -> utterance.end() - utterance.start() >= limits.freeSeconds());
  }

  // By what else may have been said

  /** The first words that the sound may as well have been and that mean something else. */
  private Optional<String> otherMeaning(
      Hypothesis utterance, Interpretation said, Function<List<String>, Interpretation> interpret) {
    return Stream.concat(rivals(utterance).stream(), better(utterance).stream())
        .filter(rival -> !interpret.apply(split(rival)).meanings().equals(said.meanings()))
        .findFirst()
        .map(rival -> rival.isEmpty() ? "other speech" : rival);
  }

  /** The words that the sound may as well have been, likeliest first. */
  List<String> rivals(Hypothesis utterance) {
    return utterance.evidence().stream()
        .flatMap(evidence -> evidence.rivals().stream())
        .filter(rival -> rival.margin() <= limits.rivalWithin())
        .map(Evidence.Rival::text)
        .toList();
  }

  /** The free wordings that fit the sound so much better that the phrases are in doubt. */
  Optional<String> better(Hypothesis utterance) {
    return utterance
        .otherwise()
        .filter(
            free ->
                utterance.evidence().stream()
                    .anyMatch(
                        phrases -> free.support() > phrases.support() + limits.freeBetterBy()))
        .map(FreeWording::text);
  }

  /** The free wordings that fit the sound well enough to be offered. */
  Optional<FreeWording> offered(Hypothesis utterance) {
    return freeWordings(utterance)
        .filter(this::fits)
        .filter(free -> free.fillerShare() <= limits.freeFiller())
        .filter(free -> free.known().size() >= limits.freeWords());
  }

  // Whatever it rests on, it waits for someone to confirm it.
  private static Decision inFreeWordings(
      FreeWording free, String reason, Function<List<String>, Interpretation> interpret) {
    Interpretation meaning = interpret.apply(texts(free.known()));
    List<Meaning> meanings =
        meaning.meanings().stream()
            .filter(Meaning.States.class::isInstance)
            .map(one -> ((Meaning.States) one).statement().withSource(Source.TAGGER))
            .<Meaning>map(statement -> new Meaning.States(statement, false))
            .toList();
    return new Decision(
        new Verdict(Outcome.UNSURE, reason),
        free.text(),
        free.known(),
        new Interpretation(
            meanings, meaning.uncovered(), meaning.spans(), false, meaning.dialogue()));
  }

  // By the meaning

  private static Decision byMeaning(Decision decision, boolean awaitsYesOrNo) {
    Verdict verdict = byMeaning(decision.verdict(), decision.interpretation(), awaitsYesOrNo);
    return new Decision(verdict, decision.text(), decision.words(), decision.interpretation());
  }

  private static Verdict byMeaning(Verdict verdict, Interpretation meaning, boolean awaitsYesOrNo) {
    if (verdict.outcome() == Outcome.IGNORED) {
      return verdict;
    }
    if (saysNothing(meaning, awaitsYesOrNo) && !meaning.withheld()) {
      return new Verdict(Outcome.IGNORED, "nothing that is recorded");
    }
    if (verdict.outcome() != Outcome.ACCEPTED) {
      return verdict;
    }
    if (!meaning.uncovered().isEmpty()) {
      return new Verdict(
          Outcome.UNSURE, "not understood: " + String.join(" ", meaning.uncovered()));
    }
    return meaning.meanings().stream().allMatch(Meaning.Instruction.class::isInstance)
        ? new Verdict(Outcome.COMMAND, verdict.reason())
        : verdict;
  }

  // A bare "yes" or "no" is no command where nothing was asked.
  private static boolean saysNothing(Interpretation meaning, boolean awaitsYesOrNo) {
    boolean answers = awaitsYesOrNo && !meaning.meanings().isEmpty();
    return !answers
        && meaning.meanings().stream()
            .allMatch(
                one ->
                    one instanceof Meaning.Instruction instruction
                        && (instruction.command() == Command.YES
                            || instruction.command() == Command.NO));
  }

  private static List<String> texts(List<Word> words) {
    return words.stream().map(Word::text).toList();
  }

  private static List<String> split(String text) {
    return text.isEmpty() ? List.of() : List.of(text.split(" "));
  }
}
