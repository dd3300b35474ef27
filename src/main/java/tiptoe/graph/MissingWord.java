package tiptoe.graph;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedList;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Predicate;
import tiptoe.grammar.WordAutomaton;

/**
 * A word of the grammars that cannot be said for want of a pronunciation.
 *
 * @param phrase one of the shortest phrases that hold the word
 */
public record MissingWord(String word, String phrase) {

  @Override
  public String toString() {
    return "expected a pronunciation of \"%s\" in pronunciations.txt or the model (phrase: %s), found none"
        .formatted(word, phrase);
  }

  /** Every word that is not sayable, in alphabetical order. */
  static List<MissingWord> find(WordAutomaton phrases, Predicate<String> sayable) {
    SortedMap<String, String> found = new TreeMap<>();
    Map<Integer, List<String>> begins = begins(phrases);
    Map<Integer, List<String>> ends = ends(phrases);
    begins.forEach(
        (number, begin) -> {
          for (WordAutomaton.Arc arc : phrases.states().get(number).arcs()) {
            if (!sayable.test(arc.word()) && !found.containsKey(arc.word())) {
              List<String> phrase = new ArrayList<>(begin);
              phrase.add(arc.word());
              phrase.addAll(ends.getOrDefault(arc.next(), List.of()));
              found.put(arc.word(), String.join(" ", phrase));
            }
          }
        });
    return found.entrySet().stream().map(e -> new MissingWord(e.getKey(), e.getValue())).toList();
  }

  /** The fewest words that lead to each state, breadth first. */
  private static Map<Integer, List<String>> begins(WordAutomaton phrases) {
    Map<Integer, List<String>> words = new LinkedHashMap<>(Map.of(0, List.of()));
    Deque<Integer> open = new ArrayDeque<>(List.of(0));
    while (!open.isEmpty()) {
      int number = open.remove();
      for (WordAutomaton.Arc arc : phrases.states().get(number).arcs()) {
        if (!words.containsKey(arc.next())) {
          List<String> longer = new ArrayList<>(words.get(number));
          longer.add(arc.word());
          words.put(arc.next(), longer);
          open.add(arc.next());
        }
      }
    }
    return words;
  }

  /** The fewest words that lead from each state to an end. */
  private static Map<Integer, List<String>> ends(WordAutomaton phrases) {
    Map<Integer, List<String>> words = new HashMap<>();
    boolean changed = true;
    while (changed) {
      changed = false;
      for (int number = phrases.states().size() - 1; number >= 0; number--) {
        List<String> best = shortest(phrases.states().get(number), words);
        if (best != null && (words.get(number) == null || best.size() < words.get(number).size())) {
          words.put(number, best);
          changed = true;
        }
      }
    }
    return words;
  }

  private static List<String> shortest(
      WordAutomaton.State state, Map<Integer, List<String>> words) {
    if (state.isFinal()) {
      return List.of();
    }
    LinkedList<String> best = null;
    for (WordAutomaton.Arc arc : state.arcs()) {
      List<String> rest = words.get(arc.next());
      if (rest != null && (best == null || rest.size() + 1 < best.size())) {
        best = new LinkedList<>(rest);
        best.addFirst(arc.word());
      }
    }
    return best;
  }
}
