package tiptoe.language.tagger;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import tiptoe.language.SecondReading.Claim;
import tiptoe.protocol.Protocol;

/** Settles the claims of a sentence that are of one step against each other. */
final class RivalClaims {
  private static final Set<String> NOT_DONE = Set.of("not-assessable", "not-examined");

  private final SentenceItems sentence;
  private final LayLexicon lexicon;
  private final Protocol protocol;
  private final List<String> words;
  private final Breaks breaks;
  private final List<WordItem> items;

  RivalClaims(SentenceItems sentence) {
    this.sentence = sentence;
    this.lexicon = sentence.lexicon();
    this.protocol = sentence.protocol();
    this.words = sentence.words();
    this.breaks = sentence.breaks();
    this.items = sentence.items();
  }

  /** What only explains another claim, or describes what that names, is part of it. */
  void takeIn(List<Claim> read) {
    // "A bit folded, but it's well formed": the one or the other.
    List<Claim> verdicts = read.stream().filter(c -> sentence.isNormal(c) && isVerdict(c)).toList();
    List<Claim> weighed =
        read.stream()
            .filter(claim -> sentence.isFound(claim) && verdicts.stream().anyMatch(claim::isOfSame))
            .toList();
    read.removeAll(weighed);
    read.removeIf(claim -> verdicts.contains(claim) && weighed.stream().anyMatch(claim::isOfSame));
    read.removeIf(this::isHindrance);
    for (Claim claim : List.copyOf(read)) {
      Optional<Claim> whole =
          read.stream()
              .filter(
                  other ->
                      isReason(claim, other)
                          || isToldMoreOf(claim, other)
                          || isNamedBehind(claim, other)
                          || isPraise(claim, other)
                          || isToldCloser(claim, other))
              .findFirst();
      if (whole.isPresent()) {
        Claim other = whole.get();
        Set<Integer> evidence = new TreeSet<>(other.evidence());
        evidence.addAll(claim.evidence());
        read.set(read.indexOf(other), other.with(evidence));
        read.remove(claim);
      }
    }
  }

  // "Hydrocele right, left testis descended, transilluminates": it tells no other hydrocele.
  private boolean isToldMoreOf(Claim claim, Claim other) {
    return claim.step().equals(other.step())
        && claim.value() != null
        && claim.value().equals(other.value())
        && tellsMore(claim)
        && !tellsMore(other);
  }

  private boolean tellsMore(Claim claim) {
    List<WordItem> said = sentence.findings(claim).toList();
    return !said.isEmpty()
        && said.stream().allMatch(item -> lexicon.isListed("tells-more", sentence.said(item)));
  }

  // "Spleen tip just there, fine": a remark on what was found.
  private boolean isPraise(Claim claim, Claim other) {
    return claim.value() != null
        && other.value() != null
        && claim.isOfSame(other)
        && !claim.value().equals(other.value())
        && isPraise(claim)
        && !isPraise(other)
        && sentence.findings(claim).allMatch(this::isRemark)
        && isBehind(claim, other);
  }

  private boolean isPraise(Claim claim) {
    return sentence.isNormal(claim)
        && claim.denied().isEmpty()
        && sentence.findings(claim).allMatch(item -> lexicon.isListed("good", sentence.said(item)));
  }

  private boolean isRemark(WordItem praise) {
    Set<Integer> chunk = sentence.chunk(praise);
    return items.stream()
        .filter(item -> chunk.contains(item.from()))
        .allMatch(item -> item == praise || item.isEmpty());
  }

  // "It isn't in the scrotum, it's in the groin": the second says where it is.
  private boolean isToldCloser(Claim claim, Claim other) {
    return claim.isOfSame(other)
        && claim.value() != null
        && other.value() != null
        && lexicon.isListed("vaguer", claim.value())
        && lexicon.isListed("closer", other.value());
  }

  // "Folded from being squished, but it's well formed": what it comes to.
  private boolean isVerdict(Claim claim) {
    return sentence
        .findings(claim)
        .anyMatch(
            finding ->
                finding.from() >= 2
                    && lexicon.isListed("pronoun", words.get(finding.from() - 1))
                    && lexicon.isListed("parting", words.get(finding.from() - 2)));
  }

