package tiptoe.language.tagger;

import java.util.ArrayList;
import java.util.List;
import tiptoe.language.TypedText;

/**
 * Reads a name with a break behind it and then what is said of it: "jaundice, none at all" is no
 * jaundice at all, "posture, not flexed" that it is not. The words are in {@code cues.txt}.
 */
final class Headings {
  private static final int LONGEST_NAME = 4;
  private static final int LONGEST_TAIL = 5;
  private static final String NO = "no";

  private final LayLexicon lexicon;
  private final List<String> words;
  private final List<List<String>> chunks = new ArrayList<>();

  Headings(LayLexicon lexicon, List<String> words) {
    this.lexicon = lexicon;
    this.words = words;
    Breaks breaks = new Breaks(words);
    for (int from = 0; from <= words.size(); from = breaks.to(from) + 1) {
      chunks.add(words.subList(from, breaks.to(from)));
    }
  }

  /** The words with each name put into the stretch that says something of it. */
  List<String> joined() {
    if (chunks.stream().skip(1).noneMatch(this::isOfBefore)) {
      return words;
    }
    List<List<String>> read = new ArrayList<>();
    boolean free = true;
    for (int i = 0; i < chunks.size(); i++) {
      List<String> name = chunks.get(i);
      boolean heads =
          free && i + 1 < chunks.size() && isOfBefore(chunks.get(i + 1)) && isName(name);
      read.add(heads ? said(name, chunks.get(i + 1)) : name);
      // "Rash, bruising, none": who knows how far it reaches.
      free = heads || !isNamed(name);
      i += heads ? 1 : 0;
    }
    List<String> joined = new ArrayList<>();
    for (List<String> chunk : read) {
      joined.addAll(joined.isEmpty() ? List.of() : List.of(TypedText.BREAK));
      joined.addAll(chunk);
    }
    return joined;
  }

  private boolean isOfBefore(List<String> chunk) {
    return !chunk.isEmpty()
        && chunk.size() <= LONGEST_TAIL
        && (lexicon.isListed("none-of-it", chunk.get(0))
                && (chunk.size() == 1 || lexicon.isListed("none-behind", chunk.get(1)))
            || lexicon.isListed("said-of-heading", chunk.get(0)));
  }

  private List<String> said(List<String> name, List<String> behind) {
    boolean none = lexicon.isListed("none-of-it", behind.get(0));
    List<String> said = new ArrayList<>(none ? List.of(NO) : List.of());
    said.addAll(name);
    said.addAll(none ? behind.subList(1, behind.size()) : behind);
    return said;
  }

  // Nothing but a name: no side, no denial, nothing that is said of it.
  private boolean isName(List<String> chunk) {
    List<TermMatch> matches = lexicon.matches(chunk);
    boolean term =
        matches.size() == 1
            && matches.get(0).from() == 0
            && matches.get(0).to() == chunk.size()
            && !lexicon.denies(matches.get(0), chunk)
            && (matches.get(0).is(Sense.Kind.PART) || lexicon.isAbnormal(matches.get(0)));
    return !chunk.isEmpty()
        && chunk.size() <= LONGEST_NAME
        && (term || lexicon.isListed("heading", chunk));
  }

  private boolean isNamed(List<String> chunk) {
    return isName(chunk) || lexicon.matches(chunk).stream().allMatch(lexicon::isAbnormal);
  }
}
