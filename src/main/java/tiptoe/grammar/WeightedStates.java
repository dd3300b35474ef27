package tiptoe.grammar;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.PriorityQueue;

/**
 * A deterministic automaton with costs as whole units, on its way to a {@link WordAutomaton}. State
 * 0 is the start, and from every state an end can be reached (unless there is no phrase at all).
 */
record WeightedStates(List<Node> nodes) {

  /** A state; links are in alphabetical order of their words. */
  record Node(int finalCost, List<Link> links) {
    static final int NOT_FINAL = Integer.MAX_VALUE;

    boolean isFinal() {
      return finalCost < NOT_FINAL;
    }
  }

  record Link(String word, int cost, int next) {}

  /**
   * Moves costs as near to the start as they go, so that states with the same continuations become
   * equal and a decoder learns early what a word will cost. What is common to all phrases stays on
   * the first word: totals do not change.
   */
  WeightedStates pushed() {
    int[] rest = costsToEnd();
    List<Node> pushed = new ArrayList<>();
    for (int state = 0; state < nodes.size(); state++) {
      int before = state == 0 ? 0 : rest[state];
      Node node = nodes.get(state);
      int finalCost = node.isFinal() ? node.finalCost - before : Node.NOT_FINAL;
      pushed.add(
          new Node(
              finalCost,
              node.links.stream()
                  .map(l -> new Link(l.word, l.cost + rest[l.next] - before, l.next))
                  .toList()));
    }
    return new WeightedStates(pushed);
  }

  private int[] costsToEnd() {
    record Reached(int state, int cost) {}
    List<List<Reached>> incoming = new ArrayList<>();
    nodes.forEach(node -> incoming.add(new ArrayList<>(1)));
    for (int state = 0; state < nodes.size(); state++) {
      for (Link link : nodes.get(state).links) {
        incoming.get(link.next).add(new Reached(state, link.cost));
      }
    }
    int[] rest = new int[nodes.size()];
    Arrays.fill(rest, Integer.MAX_VALUE);
    PriorityQueue<Reached> queue = new PriorityQueue<>(Comparator.comparingInt(Reached::cost));
    for (int state = 0; state < nodes.size(); state++) {
      if (nodes.get(state).isFinal()) {
        queue.add(new Reached(state, nodes.get(state).finalCost));
      }
    }
    while (!queue.isEmpty()) {
      Reached here = queue.remove();
      if (rest[here.state] == Integer.MAX_VALUE) {
        rest[here.state] = here.cost;
        incoming
            .get(here.state)
            .forEach(in -> queue.add(new Reached(in.state, here.cost + in.cost)));
      }
    }
    return rest;
  }

  /** The least automaton with the same costs: Moore's partition refinement, loops or not. */
  WeightedStates minimal() {
    int[] block = new int[nodes.size()];
    int count = 1;
    while (true) {
      Map<Node, Integer> numbers = new HashMap<>();
      int[] refined = new int[nodes.size()];
      for (int state = 0; state < nodes.size(); state++) {
        refined[state] = numbers.computeIfAbsent(renumbered(state, block), n -> numbers.size());
      }
      if (numbers.size() == count) {
        return blocks(refined, count);
      }
      block = refined;
      count = numbers.size();
    }
  }

  private Node renumbered(int state, int[] number) {
    Node node = nodes.get(state);
    return new Node(
        node.finalCost,
        node.links.stream().map(l -> new Link(l.word, l.cost, number[l.next])).toList());
  }

  private WeightedStates blocks(int[] block, int count) {
    Node[] merged = new Node[count];
    for (int state = 0; state < nodes.size(); state++) {
      if (merged[block[state]] == null) {
        merged[block[state]] = renumbered(state, block);
      }
    }
    return new WeightedStates(List.of(merged));
  }

  WordAutomaton automaton() {
    return new WordAutomaton(nodes.stream().map(WeightedStates::state).toList());
  }

  private static WordAutomaton.State state(Node node) {
    float finalCost = node.isFinal() ? nats(node.finalCost) : Float.POSITIVE_INFINITY;
    return new WordAutomaton.State(
        finalCost,
        node.links.stream().map(l -> new WordAutomaton.Arc(l.word, nats(l.cost), l.next)).toList());
  }

  private static float nats(int units) {
    return (float) units / Determiniser.UNITS;
  }
}
