package tiptoe.language.tagger;

import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Stream;
import tiptoe.language.SecondReading.Claim;
import tiptoe.language.TypedText;
import tiptoe.protocol.Protocol;

/**
 * The words beside a claim, and whether they leave it what it is: what no likelihood lets be
 * recorded.
 */
final class Bystanders {
  /** With fewer words a stretch says nothing of its own: "not really", "says your mum". */
  private static final int OF_ITS_OWN = 4;

  private final SentenceItems sentence;
  private final Protocol protocol;
  private final List<String> words;
  private final Breaks breaks;
  private final Set<Integer> suspected;
  private final Set<Integer> open;
  private final List<Claim> kept;
  private final List<Claim> read;

  Bystanders(Claimed claimed) {
    this.sentence = claimed.sentence();
    this.protocol = sentence.protocol();
    this.words = sentence.words();
    this.breaks = sentence.breaks();
    this.suspected = claimed.suspected();
    this.open = claimed.open();
    this.kept = claimed.kept();
    this.read = claimed.read();
  }

  /**
   * Whether a claim may be recorded although words beside it are open: where nothing that may
   * change it denies, doubts, puts right or names another side, nobody else is spoken of before it,
   * and no word that nobody knows stands with what is normal between the same breaks. What is said
   * behind it in a stretch of its own is of something else. What is normal must be named, or told
   * in more than a word: "straight", "open" and "clear" are said of anything.
   *
   * @param near the words that may change it
   * @param doubting words that are known to make a doubt of it, wherever they stand
   * @param held whether the rules let it go, so that its own words are open for that alone
   */
  boolean leaveAlone(Claim claim, Set<Integer> near, Set<Integer> doubting, boolean held) {
    return !words.contains(TypedText.ASKS)
        && !isRivalled(claim)
        && !isSupposed(claim)
        && (!sentence.isNormal(claim) || isNamed(claim))
        && doubting.stream().noneMatch(open::contains)
        && sentence.items().stream().noneMatch(item -> unsettles(item, claim, near, held));
  }

  /**
   * Whether the sentence asks, or a doubt, a plan or another person stands among the words of a
   * claim or between its breaks.
   */
  boolean doubt(Claim claim) {
    return words.contains(TypedText.ASKS)
        || sentence.items().stream()
            .filter(
                item ->
                    item.kind() == WordItem.Kind.DOUBT
                        || item.kind() == WordItem.Kind.PLAN
                        || item.kind() == WordItem.Kind.FOREIGN)
            .anyMatch(item -> isWith(item, claim));
  }

  private boolean isRivalled(Claim claim) {
    return read.stream()
        .filter(other -> other.step().equals(claim.step()))
        .filter(other -> !Objects.equals(other.value(), claim.value()))
        .filter(
            other -> other.side() == null || claim.side() == null || other.side() == claim.side())
        .anyMatch(
            other ->
                claim.value() == null
                    || other.value() == null
                    || !protocol.step(claim.step()).allows(claim.value(), other.value()));
  }

  private boolean isSupposed(Claim claim) {
    int from = 0;
    while (from < words.size()) {
      int to = breaks.to(from);
      List<String> stretch = words.subList(from, to);
      boolean reaches = from <= claim.last() || stretch.size() < OF_ITS_OWN;
      if (reaches
          && Stream.of("supposes", "hypothetical")
              .anyMatch(list -> sentence.lexicon().says(list, stretch))) {
        return true;
      }
      from = to + 1;
    }
    return false;
  }

  private boolean isNamed(Claim claim) {
    return sentence.items().stream()
        .filter(item -> claim.evidence().contains(item.from()))
        .anyMatch(
            item ->
                item.kind() == WordItem.Kind.PART
                        && item.match().steps(Sense.Kind.PART).contains(claim.step())
                    || item.kind() == WordItem.Kind.FINDING
                        && item.match().words() > 1
                        && item.match().senses().stream()
                            .anyMatch(
                                sense -> claim.step().equals(sense.step()) && !sense.bound()));
  }

