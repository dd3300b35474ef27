package tiptoe.language.tagger;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import tiptoe.protocol.Side;

/**
 * The words of a sentence and what they are, as they are asked for where something was left out.
 * Ranges of words end behind the last one.
 */
record LeftOutSentence(
    LayLexicon lexicon, List<String> words, Breaks breaks, List<WordItem> items) {

  LeftOutSentence(LayLexicon lexicon, List<String> words, List<WordItem> items) {
    this(lexicon, words, new Breaks(words), items);
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
