package tiptoe.session;

import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import tiptoe.finding.Command;
import tiptoe.finding.Outcome;
import tiptoe.finding.Source;
import tiptoe.language.Interpretation;
import tiptoe.language.Meaning;
import tiptoe.session.Sureness.Rating;
import tiptoe.speech.Hypothesis;
import tiptoe.speech.Word;

/**
 * Decides whether an utterance is recorded, offered for confirmation or left alone. How well its
 * words fit the sound decides first, then what else may have been said, then what the words mean;
 * the most doubtful of these holds: a false entry is worse than a missed one.
 */
public final class UtteranceVerifier {
  private static final String OTHER_SPEECH = "sounds like other speech";

  private static final String NOT_SURE = "not sure enough";

  private final VerifierLimits limits;
  private final Optional<Sureness> sureness;

  /** By limits alone: what they let pass is sure, and nothing in free wordings is. */
  UtteranceVerifier(VerifierLimits limits) {
    this(limits, Optional.empty());
  }

  private UtteranceVerifier(VerifierLimits limits, Optional<Sureness> sureness) {
    this.limits = limits;
    this.sureness = sureness;
  }

  /** With the limits in use. */
  public static UtteranceVerifier standard() {
    return new UtteranceVerifier(VerifierLimits.shipped(), Optional.of(Sureness.shipped()));
  }