  private boolean unsettles(WordItem item, Claim claim, Set<Integer> near, boolean held) {
    if (item.kind() == WordItem.Kind.CORRECTION) {
      return true;
    }
    boolean own = claim.evidence().contains(item.from());
    boolean here = isWith(item, claim);
    if (item.kind() == WordItem.Kind.SIDE && here && !own && claim.side() != null) {
      return !item.sides().contains(claim.side());
    }
    if (own && held || item.places().stream().noneMatch(open::contains)) {
      return false;
    }
    boolean reaches = item.places().stream().anyMatch(near::contains);
    boolean apart = isApart(item, claim);
    return switch (item.kind()) {
      case PART -> own || here && !sentence.isNormal(claim) && isNear(item, claim);
      case FINDING, NUMBER, DESCRIPTION -> own;
      case SIDE -> reaches;
      case FOREIGN, PLAN ->
          !apart && !isInTheRoom(item) && (reaches || here || item.from() < claim.first());
      case CONCERN -> sentence.isNormal(claim) && !apart;
      case UNKNOWN ->
          sentence.isNormal(claim)
                  && (here && !isBehind(item, claim) || reaches && !apart && limits(item))
              || reaches && !apart && isOfBothSides(claim);
      // "Frenulum a little tight, not": it may be the claim that it denies.
      default -> reaches && !(apart && isOfNothing(item));
    };
  }

  // "Palate intact, and I'll tell mum so in a minute": another matter.
  private boolean isApart(WordItem item, Claim claim) {
    return item.from() > claim.last()
        && !isWith(item, claim)
        && breaks.to(item.from()) - breaks.from(item.from()) >= OF_ITS_OWN;
  }

  private boolean isOfNothing(WordItem word) {
    return sentence.items(breaks.from(word.from()), breaks.to(word.from())).stream()
        .filter(item -> item.kind() == WordItem.Kind.FINDING)
        .noneMatch(item -> item.places().stream().anyMatch(open::contains));
  }

  // "Spine straight all down his mirror": a word that everybody says and nobody finds on a baby.
  private boolean isBehind(WordItem item, Claim claim) {
    return item.from() > claim.last()
        && !protocol.step(claim.step()).key()
        && sentence.said(item).stream().allMatch(sentence.lexicon()::isEveryday)
        && item.places().stream().noneMatch(suspected::contains)
        && sentence.items(claim.last() + 1, item.from()).stream()
            .noneMatch(one -> one.kind() == WordItem.Kind.TURN || one.kind() == WordItem.Kind.NOT);
  }

  // "And mum can see that for herself": nobody has it who does not have, say or do something.
  private boolean isInTheRoom(WordItem person) {
    return sentence.lexicon().isListed("address", sentence.said(person))
        && (breaks.at(person.to())
            || Stream.of("speaks", "has-reported", "had-before", "reports")
                .noneMatch(list -> sentence.isListed(list, person.to())));
  }

  // "Right hip doesn't go out on Barlow": of which of the two it is said nobody knows.
  private boolean isNear(WordItem part, Claim claim) {
    String region = protocol.step(claim.step()).region();
    return part.match().steps(Sense.Kind.PART).stream()
        .anyMatch(step -> protocol.step(step).region().equals(region));
  }

  // "Tone normal, a bit off", "palate intact, with persuasion only"
  private boolean limits(WordItem item) {
    List<String> stretch = words.subList(breaks.from(item.from()), breaks.to(item.from()));
    return Stream.of("severity", "how-much", "limits")
        .anyMatch(list -> sentence.lexicon().says(list, stretch));
  }

  // "Weak on the right, oh bother, weak on the left": a word that nobody knows may put it right.
  private boolean isOfBothSides(Claim claim) {
    return claim.side() != null
        && kept.stream()
            .filter(other -> other.step().equals(claim.step()))
            .anyMatch(other -> other.side() == claim.side().other());
  }

  private boolean isWith(WordItem item, Claim claim) {
    boolean among = claim.first() <= item.from() && item.from() <= claim.last();
    return among
        || claim.evidence().stream().anyMatch(word -> breaks.count(item.from(), word) == 0);
  }
}
