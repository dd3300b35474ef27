package tiptoe.language.tagger;

import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/**
 * A place in a sentence where a term of the lexicon stands.
 *
 * @param from first word, from 0
 * @param to behind the last word
 * @param words how many words the term itself has
 * @param senses what it can stand for
 */
record TermMatch(int from, int to, int words, List<Sense> senses) {
  TermMatch {
    senses = List.copyOf(senses);
  }

  boolean is(Sense.Kind kind) {
    return senses.stream().anyMatch(sense -> sense.kind() == kind);
  }

  boolean isCue(String list) {
    return senses.stream().anyMatch(sense -> sense.isCue(list));
  }

  /** The same with senses of one kind only. */
  TermMatch only(Sense.Kind... kinds) {
    List<Sense.Kind> kept = List.of(kinds);
    return new TermMatch(
        from, to, words, senses.stream().filter(sense -> kept.contains(sense.kind())).toList());
  }

  Set<String> steps(Sense.Kind kind) {
    return senses.stream()
        .filter(sense -> sense.kind() == kind)
        .map(Sense::step)
        .collect(Collectors.toCollection(java.util.LinkedHashSet::new));
  }

  /** Whether it counts only beside a structure. */
  boolean isBound() {
    return senses.stream().allMatch(Sense::bound);
  }

  void addTo(Set<Integer> words) {
    IntStream.range(from, to).forEach(words::add);
  }

  boolean overlaps(TermMatch other) {
    return from < other.to && other.from < to;
  }
}
