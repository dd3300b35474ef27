package tiptoe.language.tagger;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import tiptoe.protocol.Side;

/**
 * A word or a few of a sentence and what they are in it.
 *
 * @param from first word, from 0
 * @param to behind the last word
 * @param match the term of the lexicon; null where it is none
 */
record WordItem(Kind kind, int from, int to, TermMatch match) {

  /** What words are. */
  enum Kind {
    PART,
    FINDING,
    SIDE,
    NOT,
    TURN,
    AND,
    OR,
    COMMA,
    NUMBER,
    /** Words that carry nothing. */
    FILLER,
    CORRECTION,
    /** "The same", of the other side. */
    SAME,
    /** What makes what stands beside it no finding: a doubt, a plan. */
    DOUBT,
    /** "The other one": the side that was not spoken of. */
    OTHER,
    /** What is to be done: no finding, but nothing against what was found either. */
    PLAN,
    /** Unease about what was found: of what is normal it makes a doubt. */
    CONCERN,
    /** How something looks or feels: of what is not normal it tells more, of what is it may not. */
    DESCRIPTION,
    /** What makes the whole sentence no finding: a question, another person, what is put off. */
    FOREIGN,
    UNKNOWN;

    String id() {
      return this == PART ? "structure" : name().toLowerCase(Locale.ROOT);
    }
  }

  static WordItem of(Kind kind, int from, int to) {
    return new WordItem(kind, from, to, new TermMatch(from, to, to - from, List.of()));
  }

  /** The items between breaks, as views of them; between two breaks side by side there are none. */
  static List<List<WordItem>> chunks(List<WordItem> items) {
    List<List<WordItem>> chunks = new ArrayList<>();
    int from = 0;
    for (int to = 0; to <= items.size(); to++) {
      if (to == items.size() || items.get(to).kind() == Kind.COMMA) {
        chunks.add(items.subList(from, to));
        from = to + 1;
      }
    }
    return chunks;
  }

  /** The words from the first item to the last; at least one. */
  static List<String> said(List<WordItem> items, List<String> words) {
    return words.subList(items.get(0).from(), items.get(items.size() - 1).to());
  }

  /** The places of the words from the first item to the last; at least one. */
  static Set<Integer> places(List<WordItem> items) {
    return IntStream.range(items.get(0).from(), items.get(items.size() - 1).to())
        .boxed()
        .collect(Collectors.toCollection(TreeSet::new));
  }

  Set<Integer> places() {
    return places(List.of(this));
  }

  /** Whether it parts nothing and says nothing. */
  boolean isEmpty() {
    return kind == Kind.FILLER || kind == Kind.DESCRIPTION;
  }

  Set<Side> sides() {
    if (match.isCue("both")) {
      return EnumSet.allOf(Side.class);
    }
    return EnumSet.of(match.isCue("left") ? Side.LEFT : Side.RIGHT);
  }
}
