package tiptoe.session;

import com.fasterxml.jackson.annotation.JsonProperty;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.function.Predicate;
import tiptoe.files.Shipped;
import tiptoe.finding.Finding;
import tiptoe.finding.Quantity;
import tiptoe.language.Interpretation;
import tiptoe.language.Meaning;
import tiptoe.language.TypedText;
import tiptoe.protocol.Norm;
import tiptoe.protocol.Protocol;
import tiptoe.protocol.Step;
import tiptoe.speech.Hypothesis;
import tiptoe.speech.Word;

/**
 * How probable it is that what a sound seems to state was said: a logistic regression on the ways
 * in which the sound may be heard, calibrated on recordings; the numbers in use are in {@code
 * sureness.yaml}.
 *
 * @param heardFreely least share of the ways in free wordings from which on a statement counts as
 *     heard in them too
 * @param margin factor on the margins of the ways: neighbouring sounds are not independent
 * @param leftOver seconds of sound, as loud as the words, that no word accounts for, from which on
 *     nothing is sure
 * @param phrases weights for what phrases state
 * @param freely weights for what free wordings state
 */
record Sureness(
    @JsonProperty("heard-freely") double heardFreely,
    @JsonProperty("margin") double margin,
    @JsonProperty("left-over") double leftOver,
    @JsonProperty("phrases") Phrases phrases,
    @JsonProperty("freely") Freely freely) {
  /** From this share of the free wordings on, they are known to hold what was said beside. */
  private static final double KNOWN = 0.3;

  /** From this share of the free wordings on, they say something. */
  private static final double MOST = 0.5;

  /** From this share of the ways to hear phrases or free wordings on, these leave nothing open. */
  private static final double AGREED = 0.9;

  /** From this share of the free wordings on, they may say something else instead. */
  private static final double DISPUTED = 0.05;

  /** Support of free wordings for each second beyond which it tells no more. */
  private static final double LEAST_SUPPORT = -8;

  private static final double MOST_SUPPORT = 4;

  private static final Map<String, String> SOUNDS_LIKE = Map.of("can", "can't", "can't", "can");

  /**
   * Weights for what phrases state.
   *
   * @param recordFrom least probability with which a statement is recorded without a question
   * @param keyNormalFrom the same where it says that a step which must be stated for itself is
   *     normal: nobody looks again
   * @param headingFrom the same where a region is announced and nothing else was said: it decides
   *     what short answers belong to
   * @param base with every other feature 0
   * @param share of the ways to hear phrases, by likelihood, that state it
   * @param support of the phrases for each second of words
   * @param added where free wordings do not state it, but something else that was said beside it
   * @param nowhere where they state none of several things
   * @param single where they do not state it and nothing was said beside it; twice where they state
   *     something else in its place
   */
  record Phrases(
      @JsonProperty("record-from") double recordFrom,
      @JsonProperty("key-normal-from") double keyNormalFrom,
      @JsonProperty("heading-from") double headingFrom,
      @JsonProperty("base") double base,
      @JsonProperty("share") double share,
      @JsonProperty("support") double support,
      @JsonProperty("added") double added,
      @JsonProperty("nowhere") double nowhere,
      @JsonProperty("single") double single) {
    boolean isSure(Case one) {
      double[] of = one.features();
      double sum = share * of[0] + support * of[1] + added * of[2] + nowhere * of[3];
      double least =
          one.meaning() instanceof Meaning.Heading
              ? headingFrom
              : isKeyNormal(one.meaning()) ? keyNormalFrom : recordFrom;
      return logistic(base + sum + single * of[4]) >= least;
    }
  }

  /**
   * Weights for what free wordings state.
   *
   * @param recordFrom least probability with which a statement is recorded without a question
   * @param keyNormalFrom the same where it says that a step which must be stated for itself is
   *     normal: nobody looks again
   * @param likelyFrom from this probability on a statement is offered however badly any words fit
   *     the sound
   * @param leastShare of the ways to hear them that must state it with every word accounted for,
   *     parted as the speaker paused
   * @param otherNumber share of the ways to hear phrases from which on another number in its place
   *     leaves it unsure
   * @param base with every other feature 0
   * @param share of the ways to hear them, by likelihood, that surely state it, with pauses and
   *     without
   * @param support of the free wordings for each second of words, from -8 to 4
   * @param states share of the ways that state it at all
   * @param phrases share of the ways to hear phrases that state it
   */
  record Freely(
      @JsonProperty("record-from") double recordFrom,
      @JsonProperty("key-normal-from") double keyNormalFrom,
      @JsonProperty("likely-from") double likelyFrom,
      @JsonProperty("least-share") double leastShare,
      @JsonProperty("other-number") double otherNumber,
      @JsonProperty("base") double base,
      @JsonProperty("share") double share,
      @JsonProperty("support") double support,
      @JsonProperty("states") double states,
      @JsonProperty("phrases") double phrases) {
    Rating rating(Case one) {
      double[] of = one.features();
      double probability =
          logistic(base + share * of[0] + support * of[1] + states * of[2] + phrases * of[3]);
      return probability >= (isKeyNormal(one.meaning()) ? keyNormalFrom : recordFrom)
          ? Rating.SURE
          : probability >= likelyFrom ? Rating.LIKELY : Rating.OPEN;
    }
  }

  static Sureness shipped() {
    return Shipped.yaml(Sureness.class, "sureness.yaml", Sureness.class);
  }

  /**
   * What a statement says, without its details and how it was understood. A heading counts where it
   * stands alone: beside a finding, that says itself which region it belongs to.
   */
  private record Said(Object what, Object side, Object value) {
    /** Whether both cannot be so. */
    boolean contradicts(Said other) {
      return what.equals(other.what)
          && (side == null || other.side == null || side.equals(other.side))
          && !Objects.equals(value, other.value);
    }

    boolean isNumber() {
      return value instanceof Quantity || String.valueOf(value).matches("[0-9.+]+");
    }

    static List<Said> of(List<Meaning> meanings) {
      List<Said> said = new ArrayList<>();
      for (Meaning meaning : meanings) {
        if (meaning instanceof Meaning.States states) {
          Finding finding = states.statement();
          Object value = finding.value() == null ? finding.quantity() : finding.value();
          said.add(new Said(finding.step(), finding.side(), value));
        } else if (meaning instanceof Meaning.Fact fact) {
          said.add(new Said(fact.id(), null, fact.value()));
        } else if (meaning instanceof Meaning.Heading heading && meanings.size() == 1) {
          said.add(new Said(heading, null, null));
        }
      }
      return said;
    }
  }

  /**
   * One way to hear a sound.
   *
   * @param parted what it surely states, parted as the speaker paused
   * @param surely the same, where it is surely said without the pauses too
   * @param weight its likelihood
   */
  private record Way(List<Said> states, List<Said> parted, List<Said> surely, double weight) {}

  /**
   * A statement, and what speaks for it.
   *
   * @param features in the order of the weights, without their base
   */
  record Case(Meaning meaning, double[] features) {}

  /** Whether a statement that phrases make is sure enough to be recorded; what else is said is. */
  Predicate<Meaning> inPhrases(Hypothesis heard, Function<List<String>, Interpretation> interpret) {
    List<Case> cases = ofPhrases(heard, interpret);
    List<Way> free = freely(heard, interpret);
    boolean whole = heard.leftOver() < leftOver;
    return meaning ->
        heard.support().isEmpty()
            || whole && isAgreed(free, meaning)
            || cases.stream()
                .filter(one -> one.meaning().equals(meaning))
                .allMatch(one -> whole && phrases.isSure(one));
  }

  /**
   * Which other phrases count for nothing, however near in sound: where nearly all ways to hear
   * free wordings state all that the likeliest phrases do, and the likeliest of them nothing else.
   * Phrases are told apart by sound alone, free wordings by what people say too ({@code
   * models/README.md} has the counts). Other details of the same finding always count.
   */
  Predicate<String> settled(Hypothesis heard, Function<List<String>, Interpretation> interpret) {
    List<Meaning> meanings = interpret.apply(texts(heard)).meanings();
    List<Way> free = freely(heard, interpret);
    boolean agreed =
        !meanings.isEmpty()
            && !free.isEmpty()
            && Said.of(meanings).containsAll(free.get(0).states())
            && meanings.stream().allMatch(meaning -> isAgreed(free, meaning));
    return other ->
        agreed && !differsInDetail(meanings, interpret.apply(List.of(other.split(" "))).meanings());
  }

  private static boolean differsInDetail(List<Meaning> meanings, List<Meaning> others) {
    return meanings.stream()
        .anyMatch(
            one ->
                others.stream()
                    .anyMatch(
                        other ->
                            Said.of(List.of(one)).equals(Said.of(List.of(other)))
                                && !details(one).equals(details(other))));
  }

  private static Object details(Meaning meaning) {
    return meaning instanceof Meaning.States states ? states.statement().details() : List.of();
  }

  // A heading decides what short answers belong to, and where a key step is called normal nobody
  // looks again ("asymmetrical" heard as "symmetrical" in a cry): both have limits of their own.
  private static boolean isAgreed(List<Way> free, Meaning meaning) {
    List<Said> said = Said.of(List.of(meaning));
    return !said.isEmpty()
        && !(meaning instanceof Meaning.Heading)
        && !isKeyNormal(meaning)
        && said.stream()
            .allMatch(
                one ->
                    share(free, one) >= AGREED
                        && share(free, way -> way.states().stream().anyMatch(one::contradicts))
                            < DISPUTED);
  }

  private List<Way> freely(Hypothesis heard, Function<List<String>, Interpretation> interpret) {
    return heard.freely().map(other -> ways(other, other.parted(), interpret)).orElse(List.of());
  }

  /**
   * Whether free wordings of the same sound state what phrases do, or may: what they do not state
   * was hardly ever said where the phrases fit badly too. True where nothing was heard in them.
   */
  Predicate<Meaning> borneOut(Hypothesis heard, Function<List<String>, Interpretation> interpret) {
    if (heard.freely().isEmpty()) {
      return meaning -> true;
    }
    List<Case> cases = ofPhrases(heard, interpret);
    return meaning ->
        cases.stream()
            .filter(one -> one.meaning().equals(meaning))
            .noneMatch(one -> one.features()[2] + one.features()[3] + one.features()[4] > 0);
  }

  /** What the likeliest phrases state. */
  List<Case> ofPhrases(Hypothesis heard, Function<List<String>, Interpretation> interpret) {
    List<String> words = texts(heard);
    List<Meaning> meanings = interpret.apply(words).meanings();
    List<Said> all = Said.of(meanings);
    if (all.isEmpty()) {
      return List.of();
    }
    List<Way> strict = ways(heard, words, interpret);
    List<Way> free = freely(heard, interpret);
    double support = heard.support().orElse(0) / Math.max(0.3, heard.spokenSeconds());
    boolean awaited = meanings.stream().anyMatch(Meaning.Answers.class::isInstance);
    List<Case> cases = new ArrayList<>();
    for (Meaning meaning : meanings) {
      for (Said said : Said.of(List.of(meaning))) {
        List<Said> beside =
            all.stream().filter(other -> !Objects.equals(other.what(), said.what())).toList();
        if (!all.contains(said)) {
          continue; // a heading beside a finding
        }
        boolean contradicted = isContradicted(free, said);
        // A bare answer is what was asked for; free wordings know no question, only sentences.
        boolean missing = share(free, said) < heardFreely && (!awaited || contradicted);
        boolean known = beside.stream().anyMatch(other -> share(free, other) > KNOWN);
        cases.add(
            new Case(
                meaning,
                new double[] {
                  share(strict, said),
                  support,
                  missing && known ? 1 : 0,
                  missing && !beside.isEmpty() && !known ? 1 : 0,
                  missing && beside.isEmpty() ? contradicted ? 2 : 1 : 0
                }));
      }
    }
    return cases;
  }

  private static boolean isContradicted(List<Way> free, Said said) {
    return share(free, way -> way.states().stream().anyMatch(said::contradicts)) >= MOST;
  }

  /** How sure something is that was heard. */
  enum Rating {
    /** Enough to count. */
    SURE,
    LIKELY,
    OPEN;

    Rating atMost(Rating other) {
      return compareTo(other) > 0 ? this : other;
    }
  }

  /**
   * What free wordings say of findings and of the baby, and how sure it is. Facts that most of the
   * ways do not state are left out.
   *
   * @param fits whether the phrases fit the sound too: then they must say the same
   */
  Map<Meaning, Rating> inFreeWordings(
      Hypothesis heard,
      Hypothesis free,
      boolean fits,
      Function<List<String>, Interpretation> interpret) {
    List<Case> cases = ofFreeWordings(heard, free, interpret);
    boolean whole = heard.leftOver() < leftOver;
    Map<Meaning, Rating> all = new LinkedHashMap<>();
    for (Meaning meaning : interpret.apply(free.parted()).meanings()) {
      Optional<Case> found =
          cases.stream().filter(one -> one.meaning().equals(meaning)).findFirst();
      Rating rating = found.map(freely::rating).orElse(Rating.OPEN);
      boolean agreed = !fits || found.map(one -> one.features()[3] >= AGREED).orElse(false);
      if (meaning instanceof Meaning.States
          || meaning instanceof Meaning.Fact && isMostlyStated(free, meaning, interpret)) {
        all.put(meaning, !agreed ? Rating.OPEN : whole ? rating : rating.atMost(Rating.LIKELY));
      }
    }
    return all;
  }

  private boolean isMostlyStated(
      Hypothesis free, Meaning meaning, Function<List<String>, Interpretation> interpret) {
    List<Way> ways = ways(free, free.parted(), interpret);
    return Said.of(List.of(meaning)).stream()
        .allMatch(said -> share(ways, said) >= freely.leastShare());
  }

  /** What most ways to hear free wordings state with every word accounted for. */
  List<Case> ofFreeWordings(
      Hypothesis heard, Hypothesis free, Function<List<String>, Interpretation> interpret) {
    List<Meaning> meanings =
        interpret.apply(free.parted()).meanings().stream()
            .filter(one -> one instanceof Meaning.States || one instanceof Meaning.Fact)
            .toList();
    if (meanings.isEmpty()) {
      return List.of(); // as most talk: its other ways need not be read
    }
    List<Way> ways = ways(free, free.parted(), interpret);
    List<Way> phrased = null;
    double support = free.support().orElse(0) / Math.max(0.1, free.spokenSeconds());
    List<Case> cases = new ArrayList<>();
    for (Meaning meaning : meanings) {
      Said said = Said.of(List.of(meaning)).get(0);
      if (share(ways, way -> way.parted().contains(said)) < freely.leastShare()) {
        continue;
      }
      phrased = phrased == null ? ways(heard, texts(heard), interpret) : phrased;
      double other = share(phrased, way -> way.states().stream().anyMatch(said::contradicts));
      if (!said.isNumber() || other < freely.otherNumber()) {
        cases.add(
            new Case(
                meaning,
                new double[] {
                  share(ways, way -> way.surely().contains(said)),
                  Math.max(LEAST_SUPPORT, Math.min(MOST_SUPPORT, support)),
                  share(ways, said),
                  share(phrased, said)
                }));
      }
    }
    return cases;
  }

  // How a step that a ward adds is heard, nobody measured: it is held to the strictest.
  private static boolean isKeyNormal(Meaning meaning) {
    return isNormal(meaning)
        && Protocol.standard()
            .find(((Meaning.States) meaning).statement().step())
            .map(Step::key)
            .orElse(true);
  }

  /** Whether something is said to be as it should be, or may be. */
  static boolean isNormal(Meaning meaning) {
    if (!(meaning instanceof Meaning.States said)) {
      return false;
    }
    return Protocol.standard()
        .find(said.statement().step())
        .map(step -> step.value(String.valueOf(said.statement().value())))
        .map(value -> value.filter(one -> one.norm() == Norm.NORMAL).isPresent())
        .orElse(true);
  }

  private List<Way> ways(
      Hypothesis heard, List<String> likeliest, Function<List<String>, Interpretation> interpret) {
    List<Way> ways = new ArrayList<>();
    add(ways, likeliest, 0, interpret);
    for (Hypothesis.Rival rival : heard.rivals()) {
      List<String> words = rival.text().isEmpty() ? List.of() : List.of(rival.text().split(" "));
      add(ways, words, rival.margin(), interpret);
    }
    return ways;
  }

  // Before "feel" or "see" the t of "can't" is not heard: what differs by it is never sure.
  private void add(
      List<Way> ways,
      List<String> words,
      double behind,
      Function<List<String>, Interpretation> interpret) {
    ways.add(way(words, behind, interpret));
    if (words.stream().anyMatch(SOUNDS_LIKE::containsKey)) {
      List<String> other =
          words.stream().map(word -> SOUNDS_LIKE.getOrDefault(word, word)).toList();
      ways.add(way(other, behind, interpret));
    }
  }

  /**
   * A pause most often parts what is said as a comma does, but not always: what is surely said must
   * be said without it too.
   */
  private Way way(
      List<String> words, double behind, Function<List<String>, Interpretation> interpret) {
    Interpretation meaning = interpret.apply(words);
    Set<Said> states = new LinkedHashSet<>(Said.of(meaning.meanings()));
    List<Said> parted = surely(meaning);
    List<Said> surely = new ArrayList<>(parted);
    if (words.contains(Hypothesis.PAUSE)) {
      List<Said> unparted = Said.of(interpret.apply(TypedText.plain(words)).meanings());
      states.addAll(unparted);
      surely.retainAll(unparted);
    }
    return new Way(List.copyOf(states), parted, surely, Math.exp(-margin * behind));
  }

  private static List<Said> surely(Interpretation meaning) {
    return meaning.withheld()
        ? List.of()
        : Said.of(
            meaning.howSure().stream()
                .filter(Interpretation.Certainty::sure)
                .map(Interpretation.Certainty::meaning)
                .toList());
  }

  private static double share(List<Way> ways, Said said) {
    return share(ways, way -> way.states().contains(said));
  }

  private static double share(List<Way> ways, Predicate<Way> holds) {
    double all = ways.stream().mapToDouble(Way::weight).sum();
    return all == 0 ? 0 : ways.stream().filter(holds).mapToDouble(Way::weight).sum() / all;
  }

  private static double logistic(double sum) {
    return 1 / (1 + Math.exp(-sum));
  }

  private static List<String> texts(Hypothesis heard) {
    return heard.phraseWords().stream().map(Word::text).toList();
  }
}