  // "Cord's dried up, so I can't count the vessels": a reason, and no finding.
  private boolean isReason(Claim claim, Claim other) {
    if (claim.value() == null || !sentence.isNormal(claim)) {
      return false;
    }
    // "Sclerae white, so no jaundice": of the eyes it says no more.
    boolean ofColour =
        other.step().equals("jaundice")
            && sentence
                .findings(claim)
                .anyMatch(item -> lexicon.says("not-yellow", sentence.said(item)));
    boolean why =
        !isNamedAnew(claim, other)
            && NOT_DONE.contains(String.valueOf(other.value()))
            && lexicon.near(claim.step(), other.step())
            && sentence
                .findings(claim)
                .anyMatch(item -> lexicon.isListed("reason", sentence.said(item)));
    return why || ofColour && claim.step().equals("eyes");
  }

  // "Vessels not assessable now, stump's dry": that is found.
  private boolean isNamedAnew(Claim claim, Claim other) {
    int last = Collections.max(other.evidence());
    return sentence
            .findings(claim)
            .anyMatch(
                item ->
                    breaks.from(item.from()) > last
                        && items.stream()
                            .filter(one -> one.kind() == WordItem.Kind.PART)
                            .anyMatch(one -> sentence.chunk(item).contains(one.from())))
        && words.subList(last, Collections.max(claim.evidence())).stream()
            .noneMatch(word -> lexicon.isListed("reason-begins", word));
  }

  // "Cord's dried up, so I can't tell you how many vessels": of these it says nothing either.
  private boolean isHindrance(Claim claim) {
    return claim.value() != null
        && sentence.isNormal(claim)
        && sentence
            .findings(claim)
            .anyMatch(item -> lexicon.isListed("reason", sentence.said(item)))
        && lexicon.says("unable", words)
        && items.stream()
            .filter(item -> item.kind() == WordItem.Kind.PART)
            .map(item -> item.match().steps(Sense.Kind.PART))
            .anyMatch(
                steps ->
                    !steps.contains(claim.step())
                        && steps.stream().anyMatch(step -> lexicon.near(step, claim.step())));
  }

  // "A boggy swelling, so that's a caput": what was described is told by its name.
  private boolean isNamedBehind(Claim claim, Claim other) {
    int last = sentence.findings(claim).mapToInt(WordItem::to).max().orElse(words.size());
    boolean bare = sentence.findings(claim).allMatch(this::isBareThing);
    return sentence.isFound(claim)
        && sentence.isFound(other)
        && (other.isOfSame(claim)
            || bare && claim.side() == null && other.step().equals(claim.step()))
        && !other.value().equals(claim.value())
        && sentence.findings(claim).anyMatch(this::isThing)
        && sentence
            .findings(other)
            .filter(name -> !isThing(name) && breaks.from(name.from()) >= last)
            .anyMatch(
                name ->
                    lexicon.isListed("refers-back", words.get(breaks.from(name.from())))
                        || isAlone(name)
                        || bare && isNamedNext(last, name));
  }

  // "A boggy swelling, subgaleal"
  private boolean isAlone(WordItem name) {
    return breaks.from(name.from()) == name.from() && breaks.to(name.from()) == name.to();
  }

  // "A squishy swelling, a cephalohaematoma over the parietal bone"
  private boolean isNamedNext(int last, WordItem name) {
    Set<Integer> chunk = sentence.chunk(name);
    return breaks.to(last - 1) + 1 == breaks.from(name.from())
        && items.stream()
            .filter(item -> item != name && chunk.contains(item.from()))
            .allMatch(
                item ->
                    item.kind() == WordItem.Kind.SIDE
                        || (item.from() < name.from()
                            ? lexicon.isListed("article", words.get(item.from()))
                            : item.isEmpty() || item.kind() == WordItem.Kind.PART));
  }

  // "A soft boggy swelling": what it feels like, and no name.
  private boolean isBareThing(WordItem finding) {
    List<String> said = sentence.said(finding);
    return lexicon.isListed("thing", said.get(said.size() - 1))
        && said.stream()
            .allMatch(
                word ->
                    lexicon.isListed("thing", word)
                        || lexicon.isListed("feels-like", word)
                        || lexicon.isListed("severity", word));
  }

  // "Moist, smelly" are two things found of the stump.
  private boolean isThing(WordItem finding) {
    List<String> said = sentence.said(finding);
    return said.stream()
        .anyMatch(
            word ->
                lexicon.isListed("thing", word)
                    || said.size() > 1 && lexicon.isListed("neutral", word));
  }

