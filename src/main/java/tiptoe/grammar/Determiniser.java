package tiptoe.grammar;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import tiptoe.grammar.Closures.Closure;
import tiptoe.grammar.Closures.Exit;
import tiptoe.grammar.WeightedStates.Link;
import tiptoe.grammar.WeightedStates.Node;

/**
 * Makes one state of all network states that the same words lead to (subset construction of
 * weighted automata, after Mohri 1997). Each member of such a set remembers how much dearer it was
 * than the cheapest, so that a phrase keeps the cost of its cheapest reading exactly.
 *
 * <p>Loops of different cost over the same words would let those remainders grow for ever. They are
 * whole numbers of 1/1024 and held at {@link #MOST_REMAINDER}, so there are finitely many and the
 * construction ends; a reading that falls 16 behind another (9 millionths as likely) may then be
 * rated a little too well, never a phrase accepted or refused wrongly.
 */
final class Determiniser {
  static final int UNITS = 1024;
  static final int MOST_STATES = 500_000;
  private static final int MOST_REMAINDER = 16 * UNITS;

  private final Closures closures;
  private final Map<SortedMap<Integer, Integer>, Integer> numbers = new HashMap<>();
  private final List<SortedMap<Integer, Integer>> subsets = new ArrayList<>();

  Determiniser(PhraseNetwork network) {
    this.closures = network.closures();
  }

  WordAutomaton automaton() {
    number(new TreeMap<>(Map.of(PhraseNetwork.START, 0)));
    List<Node> nodes = new ArrayList<>();
    while (nodes.size() < subsets.size()) {
      nodes.add(expand(subsets.get(nodes.size())));
    }
    return new WeightedStates(nodes).pushed().minimal().automaton();
  }

  private Node expand(SortedMap<Integer, Integer> subset) {
    SortedMap<String, SortedMap<Integer, Integer>> byWord = new TreeMap<>();
    int finalCost = Node.NOT_FINAL;
    for (Map.Entry<Integer, Integer> member : subset.entrySet()) {
      Closure closure = closures.of(member.getKey());
      int sofar = member.getValue();
      closure.exits().forEach((word, exits) -> merge(byWord, word, exits, sofar));
      if (closure.ending() != null) {
        finalCost = Math.min(finalCost, sofar + units(closure.ending()));
      }
    }
    List<Link> links = new ArrayList<>();
    byWord.forEach(
        (word, targets) -> {
          int least = targets.values().stream().mapToInt(cost -> cost).min().orElseThrow();
          targets.replaceAll((state, cost) -> Math.min(cost - least, MOST_REMAINDER));
          links.add(new Link(word, least, number(targets)));
        });
    return new Node(finalCost, links);
  }

  private static void merge(
      SortedMap<String, SortedMap<Integer, Integer>> byWord,
      String word,
      List<Exit> exits,
      int sofar) {
    SortedMap<Integer, Integer> targets = byWord.computeIfAbsent(word, w -> new TreeMap<>());
    exits.forEach(exit -> targets.merge(exit.next(), sofar + units(exit), Math::min));
  }

  private static int units(Exit exit) {
    return Math.round(exit.cost() * UNITS);
  }

  private int number(SortedMap<Integer, Integer> subset) {
    return numbers.computeIfAbsent(
        subset,
        fresh -> {
          if (subsets.size() == MOST_STATES) {
            throw new IllegalArgumentException(
                "expected a grammar of at most " + MOST_STATES + " word states, found more");
          }
          subsets.add(fresh);
          return subsets.size() - 1;
        });
  }
}