  /**
   * What becomes of an utterance.
   *
   * @param reason why it was not accepted, for the reviewer; empty when it was
   * @param words the words that are taken: those of phrases, or of free wordings where these are
   *     offered instead; empty where it was typed
   * @param interpretation what they mean
   * @param beside what the same words also seem to say, less surely; empty where there is nothing
   */
  public record Decision(
      Outcome outcome,
      String reason,
      List<Word> words,
      Interpretation interpretation,
      Optional<Decision> beside) {
    public Decision {
      words = List.copyOf(words);
    }

    private Decision(
        Outcome outcome, String reason, List<Word> words, Interpretation interpretation) {
      this(outcome, reason, words, interpretation, Optional.empty());
    }

    /** The words that are taken, as one text. */
    public String text() {
      return words.stream().map(Word::text).collect(Collectors.joining(" "));
    }

    private Decision with(Outcome newOutcome, String newReason) {
      return new Decision(newOutcome, newReason, words, interpretation);
    }

    private Decision only(Predicate<Meaning> these) {
      return new Decision(outcome, reason, words, interpretation.only(these));
    }

    private boolean isAccepted() {
      return outcome == Outcome.ACCEPTED;
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
    // The same words are looked at from several sides.
    Map<List<String>, Interpretation> read = new HashMap<>();
    return decided(utterance, words -> read.computeIfAbsent(words, interpret), awaitsYesOrNo);
  }

  private Decision decided(
      Hypothesis utterance,
      Function<List<String>, Interpretation> interpret,
      boolean awaitsYesOrNo) {
    Interpretation said = interpret.apply(texts(utterance.phraseWords()));
    Decision fit =
        byEvidence(utterance, new Decision(Outcome.ACCEPTED, "", utterance.phraseWords(), said));
    Optional<String> rival =
        fit.isAccepted() ? otherMeaning(utterance, said, interpret) : Optional.empty();
    Decision asPhrases =
        rival.map(other -> fit.with(Outcome.UNSURE, "may also be: " + other)).orElse(fit);
    if (asPhrases.isAccepted()) {
      Decision decision = byMeaning(asPhrases, awaitsYesOrNo);
      return decision.isAccepted()
          ? sureness
              .map(
                  sure ->
                      parted(
                          decision,
                          sure.inPhrases(utterance, interpret),
                          doubt(utterance, said, interpret)))
              .orElse(decision)
          : decision;
    }
    Map<Meaning, Rating> free =
        sureness
            .flatMap(
                sure -> utterance.freely().map(one -> rated(sure, utterance, one, fit, interpret)))
            .orElse(Map.of());
    if (free.containsValue(Rating.SURE)) {
      return sureFreely(utterance, free, interpret);
    }
    return byMeaning(
        offered(utterance)
            .map(one -> inFreeWordings(one, free, otherwise(fit, rival, one), interpret))
            .filter(
                one ->
                    one.interpretation().meanings().stream().anyMatch(UtteranceVerifier::isStated))
            .or(() -> likely(utterance, free, interpret))
            .orElseGet(() -> fit.isAccepted() ? asPhrases : borneOut(fit, utterance, interpret)),
        awaitsYesOrNo);
  }

  /**
   * What is left of phrases that fit badly, once what free wordings do not state is left out: it
   * was hardly ever said, in talk and reading never ({@code models/README.md} has the counts).
   */
  private Decision borneOut(
      Decision phrases, Hypothesis utterance, Function<List<String>, Interpretation> interpret) {
    List<Meaning> meanings = phrases.interpretation().meanings();
    if (phrases.outcome() != Outcome.UNSURE || sureness.isEmpty() || meanings.isEmpty()) {
      return phrases;
    }
    Predicate<Meaning> heeded = sureness.get().borneOut(utterance, interpret);
    return meanings.stream().anyMatch(heeded)
        ? phrases.only(heeded)
        : phrases.with(Outcome.IGNORED, "phrases that nothing else bears out");
  }

  /** Why free wordings are only offered: what else may have been said, not these words again. */
  private static String otherwise(Decision fit, Optional<String> rival, Hypothesis free) {
    return !fit.isAccepted()
        ? "heard in free wordings"
        : "may also be: " + rival.filter(other -> !other.equals(free.text())).orElse(fit.text());
  }

  /**
   * Decides about words that were surely said, such as typed ones: by what they mean alone.
   *
   * @param awaitsYesOrNo whether a question is open that yes or no answers
   */
  public Decision decide(Interpretation meaning, boolean awaitsYesOrNo) {
    return byMeaning(new Decision(Outcome.ACCEPTED, "", List.of(), meaning), awaitsYesOrNo);
  }

  // By how sure each statement is

  /** What is sure counts, what is not is offered beside it. */
  private static Decision parted(Decision decision, Predicate<Meaning> sure, String doubt) {
    Interpretation meaning = decision.interpretation();
    if (meaning.meanings().stream().allMatch(sure)) {
      return decision;
    }
    boolean divides =
        meaning.meanings().stream().allMatch(UtteranceVerifier::isStated)
            && meaning.meanings().stream().anyMatch(sure);
    if (!divides) {
      return decision.with(Outcome.UNSURE, doubt);
    }
    Decision left =
        new Decision(Outcome.UNSURE, doubt, decision.words(), meaning.only(sure.negate()));
    return new Decision(
        Outcome.ACCEPTED, "", decision.words(), meaning.only(sure), Optional.of(left));
  }

  /** Names the likeliest words of another meaning, so that a question can hold both. */
  private static String doubt(
      Hypothesis utterance, Interpretation said, Function<List<String>, Interpretation> interpret) {
    return Stream.concat(
            utterance.rivals().stream().map(Hypothesis.Rival::text),
            utterance.freely().map(Hypothesis::text).stream())
        .filter(other -> !other.isEmpty())
        .filter(other -> !interpret.apply(split(other)).meanings().equals(said.meanings()))
        .findFirst()
        .map(other -> "may also be: " + other)
        .orElse(NOT_SURE);
  }

  /** What free wordings say, unless it moves to the other side beside what it was to replace. */
  private static Map<Meaning, Rating> rated(
      Sureness sure,
      Hypothesis utterance,
      Hypothesis free,
      Decision fit,
      Function<List<String>, Interpretation> interpret) {
    boolean moves =
        Stream.of(free.parted(), texts(free.phraseWords()))
            .anyMatch(
                words -> interpret.apply(words).of(Meaning.Withdraws.class).findAny().isPresent());
    return moves ? Map.of() : sure.inFreeWordings(utterance, free, fit.isAccepted(), interpret);
  }

  private static Decision sureFreely(
      Hypothesis utterance,
      Map<Meaning, Rating> rated,
      Function<List<String>, Interpretation> interpret) {
    Decision all = inFreeWordings(utterance, rated.keySet(), interpret);
    return parted(all, meaning -> rated.get(meaning) == Rating.SURE, NOT_SURE);
  }

  /** What is likely however badly any words fit; empty where nothing is. */
  private static Optional<Decision> likely(
      Hypothesis utterance,
      Map<Meaning, Rating> rated,
      Function<List<String>, Interpretation> interpret) {
    return rated.containsValue(Rating.LIKELY)
        ? Optional.of(
            inFreeWordings(utterance, rated.keySet(), interpret)
                .only(meaning -> rated.get(meaning) == Rating.LIKELY)
                .with(Outcome.UNSURE, NOT_SURE))
        : Optional.empty();
  }

  private static Decision inFreeWordings(
      Hypothesis utterance,
      Collection<Meaning> meanings,
      Function<List<String>, Interpretation> interpret) {
    Hypothesis free = utterance.freely().orElseThrow();
    Interpretation all = interpret.apply(free.parted());
    return new Decision(
        Outcome.ACCEPTED,
        "",
        free.phraseWords(),
        new Interpretation(List.copyOf(meanings), List.of(), all.spans(), false, all.dialogue()));
  }

  // By the sound

  private Decision byEvidence(Hypothesis utterance, Decision said) {
    Decision filler = byFiller(utterance, said);
    Decision support = bySupport(utterance, said);
    Decision worse = support.outcome().compareTo(filler.outcome()) > 0 ? support : filler;
    return worse.outcome() == Outcome.UNSURE && isOtherSpeech(utterance)
        ? said.with(Outcome.IGNORED, OTHER_SPEECH)
        : worse;
  }

  /**
   * Speech that is no phrase, next to a phrase, is most often a conversation; where it takes up
   * more time than the phrase, the phrase is a chance likeness in it.
   */
  private static Decision byFiller(Hypothesis utterance, Decision said) {
    if (!utterance.hasPhrase()) {
      return said.with(Outcome.IGNORED, "no phrase of the examination");
    }
    if (!utterance.hasFiller()) {
      return said;
    }
    return utterance.isMostlyFiller()
        ? said.with(Outcome.IGNORED, "mostly other speech")
        : said.with(Outcome.UNSURE, "other speech beside the phrase");
  }

  /**
   * How well the phrases fit the sound, where it was heard twice. Where any other words could have
   * fitted better and did not, phrases may fit less well: noise spoils the fit of all words.
   */
  private Decision bySupport(Hypothesis utterance, Decision said) {
    if (utterance.support().isEmpty()) {
      return said;
    }
    double support = utterance.support().getAsDouble();
    boolean contested = !utterance.hasFiller() && freeWordings(utterance).isPresent();
    if (support >= (contested ? limits.contestedFrom() : limits.acceptedFrom())) {
      return said;
    }
    return support < limits.unsureFrom()
        ? said.with(Outcome.IGNORED, OTHER_SPEECH)
        : said.with(Outcome.UNSURE, "does not sound much like the phrase");
  }

  /**
   * Where not even free wordings fit what is said beside a phrase, the examination is not what is
   * being talked about.
   */
  private boolean isOtherSpeech(Hypothesis utterance) {
    return utterance.hasFiller() && freeWordings(utterance).map(free -> !fits(free)).orElse(false);
  }

  private boolean fits(Hypothesis free) {
    return free.support().getAsDouble() >= limits.freeFrom() * free.spokenSeconds();
  }

  /** Free wordings that count for themselves: a word or two may be anything. */
  private Optional<Hypothesis> freeWordings(Hypothesis utterance) {
    return utterance
        .freely()
        .filter(free -> utterance.end() - utterance.start() >= limits.freeSeconds());
  }

  // By what else may have been said

  /** The first words that the sound may as well have been and that mean something else. */
  private Optional<String> otherMeaning(
      Hypothesis utterance, Interpretation said, Function<List<String>, Interpretation> interpret) {
    List<String> others =
        Stream.concat(rivals(utterance).stream(), better(utterance).stream())
            .filter(rival -> !interpret.apply(split(rival)).meanings().equals(said.meanings()))
            .toList();
    Predicate<String> settled =
        others.isEmpty()
            ? other -> false
            : sureness.map(sure -> sure.settled(utterance, interpret)).orElse(other -> false);
    return others.stream()
        .filter(settled.negate())
        .findFirst()
        .map(rival -> rival.isEmpty() ? "other speech" : rival);
  }

  /** The words that the sound may as well have been, likeliest first. */
  List<String> rivals(Hypothesis utterance) {
    return utterance.rivals().stream()
        .filter(rival -> rival.margin() <= limits.rivalWithin())
        .map(Hypothesis.Rival::text)
        .toList();
  }

  /** The free wordings that fit the sound so much better that the phrases are in doubt. */
  Optional<String> better(Hypothesis utterance) {
    return utterance
        .freely()
        .filter(free -> utterance.support().isPresent())
        .filter(
            free ->
                free.support().getAsDouble()
                    > utterance.support().getAsDouble() + limits.freeBetterBy())
        .map(Hypothesis::text);
  }

  /** The free wordings that fit the sound well enough to be offered. */
  Optional<Hypothesis> offered(Hypothesis utterance) {
    return freeWordings(utterance)
        .filter(this::fits)
        .filter(free -> free.fillerShare() <= limits.freeFiller())
        .filter(free -> free.phraseWords().size() >= limits.freeWords());
  }

  // Whatever it rests on, it waits for someone to confirm it.
  private static Decision inFreeWordings(
      Hypothesis free,
      Map<Meaning, Rating> rated,
      String reason,
      Function<List<String>, Interpretation> interpret) {
    Interpretation meaning = interpret.apply(free.parted());
    if (isReadBack(meaning)) {
      return new Decision(Outcome.ACCEPTED, "", free.phraseWords(), meaning);
    }
    Stream<Meaning> offered =
        meaning.statements().stream()
            .map(statement -> statement.withSource(Source.TAGGER))
            .map(statement -> new Meaning.States(statement, false));
    Stream<Meaning.Fact> facts = meaning.of(Meaning.Fact.class).filter(rated::containsKey);
    List<Meaning> meanings =
        Stream.of(meaning.of(Meaning.Withdraws.class), offered, facts)
            .<Meaning>flatMap(one -> one)
            .toList();
    return new Decision(
        Outcome.UNSURE,
        reason,
        free.phraseWords(),
        new Interpretation(
            meanings, meaning.uncovered(), meaning.spans(), false, meaning.dialogue()));
  }

  private static boolean isStated(Meaning meaning) {
    return meaning instanceof Meaning.States || meaning instanceof Meaning.Fact;
  }

  /** Whether it only asks whether a fact about the baby was heard right. */
  private static boolean isReadBack(Interpretation meaning) {
    return meaning.uncovered().isEmpty()
        && !meaning.meanings().isEmpty()
        && meaning.meanings().stream()
            .allMatch(one -> one instanceof Meaning.Fact fact && fact.doubtful());
  }

  // By the meaning

  private static Decision byMeaning(Decision decision, boolean awaitsYesOrNo) {
    Interpretation meaning = decision.interpretation();
    if (decision.outcome() == Outcome.IGNORED) {
      return decision;
    }
    if (saysNothing(meaning, awaitsYesOrNo) && !meaning.withheld()) {
      return decision.with(
          Outcome.IGNORED, meaning.talk() > 0 ? "sounds like talk" : "nothing that is recorded");
    }
    if (!decision.isAccepted()) {
      return decision;
    }
    if (!meaning.uncovered().isEmpty()) {
      return decision.with(
          Outcome.UNSURE, "not understood: " + String.join(" ", meaning.uncovered()));
    }
    Optional<String> assumed =
        meaning.certainties().stream()
            .filter(one -> !one.sure())
            .map(Interpretation.Certainty::why)
            .findFirst();
    if (assumed.isPresent()) {
      return decision.with(Outcome.UNSURE, "if this is meant: " + assumed.get());
    }
    return meaning.meanings().stream()
            .allMatch(one -> one instanceof Meaning.Instruction || one instanceof Meaning.Picks)
        ? decision.with(Outcome.COMMAND, decision.reason())
        : decision;
  }

  // A bare "yes" or "no" is no command where nothing was asked.
  private static boolean saysNothing(Interpretation meaning, boolean awaitsYesOrNo) {
    boolean answers = awaitsYesOrNo && !meaning.meanings().isEmpty();
    return !answers
        && meaning.meanings().stream()
            .allMatch(
                one ->
                    one instanceof Meaning.Picks
                        || one instanceof Meaning.Instruction instruction
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