  /**
   * "Nothing on the skin apart from milia": then something is. "White discharge, quite normal":
   * that is said of the discharge. "Skin's grand, a few milia": only praise.
   */
  boolean isTakenBack(Claim claim, List<Claim> merged) {
    if (claim.value() == null || !sentence.isNormal(claim)) {
      return false;
    }
    List<List<String>> said = sentence.findings(claim).map(item -> sentence.said(item)).toList();
    boolean praise =
        said.stream()
            .allMatch(
                item ->
                    lexicon.isListed("good", item)
                        || lexicon.isListed("good", item.get(item.size() - 1)));
    boolean only = said.stream().noneMatch(item -> lexicon.says("as-normal", item));
    return merged.stream()
        .filter(other -> sentence.isFound(other) && other.isOfSame(claim))
        .anyMatch(
            other ->
                lexicon.says("exception", words) || praise && (only || isBehind(claim, other)));
  }

  private static boolean isBehind(Claim claim, Claim other) {
    return Collections.max(other.evidence()) < Collections.max(claim.evidence());
  }

  /** What contradicts something else in the sentence, so that neither counts. */
  List<Claim> contested(List<Claim> settled, List<Claim> read) {
    List<Claim> dropped =
        read.stream()
            .filter(claim -> settled.stream().noneMatch(kept -> covers(kept, claim)))
            .toList();
    // "Femorals equal, actually the left is weaker": nor is the right what was said of both.
    List<Claim> all = new ArrayList<>(dropped);
    settled.stream()
        .filter(claim -> dropped.stream().anyMatch(other -> isOtherSide(claim, other)))
        .forEach(all::add);
    return all;
  }

  private static boolean isOtherSide(Claim one, Claim other) {
    return one.step().equals(other.step())
        && one.side() != other.side()
        && Objects.equals(one.value(), other.value())
        && one.evidence().equals(other.evidence());
  }

  /** Whether a claim that was kept says what another does, or takes it in. */
  boolean covers(Claim kept, Claim claim) {
    if (FindingMerger.denies(claim, kept)) {
      return false;
    }
    if (lexicon.says("except", words)
        && kept.step().equals(claim.step())
        && sentence.isNormal(claim)) {
      return true;
    }
    // "Puffy but clear": not so clear as to take it back.
    if (!sentence.isNormal(kept)
        && sentence.isNormal(claim)
        && kept.isOfSame(claim)
        && kept.denied().isEmpty()
        && kept.value() != null
        && !sentence.saysNow()
        && (turnsBetween(kept, claim) || isAddedTo(kept, claim))) {
      return true;
    }
    boolean elsewhere = claim.step().equals("skin") && Objects.equals(kept.value(), claim.value());
    // "A clunk, Ortolani positive on the left": the same without its side.
    boolean placed =
        claim.side() == null
            && claim.step().equals(kept.step())
            && Objects.equals(kept.value(), claim.value())
            && kept.evidence().containsAll(claim.evidence());
    return elsewhere
        || placed
        || kept.isOfSame(claim)
            && (Objects.equals(kept.value(), claim.value()) || !claim.denied().isEmpty());
  }

  // "Nipples normally placed, an extra one on the left"
  private boolean isAddedTo(Claim added, Claim normal) {
    return protocol.step(added.step()).many()
        && Collections.min(added.evidence()) > Collections.max(normal.evidence());
  }

  private boolean turnsBetween(Claim one, Claim other) {
    int from = Math.min(Collections.max(one.evidence()), Collections.max(other.evidence()));
    int to = Math.max(Collections.max(one.evidence()), Collections.max(other.evidence()));
    return items.stream()
        .filter(item -> item.from() > from && item.from() < to)
        .anyMatch(
            item ->
                item.kind() == WordItem.Kind.TURN
                    && lexicon.isListed("parting", words.get(item.from())));
  }

  /** "No dysmorphism apart from low-set ears": then it is not quite so. */
  boolean isExcepted(Claim claim, List<Claim> settled) {
    int last = claim.evidence().stream().max(Integer::compare).orElse(0);
    return lexicon.list("exception").stream()
        .mapToInt(words -> Collections.indexOfSubList(this.words, words))
        .filter(at -> at > last && !breaks.between(last, at))
        .anyMatch(
            at ->
                settled.stream()
                    .filter(other -> other.step().equals(claim.step()))
                    .allMatch(other -> sentence.isNormal(other)));
  }
}
