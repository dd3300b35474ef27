package tiptoe.session;

import java.util.List;
import java.util.Optional;
import tiptoe.finding.Outcome;
import tiptoe.speech.Evidence;
import tiptoe.speech.FreeWording;
import tiptoe.speech.Hypothesis;
import tiptoe.speech.Verdict;

/**
 * Decides whether an utterance may be recorded. Each check looks at one kind of evidence, and the
 * most doubtful of them decides: a false entry is worse than a missed one.
 */
public final class LikelihoodVerifier {

  /** One kind of evidence. */
  @FunctionalInterface
  private interface Check {
    /** The verdict as far as this evidence goes. */
    Verdict judge(Hypothesis utterance);
  }

  private static final String OTHER_SPEECH = "sounds like other speech";

  private final VerifierLimits limits;
  private final List<Check> checks;

  /** The checks, in the order in which their reasons are preferred. */
  public LikelihoodVerifier(VerifierLimits limits) {
    this.limits = limits;
    checks = List.of(LikelihoodVerifier::byFiller, this::bySupport);
  }

  /** With the limits in use. */
  public static LikelihoodVerifier standard() {
    return new LikelihoodVerifier(VerifierLimits.shipped());
  }

  /**
   * The words that the sound may as well have been, likeliest first. Where they mean something
   * else, the utterance must not be accepted; that only a later stage can tell.
   */
  public List<String> rivals(Hypothesis utterance) {
    return utterance.evidence().stream()
        .flatMap(evidence -> evidence.rivals().stream())
        .filter(rival -> rival.margin() <= limits.rivalWithin())
        .map(Evidence.Rival::text)
        .toList();
  }

  /** The free wordings of an utterance, where they fit its sound well enough to be read. */
  public Optional<FreeWording> freely(Hypothesis utterance) {
    return ownWordings(utterance)
        .filter(other -> other.support() >= limits.freeFrom() * other.seconds())
        .filter(other -> other.fillerShare() <= limits.freeFiller())
        .filter(other -> other.known().size() >= limits.freeWords());
  }

  /**
   * The free wordings that fit the sound of phrases so much better that the phrases are in doubt,
   * if they mean something else.
   */
  public Optional<String> better(Hypothesis utterance) {
    return utterance
        .otherwise()
        .filter(
            other ->
                utterance.evidence().stream()
                    .anyMatch(
                        phrases -> other.support() > phrases.support() + limits.freeBetterBy()))
        .map(FreeWording::text);
  }

  public Verdict decide(Hypothesis utterance) {
    Verdict worst = Verdict.ACCEPTED;
    for (Check check : checks) {
      Verdict verdict = check.judge(utterance);
      if (verdict.outcome().compareTo(worst.outcome()) > 0) {
        worst = verdict;
      }
    }
    return worst.outcome() == Outcome.UNSURE && isOtherSpeech(utterance)
        ? new Verdict(Outcome.IGNORED, OTHER_SPEECH)
        : worst;
  }

  /**
   * Where not even free wordings fit what is said beside a phrase, the examination is not what is
   * being talked about.
   */
  private boolean isOtherSpeech(Hypothesis utterance) {
    return utterance.hasFiller()
        && ownWordings(utterance)
            .map(other -> other.support() < limits.freeFrom() * other.seconds())
            .orElse(false);
  }

  /** Free wordings that count for themselves: a word or two may be anything. */
  private Optional<FreeWording> ownWordings(Hypothesis utterance) {
    return utterance
        .otherwise()
        .filter(other -> utterance.end() - utterance.start() >= limits.freeSeconds());
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
    boolean contested = !utterance.hasFiller() && ownWordings(utterance).isPresent();
    if (support >= (contested ? limits.contestedFrom() : limits.acceptedFrom())) {
      return Verdict.ACCEPTED;
    }
    return support < limits.unsureFrom()
        ? new Verdict(Outcome.IGNORED, OTHER_SPEECH)
        : new Verdict(Outcome.UNSURE, "does not sound much like the phrase");
  }
}
