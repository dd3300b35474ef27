package tiptoe.language.tagger;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import tiptoe.language.SecondReading.Claim;

/** Says where a claim is said in full: no word in it is unknown, and none may turn it round. */
final class WholeClaims {
  private static final int MOST_UNKNOWN = 2;

  private final SentenceItems sentence;
  private final LayLexicon lexicon;
  private final List<String> words;
  private final Breaks breaks;
  private final List<WordItem> items;
  private final Set<Integer> suspected;

  WholeClaims(SentenceItems sentence, Set<Integer> suspected) {
    this.sentence = sentence;
    this.lexicon = sentence.lexicon();
    this.words = sentence.words();
    this.breaks = sentence.breaks();
    this.items = sentence.items();
    this.suspected = suspected;
  }

  /**
   * The ways in which a claim is said in full. "Hips open right out to the mattress, full on each
   * side": what is said in full in one place does not need what is said of it in others.
   */
  List<Claim> said(Claim claim, List<Claim> read, Set<Integer> unaccounted) {
    return Stream.concat(
            Stream.of(claim),
            read.stream()
                .filter(claim::isOfSame)
                .filter(one -> Objects.equals(one.value(), claim.value()))
                .filter(one -> one.numbers().equals(claim.numbers()))
                .flatMap(one -> Stream.of(one, core(one))))
        .distinct()
        .filter(one -> isWhole(one) && !isDenied(one, unaccounted))
        .toList();
  }

  // What of it stands between the breaks around its finding, where that says all of it.
  private Claim core(Claim claim) {
    Optional<WordItem> finding = sentence.findings(claim).reduce((first, second) -> second);
    if (finding.isEmpty()) {
      return claim;
    }
    Set<Integer> chunk = sentence.chunk(finding.get());
    List<WordItem> left =
        items.stream()
            .filter(item -> claim.evidence().contains(item.from()))
            .filter(item -> !chunk.contains(item.from()))
            .toList();
    List<WordItem> here =
        items.stream()
            .filter(item -> claim.evidence().contains(item.from()))
            .filter(item -> chunk.contains(item.from()))
            .toList();
    boolean free =
        finding.get().match().senses().stream()
            .anyMatch(sense -> claim.step().equals(sense.step()) && !sense.bound());
    boolean named =
        free
            || here.stream()
                .anyMatch(
                    item ->
                        item.kind() == WordItem.Kind.PART
                            && item.match().steps(Sense.Kind.PART).contains(claim.step()));
    boolean placed =
        claim.side() == null
            || here.stream()
                .filter(item -> item.kind() == WordItem.Kind.SIDE)
                .anyMatch(item -> item.sides().contains(claim.side()))
            || left.stream().noneMatch(item -> item.kind() == WordItem.Kind.SIDE);
    boolean denied = left.stream().anyMatch(item -> item.kind() == WordItem.Kind.NOT);
    if (!named || !placed || denied) {
      return claim;
    }
    Set<Integer> evidence = new TreeSet<>(claim.evidence());
    evidence.retainAll(chunk);
    return claim.with(evidence);
  }

  // No unknown word stands between what makes the claim, nor behind praise that it may belong to.
  private boolean isWhole(Claim claim) {
    int from = first(claim);
    int to = claim.evidence().stream().max(Integer::compare).orElse(0);
    if (unknownBeside(from, to) > MOST_UNKNOWN) {
      return false;
    }
    for (WordItem item : items) {
      boolean between = item.from() > from && item.from() < to && isAmong(item, claim);
      boolean next = item.from() == to + 1 || item.to() == from;
      if (item.kind() == WordItem.Kind.UNKNOWN
          && (between || next && (suspected.contains(item.from()) || isPraised(item)))) {
        return false;
      }
    }
    return true;
  }

  // "The left femoral I'm not sure of, the right is strong": what is named before is no part of it.
  private int first(Claim claim) {
    return claim.evidence().stream()
        .filter(
            word ->
                items.stream()
                    .filter(item -> item.from() <= word && word < item.to())
                    .noneMatch(item -> item.kind() == WordItem.Kind.PART))
        .min(Integer::compare)
        .orElse(claim.evidence().stream().min(Integer::compare).orElse(0));
  }

  // A denial before it that nobody could place may turn it round.
  private boolean isDenied(Claim claim, Set<Integer> unaccounted) {
    int to = claim.evidence().stream().max(Integer::compare).orElse(0);
    int from = breaks.from(first(claim));
    return items.stream()
        .filter(item -> item.from() >= from && item.from() <= to)
        .filter(item -> unaccounted.contains(item.from()))
        .anyMatch(
            item ->
                item.kind() == WordItem.Kind.NOT
                    || item.kind() == WordItem.Kind.FINDING && lexicon.denies(item.match(), words));
  }

  // Whether words of the claim stand on both sides of it in its own chunk.
  private boolean isAmong(WordItem item, Claim claim) {
    int from = breaks.from(item.from());
    int to = breaks.to(item.to());
    return claim.evidence().stream().anyMatch(word -> word >= from && word < item.from())
        && claim.evidence().stream().anyMatch(word -> word >= item.to() && word < to);
  }

  // "A good stare": of what is good, only the unknown word behind it tells.
  private boolean isPraised(WordItem unknown) {
    return unknown.from() > 0
        && lexicon.isListed("good", words.subList(unknown.from() - 1, unknown.from()));
  }

  // Unknown words in the chunks that the claim stands in.
  private long unknownBeside(int from, int to) {
    int first = breaks.from(from);
    int last = breaks.to(to);
    return items.stream()
        .filter(item -> item.kind() == WordItem.Kind.UNKNOWN)
        .filter(item -> item.from() >= first && item.from() < last)
        .count();
  }
}
