package tiptoe.language.tagger;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import tiptoe.language.SecondReading.Claim;
import tiptoe.protocol.Protocol;
import tiptoe.protocol.Side;

/**
 * The words of a sentence and what they are. Ranges of words end behind the last one.
 *
 * @param words with breaks
 * @param items what the words are, in their order
 */
record SentenceItems(
    LayLexicon lexicon,
    Protocol protocol,
    List<String> words,
    Breaks breaks,
    List<WordItem> items) {

  SentenceItems(LayLexicon lexicon, Protocol protocol, List<String> words, List<WordItem> items) {
    this(lexicon, protocol, words, new Breaks(words), items);
  }

  List<String> said(WordItem item) {
    return words.subList(item.from(), item.to());
  }

  /** The words between the breaks around an item. */
  Set<Integer> chunk(WordItem item) {
    return IntStream.range(breaks.from(item.from()), breaks.to(item.from()))
        .boxed()
        .collect(Collectors.toSet());
  }

  /** The findings that a claim is made of. */
  Stream<WordItem> findings(Claim claim) {
    return items.stream()
        .filter(item -> item.kind() == WordItem.Kind.FINDING)
        .filter(item -> claim.evidence().contains(item.from()));
  }

  boolean isNormal(Claim claim) {
    return protocol.step(claim.step()).isNormal(claim.value());
  }

  /** Whether something is found that is not normal. */
  boolean isFound(Claim claim) {
    return claim.value() != null && claim.denied().isEmpty() && !isNormal(claim);
  }

  boolean isCount(List<String> said) {
    return said.stream().allMatch(word -> lexicon.isListed("count", word));
  }

  /** Whether something else may have been so before. */
  boolean saysNow() {
    return lexicon.says("by-now", words);
  }

  boolean isListed(String list, int at) {
    return lexicon.isListed(list, words.get(at));
  }

  /** How many words the longest term of a list has that begins here; 0 for none. */
  int term(String list, int at) {
    return lexicon.longest(list, words.subList(at, breaks.to(at)));
  }

  boolean says(String list, int from, int to) {
    return lexicon.says(list, words.subList(from, to));
  }

  List<WordItem> items(int from, int to) {
    return items.stream().filter(item -> item.from() >= from && item.to() <= to).toList();
  }

  boolean has(WordItem.Kind kind, int from, int to) {
    return items(from, to).stream().anyMatch(item -> item.kind() == kind);
  }

  Set<Side> sides(int from, int to) {
    return items(from, to).stream()
        .filter(item -> item.kind() == WordItem.Kind.SIDE)
        .flatMap(item -> item.sides().stream())
        .collect(Collectors.toSet());
  }

  boolean isSide(int at) {
    return words.get(at).equals("left") || words.get(at).equals("right");
  }

  /** The side spoken of last before a word; none where both are named there, or none is. */
  Optional<Side> sideBefore(int word) {
    int end = endBefore(word);
    while (end > 0) {
      int begin = breaks.from(end - 1);
      Set<Side> here = sides(begin, end);
      if (!here.isEmpty()) {
        return here.size() == 1 ? here.stream().findFirst() : Optional.empty();
      }
      end = endBefore(begin);
    }
    return Optional.empty();
  }

  /** Behind the last word of the stretch before the one that begins here. */
  int endBefore(int word) {
    return breaks.at(word - 1) ? word - 1 : word;
  }
}
