package tiptoe.graph;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import tiptoe.grammar.WordAutomaton;

/** Word automata for tests: a tree of phrases without costs. */
final class Words {
  private Words() {}

  static WordAutomaton of(String... phrases) {
    List<Map<String, Integer>> arcs = new ArrayList<>(List.of(new TreeMap<>()));
    List<Integer> ends = new ArrayList<>();
    for (String phrase : phrases) {
      int at = 0;
      for (String word : phrase.split(" ")) {
        Integer next = arcs.get(at).get(word);
        if (next == null) {
          next = arcs.size();
          arcs.get(at).put(word, next);
          arcs.add(new TreeMap<>());
        }
        at = next;
      }
      ends.add(at);
    }
    List<WordAutomaton.State> states = new ArrayList<>();
    for (int number = 0; number < arcs.size(); number++) {
      List<WordAutomaton.Arc> out = new ArrayList<>();
      arcs.get(number).forEach((word, next) -> out.add(new WordAutomaton.Arc(word, 0, next)));
      float finalCost = ends.contains(number) ? 0 : Float.POSITIVE_INFINITY;
      states.add(new WordAutomaton.State(finalCost, out));
    }
    return new WordAutomaton(states);
  }
}
