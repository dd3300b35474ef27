package tiptoe.language.tagger;

import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Stream;

/**
 * The forms of the words of the lexicon that it does not list: plurals and singulars of structures
 * and findings, and what is done of findings that are not normal ("clunking" of "clunk"). Of normal
 * ones there are none: what is clearing is not clear.
 *
 * @param listed every word of the lexicon
 * @param nouns words of structures and of findings that are not normal
 * @param abnormal words that are by themselves a finding that is not normal
 */
record WordForms(Set<String> listed, Set<String> nouns, Set<String> abnormal) {
  private static final int SHORTEST = 4;

  static WordForms of(
      List<Term> terms, Collection<List<List<String>>> lists, Predicate<Sense> isAbnormal) {
    Set<String> listed = new HashSet<>();
    Set<String> nouns = new HashSet<>();
    Set<String> abnormal = new HashSet<>();
    lists.forEach(list -> list.forEach(listed::addAll));
    for (Term term : terms) {
      listed.addAll(term.words());
      boolean isWrong = isAbnormal.test(term.sense());
      if (term.sense().kind() == Sense.Kind.PART || isWrong) {
        nouns.add(term.words().get(term.words().size() - 1));
      }
      if (isWrong && term.words().size() == 1) {
        abnormal.add(term.words().get(0));
      }
    }
    return new WordForms(Set.copyOf(listed), Set.copyOf(nouns), Set.copyOf(abnormal));
  }

  /** The word, or the form of it that is listed. */
  String known(String word) {
    if (word.length() < SHORTEST || listed.contains(word)) {
      return word;
    }
    Stream<String> number =
        Stream.of(word + "s", stem(word, "s"), stem(word, "es")).filter(nouns::contains);
    Stream<String> deed =
        Stream.of("ing", "ed")
            .map(ending -> stem(word, ending))
            .flatMap(stem -> Stream.of(stem, stem + "e", stem + "s", single(stem)))
            .filter(abnormal::contains);
    return Stream.concat(number, deed).findFirst().orElse(word);
  }

  private static String stem(String word, String ending) {
    return word.endsWith(ending) ? word.substring(0, word.length() - ending.length()) : "";
  }

  // "Flaring" has one r, "slipping" two.
  private static String single(String stem) {
    int last = stem.length() - 1;
    return last > 1 && stem.charAt(last) == stem.charAt(last - 1) ? stem.substring(0, last) : "";
  }
}
