package tiptoe.language.tagger;

import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import tiptoe.language.SecondReading.Claim;
import tiptoe.protocol.Protocol;

/** Finds the words of a sentence that no claim accounts for. */
final class OpenWords {
  private final SentenceItems sentence;
  private final LayLexicon lexicon;
  private final Protocol protocol;
  private final List<String> words;
  private final Breaks breaks;
  private final List<WordItem> items;
  private final RivalClaims rivals;
  private final WeightlessWords weightless;

  OpenWords(SentenceItems sentence, RivalClaims rivals) {
    this.sentence = sentence;
    this.lexicon = sentence.lexicon();
    this.protocol = sentence.protocol();
    this.words = sentence.words();
    this.breaks = sentence.breaks();
    this.items = sentence.items();
    this.rivals = rivals;
    this.weightless = new WeightlessWords(sentence);
  }

  /**
   * The words that no claim accounts for, and those of claims that do not hold.
   *
   * @param settled claims that were kept
   * @param read all that were read
   * @param deniedAside words that deny what they do not ask for
   */
  Set<Integer> of(List<Claim> settled, List<Claim> read, Set<Integer> deniedAside) {
    Set<Integer> stated = new TreeSet<>();
    settled.forEach(claim -> stated.addAll(claim.evidence()));
    read.stream()
        .filter(claim -> settled.stream().anyMatch(kept -> rivals.covers(kept, claim)))
        .forEach(claim -> stated.addAll(claim.evidence()));
    Set<Integer> open = new TreeSet<>();
    for (WordItem item : items) {
      boolean carries =
          switch (item.kind()) {
            case NUMBER ->
                item.places().stream().noneMatch(stated::contains)
                    && !counts(item, stated)
                    && settled.stream().noneMatch(claim -> isSize(item, claim));
            case PART, FINDING, SIDE, NOT, SAME, OTHER ->
                item.places().stream().noneMatch(stated::contains) && !isBeside(item, settled);
            case UNKNOWN, DOUBT, PLAN, CONCERN, FOREIGN, CORRECTION -> true;
            case DESCRIPTION -> settled.stream().noneMatch(claim -> isDescribed(claim, item));
            default -> false;
          };
      if (carries) {
        open.addAll(item.places());
      }
    }
    open.removeAll(weightless.asides());
    open.removeAll(weightless.deniedOthers(stated));
    open.removeAll(deniedAside);
    open.removeAll(weightless.saidAgain(stated));
    // What contradicts something else in the sentence counts for neither.
    rivals.contested(settled, read).forEach(claim -> open.addAll(claim.evidence()));
    settled.stream()
        .filter(
            claim -> sentence.isNormal(claim) && rivals.isExcepted(claim, settled) || isOfBefore())
        .forEach(claim -> open.addAll(claim.evidence()));
    settled.stream()
        .filter(claim -> isOnlyTried(claim, settled))
        .forEach(claim -> open.add(Collections.max(claim.evidence())));
    return open;
  }

  // "Couldn't get a red reflex": there is none, or it could not be looked for. Where the other side
  // has one it could.
  private boolean isOnlyTried(Claim claim, List<Claim> settled) {
    return "absent".equals(claim.value())
        && sentence
            .findings(claim)
            .noneMatch(item -> lexicon.isListed("outright", words.get(item.to() - 1)))
        && claim.evidence().stream()
            .map(word -> words.subList(word, Math.min(words.size(), breaks.to(word))))
            .anyMatch(said -> lexicon.longest("tried", said) > 0)
        && settled.stream()
            .noneMatch(
                other ->
                    other.step().equals(claim.step())
                        && other.side() != claim.side()
                        && !Objects.equals(other.value(), claim.value()));
  }

  // "Boggy" of a caput is no news, of a scalp that is clear it is.
  private boolean isDescribed(Claim claim, WordItem description) {
    if (claim.value() == null || sentence.isNormal(claim)) {
      return false;
    }
    return claim.evidence().stream().anyMatch(sentence.chunk(description)::contains);
  }

  // "Was red, fine now"
  private boolean isOfBefore() {
    return sentence.saysNow() && lexicon.says("of-before", words);
  }

  // "A strawberry mark, one centimetre"
  private boolean isSize(WordItem number, Claim claim) {
    return lexicon.isListed("size", words.get(number.to() - 1))
        && sentence.isFound(claim)
        && protocol.step(claim.step()).details().stream()
            .noneMatch(detail -> detail.measure() != null)
        && isDescribed(claim, number);
  }

  // "Two testes", "the one hand"
  private boolean counts(WordItem number, Set<Integer> stated) {
    List<String> said = sentence.said(number);
    boolean ofFinding =
        sentence.isCount(said)
            && items.stream()
                .filter(item -> item.from() >= number.to() && !item.isEmpty())
                .findFirst()
                .filter(item -> item.kind() == WordItem.Kind.FINDING)
                .filter(item -> stated.contains(item.from()))
                .isPresent();
    boolean ofTime = number.to() < words.size() && lexicon.isListed("time", words.get(number.to()));
    return ofTime
        || ofFinding
        || lexicon.isListed("no-count", said)
        || lexicon.isListed("two-of-a-pair", said) && stated.contains(number.to());
  }

