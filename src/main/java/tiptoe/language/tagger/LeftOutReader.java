package tiptoe.language.tagger;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import tiptoe.language.SecondReading.LeftOut;
import tiptoe.language.TypedText;
import tiptoe.protocol.Side;

/**
 * Reads what was not examined inside a sentence: between two breaks nothing but that it was not
 * done, of what, on which side, and until when or why. A word more, and it is not read. The words
 * are in {@code cues.txt}.
 */
final class LeftOutReader {
  private static final Set<String> REFLEX = Set.of("reflex", "reflexes");

  private final LayLexicon lexicon;
  private final List<String> words;
  private final Breaks breaks;
  private final List<List<String>> structures = new ArrayList<>();
  private List<String> structure = new ArrayList<>();
  private Side side;
  private boolean ofOneSide;

  LeftOutReader(LayLexicon lexicon, List<String> words) {
    this.lexicon = lexicon;
    this.words = words;
    this.breaks = new Breaks(words);
  }

  Optional<LeftOut> read() {
    for (int from = 0; from < words.size(); from++) {
      boolean begins = from == 0 || breaks.at(from - 1);
      if (begins && reads(from, breaks.to(from))) {
        List<String> rest = new ArrayList<>(words.subList(0, Math.max(0, from - 1)));
        int behind = Math.min(words.size(), breaks.to(from) + 1);
        if (!rest.isEmpty() && behind < words.size()) {
          rest.add(TypedText.BREAK);
        }
        rest.addAll(words.subList(behind, words.size()));
        return Optional.of(new LeftOut(structures, side, rest));
      }
    }
    return Optional.empty();
  }

  private boolean reads(int from, int to) {
    structures.clear();
    structure = new ArrayList<>();
    side = null;
    ofOneSide = false;
    int at = from;
    while (at < to && lexicon.isListed("before-not-done", words.get(at))) {
      at++;
    }
    int done = term("left-out", at, to);
    boolean maybe = done == 0;
    if (maybe) {
      done = term("left-out-for-why", at, to);
    }
    if (done == 0 || !readsStructures(at + done, to) || structures.isEmpty()) {
      return false;
    }
    boolean closed = lexicon.says("eyes-shut", words);
    return !maybe
        || closed && structures.stream().allMatch(one -> one.stream().anyMatch(REFLEX::contains));
  }

  private boolean readsStructures(int from, int to) {
    int at = from;
    while (at < to) {
      String word = words.get(at);
      int where = Math.max(term("of-both-sides", at, to), term("of-that-side", at, to));
      int why = term("left-out-until", at, to);
      if (where > 0) {
        next();
        ofOneSide |= term("of-that-side", at, to) > 0;
        if (ofOneSide && !isSaidBefore(at)) {
          return false;
        }
        at += where;
      } else if (why > 0) {
        next();
        at += why;
      } else if (Set.of("left", "right").contains(word)) {
        if (side != null) {
          return false;
        }
        side = Side.of(word);
        at++;
      } else if (lexicon.isListed("determiner", word) || Set.of("on", "side").contains(word)) {
        at++;
      } else if (Set.of("and", "or", "nor").contains(word)) {
        next();
        at++;
      } else {
        structure.add(word);
        at++;
      }
    }
    next();
    return true;
  }

  private void next() {
    if (!structure.isEmpty()) {
      structures.add(structure);
      structure = new ArrayList<>();
    }
  }

  // "Too puffy on the right, couldn't check it on that side"
  private boolean isSaidBefore(int at) {
    List<String> said =
        words.subList(0, at).stream().filter(Set.of("left", "right")::contains).distinct().toList();
    if (said.size() != 1) {
      return false;
    }
    side = Side.of(said.get(0));
    return true;
  }

  private int term(String list, int at, int to) {
    return lexicon.list(list).stream()
        .filter(term -> at + term.size() <= to)
        .filter(term -> words.subList(at, at + term.size()).equals(term))
        .map(List::size)
        .max(Comparator.naturalOrder())
        .orElse(0);
  }
}
