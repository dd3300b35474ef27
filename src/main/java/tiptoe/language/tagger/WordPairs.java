package tiptoe.language.tagger;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Predicate;
import tiptoe.grammar.PhraseNetwork;
import tiptoe.grammar.WordAutomaton;
import tiptoe.grammar.WordAutomaton.Arc;
import tiptoe.grammar.WordAutomaton.State;
import tiptoe.language.TypedText;
import tiptoe.protocol.Protocol;

/**
 * How likely one word follows another when someone examines a newborn in words of his own: a bigram
 * with back-off (absolute discounting, interpolated; Ney, Essen and Kneser 1994), counted in the
 * sentences the tagger learns from. It holds the words of the grammars, of the lay lexicon, and
 * common ones.
 *
 * <p>As an automaton: a state a word, left by the words that were seen behind it. Ending a phrase
 * is backing off, since any word can begin the next one.
 */
public final class WordPairs {
  private static final String COMMON = "/tiptoe/language/common-words.txt";
  private static final long SEED = 11;

  /** Changed whenever the pairs are counted in another way. */
  private static final String VERSION = "1 ";

  /** Taken off each count, for pairs that were not seen. */
  private static final double DISCOUNT = 0.75;

  /** A word that is only in a list counts as if it had been said so often. */
  private static final int LISTED = 2;

  private static final int COMMONLY = 12;

  private final SortedMap<String, Integer> words = new TreeMap<>();
  private final Map<String, SortedMap<String, Integer>> pairs = new HashMap<>();
  private final Predicate<String> sayable;
  private double all;

  private WordPairs(Predicate<String> sayable) {
    this.sayable = sayable;
  }

  /**
   * Counts the pairs and makes an automaton of them, the same for the same grammars and lexicon.
   *
   * @param sayable whether there is a pronunciation of a word; others are left out
   */
  public static WordAutomaton automaton(
      PhraseNetwork network, Protocol protocol, TypedText typed, Predicate<String> sayable)
      throws IOException {
    LayLexicon lexicon = LayLexiconReader.shipped(protocol, typed::words);
    WordPairs pairs = new WordPairs(sayable);
    new TrainingSentences(lexicon, protocol, SEED)
        .all(network)
        .forEach(sentence -> pairs.count(sentence.words()));
    network.words().forEach(word -> pairs.count(word, LISTED));
    lexicon.terms().forEach(term -> pairs.count(term.words()));
    commonWords().forEach(word -> pairs.count(word, COMMONLY));
    return pairs.automaton();
  }

  /** What the pairs come from beside grammars, lexicon and protocol. */
  public static String identity() throws IOException {
    return VERSION + String.join(" ", commonWords());
  }

  static List<String> commonWords() throws IOException {
    try (InputStream in = WordPairs.class.getResourceAsStream(COMMON);
        BufferedReader lines =
            new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8))) {
      return lines
          .lines()
          .filter(line -> !line.startsWith("#") && !line.isBlank())
          .flatMap(line -> List.of(line.strip().split("\\s+")).stream())
          .toList();
    }
  }

  private void count(String word, int times) {
    if (sayable.test(word)) {
      words.merge(word, times, Integer::sum);
      all += times;
    }
  }

  private void count(List<String> sentence) {
    String before = null;
    for (String word : sentence) {
      count(word, 1);
      String next = words.containsKey(word) ? word : null;
      if (before != null && next != null) {
        pairs.computeIfAbsent(before, w -> new TreeMap<>()).merge(next, 1, Integer::sum);
      }
      before = next;
    }
  }

  private WordAutomaton automaton() {
    Map<String, Integer> numbers = new HashMap<>();
    words.keySet().forEach(word -> numbers.put(word, numbers.size() + 1));
    List<State> states = new ArrayList<>();
    states.add(
        new State(
            Float.POSITIVE_INFINITY,
            words.keySet().stream()
                .map(word -> new Arc(word, cost(likelihood(word)), numbers.get(word)))
                .toList()));
    words.keySet().forEach(word -> states.add(behind(word, numbers)));
    return new WordAutomaton(states);
  }

  private State behind(String word, Map<String, Integer> numbers) {
    SortedMap<String, Integer> next = pairs.getOrDefault(word, new TreeMap<>());
    if (next.isEmpty()) {
      return new State(0, List.of());
    }
    double seen = next.values().stream().mapToInt(Integer::intValue).sum();
    double left = DISCOUNT * next.size() / seen;
    List<Arc> arcs = new ArrayList<>();
    next.forEach(
        (other, times) -> {
          double likelihood = (times - DISCOUNT) / seen + left * likelihood(other);
          arcs.add(new Arc(other, cost(likelihood), numbers.get(other)));
        });
    return new State(cost(left), arcs);
  }

  private double likelihood(String word) {
    return words.get(word) / all;
  }

  private static float cost(double likelihood) {
    return (float) Math.max(0, -Math.log(likelihood));
  }
}
