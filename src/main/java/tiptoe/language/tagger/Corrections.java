package tiptoe.language.tagger;

import java.util.ArrayList;
import java.util.List;
import java.util.function.IntPredicate;

/**
 * Finds what puts right what was said before. Among findings that is what stands between breaks,
 * names nothing of the examination, and owns to a slip ("I misspoke", "wrong side", "tape
 * slipped"), takes back ("amend that") or excuses itself ("apologies"); among facts and numbers,
 * whose words may be those of a slip ("premature"), only what the lists hold as a whole.
 */
final class Corrections {
  private static final List<String> TERMS = List.of("correction", "misread", "slip", "takes-back");

  private final LayLexicon lexicon;

  Corrections(LayLexicon lexicon) {
    this.lexicon = lexicon;
  }

  /**
   * Behind the last word of what puts right a fact or a number and begins here: a term with breaks
   * around it, or of more than one word, which "no" and the like may lead; or a bare "no".
   *
   * @param puts whether what is right begins at a word: then no break need stand before it
   * @return the same place where nothing is put right
   */
  int end(Breaks breaks, int at, IntPredicate puts) {
    List<String> words = breaks.words();
    if (lexicon.isListed("hesitates", words.get(at))) {
      int next = at + 1 < words.size() && breaks.at(at + 1) ? at + 2 : at + 1;
      int behind = next < words.size() ? end(breaks, next, puts) : next;
      if (behind > next) {
        return behind;
      }
    }
    int longest =
        TERMS.stream()
            .flatMap(list -> lexicon.list(list).stream())
            .filter(term -> at + term.size() <= words.size())
            .filter(term -> words.subList(at, at + term.size()).equals(term))
            .mapToInt(List::size)
            .filter(
                size -> size > 1 || breaks.at(at - 1) && (breaks.at(at + 1) || puts.test(at + 1)))
            .max()
            .orElse(0);
    return longest == 0 && breaks.isBareNo(at) ? at + 1 : at + longest;
  }

  /** The items with each such stretch as one correction, and those side by side as one. */
  List<WordItem> in(List<String> words, List<WordItem> items) {
    List<WordItem> found = new ArrayList<>(items);
    List<List<WordItem>> chunks = WordItem.chunks(items);
    for (int i = 1; i + 1 < chunks.size(); i++) {
      List<WordItem> chunk = chunks.get(i);
      if (isCorrection(words, chunk)) {
        int at = found.indexOf(chunk.get(0));
        found.subList(at, at + chunk.size()).clear();
        found.add(at, one(chunk));
      }
    }
    return joined(found);
  }

  private boolean isCorrection(List<String> words, List<WordItem> chunk) {
    if (chunk.isEmpty()) {
      return false;
    }
    List<String> said = words.subList(chunk.get(0).from(), chunk.get(chunk.size() - 1).to());
    // "Digits swapped", "wrong hand"
    boolean mixedUp = said.size() <= 3 && lexicon.says("mixed-up", said);
    boolean bare =
        chunk.stream()
            .allMatch(item -> maySlip(item) || mixedUp && item.kind() == WordItem.Kind.PART);
    return bare && said.size() == 1 && lexicon.isListed("alone", said.get(0))
        || bare && (lexicon.says("takes-back", said) || said.stream().anyMatch(this::isSlip));
  }

  private boolean isSlip(String word) {
    return lexicon.isListed("slip", word)
        || word.startsWith("mis") && word.length() > 5 && !lexicon.isListed("not-a-slip", word);
  }

  private static boolean maySlip(WordItem item) {
    return switch (item.kind()) {
      case UNKNOWN, SIDE, CORRECTION, CONCERN, AND -> true;
      default -> item.isEmpty();
    };
  }

  private static WordItem one(List<WordItem> chunk) {
    return WordItem.of(
        WordItem.Kind.CORRECTION, chunk.get(0).from(), chunk.get(chunk.size() - 1).to());
  }

  // "No, misread it": one correction.
  private static List<WordItem> joined(List<WordItem> items) {
    List<WordItem> joined = new ArrayList<>();
    int last = -1;
    for (WordItem item : items) {
      boolean joins =
          last >= 0
              && joined.subList(last + 1, joined.size()).stream()
                  .allMatch(one -> one.isEmpty() || one.kind() == WordItem.Kind.COMMA);
      if (item.kind() == WordItem.Kind.CORRECTION && joins) {
        int from = joined.get(last).from();
        joined.subList(last, joined.size()).clear();
        joined.add(WordItem.of(WordItem.Kind.CORRECTION, from, item.to()));
      } else {
        joined.add(item);
        last = item.kind() == WordItem.Kind.CORRECTION ? joined.size() - 1 : last;
      }
    }
    return joined;
  }
}
