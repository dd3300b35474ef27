package tiptoe.grammar;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.PriorityQueue;
import java.util.concurrent.ConcurrentHashMap;
import tiptoe.grammar.PhraseNetwork.Arc;

/**
 * What can come next from each state once empty arcs and tags are walked: made when first asked
 * for, indexed by word, and kept. The cheapest way to each state behind empty arcs is taken; of
 * equals, the one written first.
 */
final class Closures {

  /** Tags met on the way, newest first; null for none. */
  record Trail(Trail before, String tag) {}

  /** A word that can come next. */
  record Exit(int next, float cost, Trail tags) {}

  /**
   * What can follow a state.
   *
   * @param exits the ways on, by word
   * @param ending the way to the end of the phrase, or null
   */
  record Closure(Map<String, List<Exit>> exits, Exit ending) {}

  private record Reached(int state, float cost, Trail tags, int order) {}

  private static final Comparator<Reached> CHEAPEST =
      Comparator.comparingDouble(Reached::cost).thenComparingInt(Reached::order);

  private final PhraseNetwork network;
  private final Map<Integer, Closure> known = new ConcurrentHashMap<>();

  Closures(PhraseNetwork network) {
    this.network = network;
  }

  Closure of(int state) {
    Closure closure = known.get(state); // asked for millions of times; that below may lock
    return closure != null ? closure : known.computeIfAbsent(state, this::compute);
  }

  private Closure compute(int from) {
    Map<String, List<Exit>> exits = new LinkedHashMap<>();
    Exit ending = null;
    Map<Integer, Boolean> settled = new HashMap<>();
    PriorityQueue<Reached> queue = new PriorityQueue<>(CHEAPEST);
    queue.add(new Reached(from, 0, null, 0));
    int order = 1;
    while (!queue.isEmpty()) {
      Reached here = queue.remove();
      if (settled.put(here.state, true) != null) {
        continue;
      }
      if (here.state == network.end()) {
        ending = new Exit(here.state, here.cost, here.tags);
      }
      for (Arc arc : network.arcsFrom(here.state)) {
        float cost = here.cost + arc.cost();
        if (arc.word() != null) {
          exits
              .computeIfAbsent(arc.word(), word -> new ArrayList<>(1))
              .add(new Exit(arc.to(), cost, here.tags));
        } else {
          Trail tags = arc.tag() == null ? here.tags : new Trail(here.tags, arc.tag());
          queue.add(new Reached(arc.to(), cost, tags, order++));
        }
      }
    }
    return new Closure(exits, ending);
  }
}