  // The place of a finding, and praise that says nothing of its own.
  private boolean isBeside(WordItem item, List<Claim> settled) {
    if (item.kind() == WordItem.Kind.PART) {
      if (isPlaced(item)
          && !isTest(item)
          && settled.stream().anyMatch(claim -> isBefore(claim, item))) {
        return true;
      }
      return settled.stream()
          .anyMatch(
              claim ->
                  lexicon.isAnywhere(claim.step()) && claim.denied().isEmpty()
                      || item.match().steps(Sense.Kind.PLACE).contains(claim.step()));
    }
    List<String> said = sentence.said(item);
    if (item.kind() != WordItem.Kind.FINDING) {
      return false;
    }
    if (lexicon.isListed("found-there", said)
        || lexicon.isListed("seen", said) && isBehind(item, settled)
        || isNamedLater(item, settled)
        || isDeniedAlone(item, settled)) {
      return true;
    }
    if (lexicon.isListed("filler", said)) {
      return settled.stream().anyMatch(claim -> claim.value() != null);
    }
    return describes(item) && isOfFormer(item, settled)
        || describes(item)
            && settled.stream()
                .anyMatch(
                    claim ->
                        claim.denied().isEmpty()
                            && (claim.evidence().contains(behindFillers(item.to()))
                                || claim.evidence().contains(item.from() - 1)));
  }

  // "Retractions are present"
  private boolean isBehind(WordItem seen, List<Claim> settled) {
    int before = seen.from() - 1;
    while (before >= 0 && isFilled(before)) {
      before--;
    }
    int word = before;
    return settled.stream()
        .filter(claim -> claim.value() != null && claim.denied().isEmpty())
        .anyMatch(claim -> claim.evidence().contains(word));
  }

  private boolean isFilled(int word) {
    return items.stream()
        .anyMatch(item -> item.isEmpty() && item.from() <= word && word < item.to());
  }

  // "Moving all limbs, no deformity": nothing is said to be there.
  private boolean isDeniedAlone(WordItem item, List<Claim> settled) {
    boolean normal = item.match().senses().stream().noneMatch(lexicon::isAbnormal);
    boolean alone =
        items.stream()
            .filter(other -> sentence.chunk(item).contains(other.from()))
            .allMatch(other -> other == item || other.isEmpty());
    return lexicon.denies(item.match(), words)
        && normal
        && alone
        && settled.stream().allMatch(claim -> claim.value() == null || sentence.isNormal(claim));
  }

  // "A swelling on top, that's a caput": what it is was told by name.
  private boolean isNamedLater(WordItem thing, List<Claim> settled) {
    return lexicon.isListed("thing", sentence.said(thing))
        && settled.stream()
            .filter(sentence::isFound)
            .map(claim -> claim.evidence().stream().min(Integer::compare).orElse(0))
            .anyMatch(
                first ->
                    first > thing.to()
                        && breaks.between(thing.to(), first)
                        && lexicon.says("refers-back", words.subList(thing.to(), first)));
  }

  // "A natal tooth, slightly mobile": nothing else is named there.
  private boolean isOfFormer(WordItem item, List<Claim> settled) {
    int from = breaks.from(item.from());
    return from > 0
        && items.stream()
            .filter(other -> other.from() >= from && other.to() <= item.from())
            .allMatch(other -> other.isEmpty() || describes(other))
        && settled.stream()
            .max(Comparator.comparing(claim -> Collections.max(claim.evidence())))
            .filter(last -> Collections.max(last.evidence()) < from)
            .filter(last -> last.value() != null && !sentence.isNormal(last))
            .isPresent();
  }

  private boolean describes(WordItem item) {
    List<String> said = sentence.said(item);
    return Stream.of("severity", "neutral", "describes")
        .anyMatch(list -> lexicon.isListed(list, said));
  }

  private int behindFillers(int word) {
    return items.stream()
        .filter(item -> item.from() >= word && !item.isEmpty())
        .filter(item -> item.kind() != WordItem.Kind.FINDING || !describes(item))
        .mapToInt(WordItem::from)
        .findFirst()
        .orElse(-1);
  }

  // "In the white of the eye": a structure behind a preposition tells where the finding is.
  private boolean isPlaced(WordItem part) {
    int before = part.from() - 1;
    while (before >= 0 && lexicon.isListed("place-determiner", words.get(before))) {
      before--;
    }
    return before >= 0 && lexicon.isListed("place-preposition", words.get(before));
  }

  // "On Barlow" tells what was done, not where something was found.
  private boolean isTest(WordItem part) {
    return part.match().senses().stream()
        .map(Sense::step)
        .filter(Objects::nonNull)
        .map(protocol::step)
        .anyMatch(step -> step.value("positive").isPresent());
  }

  private static boolean isBefore(Claim claim, WordItem part) {
    return claim.value() != null
        && claim.denied().isEmpty()
        && claim.evidence().stream().allMatch(word -> word < part.from());
  }
}
