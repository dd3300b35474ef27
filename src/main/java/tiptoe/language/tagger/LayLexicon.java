package tiptoe.language.tagger;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** The lay lexicon: words of the ward and what they stand for. */
final class LayLexicon {
  private static final int MOST_LITTLE_WORDS = 2;
  private static final Set<String> KEEP_THEIR_S =
      Set.of("he's", "she's", "it's", "there's", "that's", "let's", "here's", "what's");

  private final List<Term> terms;
  private final Map<String, List<Term>> byFirstWord = new HashMap<>();
  private final Map<String, List<List<String>>> lists;
  private final Map<String, List<List<String>>> contexts;
  private final Map<String, String> opposites;
  private final Set<String> anywhere;

  /**
   * @param terms every term of every step, and those of the cue lists
   * @param lists the lists of the section [words]
   * @param contexts step to the words that must be in the sentence for its bound parts
   * @param opposites {@code step value} to the value that its denial comes to
   * @param anywhere steps whose findings can be in any place
   */
  LayLexicon(
      List<Term> terms,
      Map<String, List<List<String>>> lists,
      Map<String, List<List<String>>> contexts,
      Map<String, String> opposites,
      Set<String> anywhere) {
    this.terms = List.copyOf(terms);
    this.lists = Map.copyOf(lists);
    this.contexts = Map.copyOf(contexts);
    this.opposites = Map.copyOf(opposites);
    this.anywhere = Set.copyOf(anywhere);
    terms.forEach(
        term ->
            byFirstWord.computeIfAbsent(term.words().get(0), word -> new ArrayList<>()).add(term));
  }

  List<Term> terms() {
    return terms;
  }

  boolean isAnywhere(String step) {
    return anywhere.contains(step);
  }

  Optional<String> opposite(String step, String value) {
    return Optional.ofNullable(opposites.get(step + " " + value));
  }

  /** Whether the sentence holds a term of this list. */
  boolean says(String list, List<String> words) {
    return lists.getOrDefault(list, List.of()).stream().anyMatch(term -> contains(words, term));
  }

  List<List<String>> list(String name) {
    return lists.getOrDefault(name, List.of());
  }

  private static boolean contains(List<String> words, List<String> term) {
    return java.util.Collections.indexOfSubList(words, term) >= 0;
  }

  boolean isLittle(String word) {
    return lists.get("little").contains(List.of(word));
  }

  /** Barlow's is Barlow, but it's stays. */
  static String plain(String word) {
    return word.endsWith("'s") && !KEEP_THEIR_S.contains(word)
        ? word.substring(0, word.length() - 2)
        : word;
  }

  /** Whether the match begins with a word that denies, such as "can't feel". */
  boolean denies(TermMatch match, List<String> words) {
    return list("no").contains(words.subList(match.from(), match.from() + 1));
  }

  /** The terms in a sentence, the longest first chosen, in the order of the words. */
  List<TermMatch> matches(List<String> words) {
    List<String> plain = words.stream().map(LayLexicon::plain).toList();
    List<TermMatch> all = new ArrayList<>();
    for (int at = 0; at < plain.size(); at++) {
      Map<List<Integer>, List<Sense>> here = new LinkedHashMap<>();
      for (Term term : byFirstWord.getOrDefault(plain.get(at), List.of())) {
        int end = end(term, plain, at);
        if (end > 0 && fits(term, plain)) {
          here.computeIfAbsent(List.of(end, term.words().size()), key -> new ArrayList<>())
              .add(term.sense());
        }
      }
      for (Map.Entry<List<Integer>, List<Sense>> found : here.entrySet()) {
        all.add(new TermMatch(at, found.getKey().get(0), found.getKey().get(1), found.getValue()));
      }
    }
    return longestFirst(all);
  }

  private static List<TermMatch> longestFirst(List<TermMatch> all) {
    List<TermMatch> kept = new ArrayList<>();
    all.stream()
        .sorted(
            Comparator.comparingInt(TermMatch::words)
                .reversed()
                .thenComparingInt(match -> match.to() - match.from())
                .thenComparingInt(TermMatch::from))
        .filter(match -> kept.stream().noneMatch(match::overlaps))
        .forEach(kept::add);
    kept.sort(Comparator.comparingInt(TermMatch::from));
    return kept;
  }

  // The index behind the term, which may have little words inside; 0 where it does not stand here.
  private int end(Term term, List<String> words, int from) {
    int at = from + 1;
    for (int i = 1; i < term.words().size(); i++) {
      String wanted = term.words().get(i);
      int skipped = 0;
      while (at < words.size()
          && !words.get(at).equals(wanted)
          && skipped < MOST_LITTLE_WORDS
          && term.sense().kind() != Sense.Kind.CUE
          && isLittle(words.get(at))) {
        at++;
        skipped++;
      }
      if (at >= words.size() || !words.get(at).equals(wanted)) {
        return 0;
      }
      at++;
    }
    return at;
  }

  private boolean fits(Term term, List<String> words) {
    Sense sense = term.sense();
    return sense.kind() != Sense.Kind.PART
        || !sense.bound()
        || !contexts.containsKey(sense.step())
        || contexts.get(sense.step()).stream().anyMatch(with -> contains(words, with));
  }
}
