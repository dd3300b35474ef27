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

  private static final int MOST_WORDS = 5;
  private static final String NO = "no";

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
      int end = next < words.size() ? end(breaks, next, puts) : next;
      if (end > next) {
        return end;
      }
    }
    List<String> behind = words.subList(at, words.size());
    int longest =
        TERMS.stream().mapToInt(list -> lexicon.longest(list, behind)).reduce(0, Math::max);
    boolean alone = breaks.at(at - 1) && (breaks.at(at + 1) || puts.test(at + 1));
    if (longest > 1 || longest == 1 && alone) {
      return at + longest;
    }
    return breaks.isBareNo(at) ? at + 1 : owned(breaks, at);
  }

  // "I misread that", "let me redo that"
  private int owned(Breaks breaks, int at) {
    List<String> said = breaks.words().subList(at, breaks.to(at));
    boolean own = !said.isEmpty() && breaks.at(at - 1) && lexicon.isListed("owns", said.get(0));
    boolean takesBack =
        lexicon.says("takes-back", said) || said.stream().anyMatch(word -> isMisdoing(word));
    return own && takesBack && said.size() <= MOST_WORDS ? breaks.to(at) : at;
  }

  /** The items with each such stretch as one correction, and those side by side as one. */
  List<WordItem> in(List<String> words, List<WordItem> all) {
    List<WordItem> items = new ArrayList<>(all);
    items.replaceAll(
        item ->
            namesSide(words, all, item)
                ? WordItem.of(WordItem.Kind.FILLER, item.from(), item.to())
                : item);
    List<WordItem> found = new ArrayList<>(items);
    List<List<WordItem>> chunks = WordItem.chunks(items);
    for (int i = 1; i + 1 < chunks.size(); i++) {
      List<WordItem> chunk = chunks.get(i);
      if (isCorrection(words, chunk) || isNotThat(chunk, chunks.get(i + 1))) {
        int at = found.indexOf(chunk.get(0));
        found.subList(at, at + chunk.size()).clear();
        found.add(at, one(chunk));
      }
    }
    return joined(words, found);
  }

  // "That one's sticky, the right eye I mean, left's clear": it says which, and puts nothing right.
  private boolean namesSide(List<String> words, List<WordItem> items, WordItem item) {
    Breaks breaks = new Breaks(words);
    int from = breaks.from(item.from());
    return item.kind() == WordItem.Kind.CORRECTION
        && lexicon.isListed("names-it", words.subList(item.from(), item.to()))
        && breaks.at(item.to())
        && items.stream().anyMatch(one -> one.kind() == WordItem.Kind.FINDING && one.to() <= from)
        && items.stream()
                .filter(one -> one.kind() == WordItem.Kind.SIDE && one.from() < item.from())
                .mapToInt(WordItem::from)
                .min()
                .orElse(-1)
            >= from;
  }

  private boolean isCorrection(List<String> words, List<WordItem> chunk) {
    if (chunk.isEmpty()) {
      return false;
    }
    List<String> said = WordItem.said(chunk, words);
    // "Digits swapped", "wrong hand"
    boolean mixedUp = said.size() <= 3 && lexicon.says("mixed-up", said);
    boolean bare =
        chunk.stream()
            .allMatch(item -> maySlip(item) || mixedUp && item.kind() == WordItem.Kind.PART);
    // "Well, no"
    boolean no =
        said.stream().noneMatch(word -> lexicon.isListed("exclaims", word))
            && (said.get(0).equals(NO) || said.get(said.size() - 1).equals(NO))
            && chunk.stream().anyMatch(item -> item.kind() == WordItem.Kind.NOT)
            && chunk.stream()
                .allMatch(
                    item ->
                        item.isEmpty() || item.kind() == WordItem.Kind.NOT && isNo(words, item));
    return no
        || bare && said.size() == 1 && lexicon.isListed("alone", said.get(0))
        || bare && (lexicon.says("takes-back", said) || said.stream().anyMatch(this::isSlip));
  }

  // "Crepitus of the left clavicle, not the left, the right"
  private static boolean isNotThat(List<WordItem> chunk, List<WordItem> behind) {
    return chunk.stream().anyMatch(item -> item.kind() == WordItem.Kind.NOT)
        && chunk.stream()
            .allMatch(
                item ->
                    item.isEmpty()
                        || item.kind() == WordItem.Kind.NOT
                        || item.kind() == WordItem.Kind.SIDE)
        && isOneSide(chunk)
        && isOneSide(behind)
        && behind.stream().allMatch(item -> item.isEmpty() || item.kind() == WordItem.Kind.SIDE);
  }

  private static boolean isOneSide(List<WordItem> chunk) {
    return chunk.stream()
            .filter(item -> item.kind() == WordItem.Kind.SIDE)
            .flatMap(item -> item.sides().stream())
            .count()
        == 1;
  }

  private boolean isSlip(String word) {
    return lexicon.isListed("slip", word) || isMisdoing(word);
  }

  private boolean isMisdoing(String word) {
    return word.startsWith("mis") && word.length() > 5 && !lexicon.isListed("not-a-slip", word);
  }

  private static boolean maySlip(WordItem item) {
    return switch (item.kind()) {
      case UNKNOWN, SIDE, CORRECTION, CONCERN, AND -> true;
      default -> item.isEmpty();
    };
  }

  private static boolean isNo(List<String> words, WordItem item) {
    return words.subList(item.from(), item.to()).equals(List.of(NO));
  }

  private static WordItem one(List<WordItem> chunk) {
    return WordItem.of(
        WordItem.Kind.CORRECTION, chunk.get(0).from(), chunk.get(chunk.size() - 1).to());
  }

  // "No, misread it", "no I tell a lie": one correction.
  private static List<WordItem> joined(List<String> words, List<WordItem> items) {
    List<WordItem> joined = new ArrayList<>();
    int last = -1;
    for (WordItem item : items) {
      if (item.kind() != WordItem.Kind.CORRECTION) {
        joined.add(item);
        continue;
      }
      int size = joined.size();
      boolean goesOn =
          last >= 0
              && joined.subList(last + 1, size).stream()
                  .allMatch(one -> one.isEmpty() || one.kind() == WordItem.Kind.COMMA);
      boolean led = size > 0 && isNo(words, joined.get(size - 1));
      last = led ? size - 1 : goesOn ? last : size;
      WordItem one =
          last == size
              ? item
              : WordItem.of(WordItem.Kind.CORRECTION, joined.get(last).from(), item.to());
      joined.subList(last, size).clear();
      joined.add(one);
    }
    return joined;
  }
}
