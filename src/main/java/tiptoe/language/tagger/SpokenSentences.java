package tiptoe.language.tagger;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.function.BiConsumer;
import tiptoe.language.NumberWords;

/**
 * Sentences as clinicians say them, each with many like it: another side, other numbers, other
 * words of the same structure and value, another structure with a finding of its own. So one
 * sentence teaches how any finding is said.
 */
final class SpokenSentences {
  /** Words of which each may stand in the place of another. */
  private static final List<List<String>> INTERCHANGEABLE =
      List.of(
          digits(),
          NumberWords.TENS,
          NumberWords.BELOW_TWENTY.subList(10, 20),
          List.of("left", "right"),
          List.of("he", "she"),
          List.of("he's", "she's"),
          List.of("his", "her"));

  private static final Map<String, List<String>> ALIKE = new HashMap<>();

  static {
    INTERCHANGEABLE.forEach(all -> all.forEach(word -> ALIKE.put(word, all)));
  }

  private final LayLexicon lexicon;
  private final Random random;

  /** Step, kind, value and whether both are meant, to its terms. */
  private final Map<String, List<List<String>>> terms = new HashMap<>();

  /** Step and kind to its terms, in the order of value and of whether both are meant. */
  private final Map<String, List<List<String>>> ofKind = new HashMap<>();

  /** Steps that have a value of this kind: normal or not. */
  private final List<String> steps;

  SpokenSentences(LayLexicon lexicon, long seed) {
    this.lexicon = lexicon;
    this.random = new Random(seed);
    for (Term term : lexicon.terms()) {
      Sense sense = term.sense();
      if (sense.kind() != Sense.Kind.CUE) {
        terms.computeIfAbsent(key(sense), key -> new ArrayList<>()).add(term.words());
      }
    }
    steps =
        lexicon.terms().stream()
            .map(Term::sense)
            .filter(sense -> sense.kind() == Sense.Kind.VALUE)
            .map(Sense::step)
            .distinct()
            .sorted()
            .toList();
  }

  /** In an order that keeps what was drawn when the sentences were measured: zero last. */
  private static List<String> digits() {
    List<String> digits = new ArrayList<>(NumberWords.BELOW_TWENTY.subList(1, 10));
    digits.add(NumberWords.BELOW_TWENTY.get(0));
    return digits;
  }

  private static String key(Sense sense) {
    return sense.step() + " " + sense.kind() + " " + sense.value() + " " + sense.pair();
  }

  /**
   * Gives a sentence and others like it.
   *
   * @param others how many others
   * @param into takes the words of each and what it counts; all together they count 1
   */
  void like(List<String> words, int others, double own, BiConsumer<List<String>, Double> into) {
    List<TermMatch> matches = lexicon.matches(words);
    if (matches.isEmpty() && words.stream().noneMatch(ALIKE::containsKey)) {
      into.accept(words, 1.0); // nothing in it can be another
      return;
    }
    into.accept(words, own);
    for (int i = 0; i < others; i++) {
      into.accept(other(words, matches), (1 - own) / others);
    }
  }

  private List<String> other(List<String> words, List<TermMatch> matches) {
    Map<String, String> steps = new HashMap<>();
    Map<String, String> swapped = new HashMap<>();
    List<String> made = new ArrayList<>();
    int at = 0;
    for (TermMatch match : matches) {
      same(words.subList(at, match.from()), swapped, made);
      made.addAll(term(words.subList(match.from(), match.to()), match, steps));
      at = match.to();
    }
    same(words.subList(at, words.size()), swapped, made);
    return made;
  }

  private void same(List<String> words, Map<String, String> swapped, List<String> made) {
    for (String word : words) {
      List<String> alike = ALIKE.get(word);
      made.add(alike == null ? word : swapped.computeIfAbsent(word, w -> pick(alike)));
    }
  }

  private List<String> term(List<String> words, TermMatch match, Map<String, String> steps) {
    Sense sense =
        match.senses().stream()
            .filter(one -> one.kind() != Sense.Kind.CUE)
            .findFirst()
            .orElse(null);
    if (sense == null || random.nextInt(3) == 0) {
      return words;
    }
    String step =
        steps.computeIfAbsent(sense.step(), s -> random.nextBoolean() ? s : pick(this.steps));
    List<List<String>> found =
        step.equals(sense.step())
            ? terms.getOrDefault(key(sense), List.of())
            : ofKind.computeIfAbsent(step + " " + sense.kind() + " ", this::beginning);
    return found.isEmpty() ? words : pick(found);
  }

  private List<List<String>> beginning(String kind) {
    return terms.entrySet().stream()
        .filter(one -> one.getKey().startsWith(kind))
        .sorted(Map.Entry.comparingByKey())
        .flatMap(one -> one.getValue().stream())
        .toList();
  }

  private <T> T pick(List<T> of) {
    return of.get(random.nextInt(of.size()));
  }
}
