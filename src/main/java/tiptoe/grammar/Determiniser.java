package tiptoe.grammar;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import tiptoe.grammar.Closures.Closure;
import tiptoe.grammar.Closures.Exit;
import tiptoe.grammar.WeightedStates.Link;
import tiptoe.grammar.WeightedStates.Node;

/**
 * Makes one state of all network states that the same words lead to (subset construction of
 * weighted automata, after Mohri 1997). Each member of such a set remembers how much dearer it was
 * than the cheapest, its remainder, so that a phrase keeps the cost of its cheapest reading.
 *
 * <p>Where readings of the same words loop at different costs, remainders would grow for ever. They
 * are held at {@link #MOST_REMAINDER}, and where that leaves too many states, rounded down to a
 * coarser grain, in the end to nothing. Then an unlikely reading may be rated too cheap, never too
 * dear, and what is accepted never changes.
 */
final class Determiniser {
  /** Costs are whole numbers of 1/1024, so that sums are exact and equal costs are equal. */
  static final int UNITS = 1024;

  /** A reading that falls 16 behind another is 9 millionths as likely. */
  static final int MOST_REMAINDER = 16 * UNITS;

  private static final int MOST_STATES = 500_000;

  /** States up to which a finer grain is preferred; ten times what an examination needs. */
  static final int ENOUGH_STATES = 50_000;

  private final Closures closures;
  private final int grain;
  private final Map<SortedMap<Integer, Integer>, Integer> numbers = new HashMap<>();
  private final List<SortedMap<Integer, Integer>> subsets = new ArrayList<>();

  private Determiniser(PhraseNetwork network, int grain) {
    this.closures = network.closures();
    this.grain = grain;
  }

  static WordAutomaton automaton(PhraseNetwork network) {
    int grain = 1;
    while (grain <= MOST_REMAINDER) {
      Optional<WordAutomaton> found = automaton(network, grain, ENOUGH_STATES);
      if (found.isPresent()) {
        return found.get();
      }
      grain *= 64;
    }
    return automaton(network, grain, MOST_STATES)
        .orElseThrow(
            () ->
                new IllegalArgumentException(
                    "expected a grammar of at most " + MOST_STATES + " word states, found more"));
  }

  /** The automaton at one grain, or nothing if there would be more than so many states. */
  static Optional<WordAutomaton> automaton(PhraseNetwork network, int grain, int most) {
    return new Determiniser(network, grain)
        .states(most)
        .map(states -> states.pushed().minimal().automaton());
  }

  private Optional<WeightedStates> states(int most) {
    number(new TreeMap<>(Map.of(PhraseNetwork.START, 0)));
    List<Node> nodes = new ArrayList<>();
    while (nodes.size() < subsets.size() && subsets.size() <= most) {
      nodes.add(expand(subsets.get(nodes.size())));
    }
    return subsets.size() <= most ? Optional.of(new WeightedStates(nodes)) : Optional.empty();
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
          targets.replaceAll((state, cost) -> remainder(cost - least));
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

  private int remainder(int cost) {
    return Math.min(cost, MOST_REMAINDER) / grain * grain;
  }

  private int number(SortedMap<Integer, Integer> subset) {
    return numbers.computeIfAbsent(
        subset,
        fresh -> {
          subsets.add(fresh);
          return subsets.size() - 1;
        });
  }
}
