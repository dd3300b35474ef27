package tiptoe.graph;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import tiptoe.graph.DecodingGraph.Arc;
import tiptoe.graph.DecodingGraph.State;

/**
 * Follows transition-ids through a graph as a decoder would, without sound: the words of every way
 * that ends in a final state, each with its least cost.
 */
final class GraphWalker {
  private record Place(int state, List<Integer> labels) {}

  private final DecodingGraph graph;

  GraphWalker(DecodingGraph graph) {
    this.graph = graph;
  }

  /** What is said by these transition-ids, with costs. */
  Map<String, Double> said(List<Integer> transitionIds) {
    Map<Place, Double> here = withEmptyArcs(Map.of(new Place(graph.start(), List.of()), 0.0));
    for (int id : transitionIds) {
      Map<Place, Double> next = new HashMap<>();
      here.forEach((place, cost) -> follow(place, cost, id, next));
      here = withEmptyArcs(next);
    }
    Map<String, Double> said = new HashMap<>();
    here.forEach(
        (place, cost) -> {
          State state = graph.states().get(place.state);
          if (state.finalCost() < Float.POSITIVE_INFINITY) {
            said.merge(words(place.labels), cost + state.finalCost(), Math::min);
          }
        });
    return said;
  }

  private String words(List<Integer> labels) {
    return String.join(" ", labels.stream().map(graph.words()::get).toList());
  }

  private Map<Place, Double> withEmptyArcs(Map<Place, Double> places) {
    Map<Place, Double> all = new HashMap<>(places);
    Deque<Place> open = new ArrayDeque<>(places.keySet());
    while (!open.isEmpty()) {
      Place place = open.remove();
      Map<Place, Double> further = new HashMap<>();
      follow(place, all.get(place), 0, further);
      further.forEach(
          (target, cost) -> {
            if (cost < all.getOrDefault(target, Double.POSITIVE_INFINITY)) {
              all.put(target, cost);
              open.add(target);
            }
          });
    }
    return all;
  }

  private void follow(Place from, double cost, int id, Map<Place, Double> into) {
    for (Arc arc : graph.states().get(from.state).arcs()) {
      if (arc.in() == id) {
        int target = arc.target() == DecodingGraph.SELF ? from.state : arc.target();
        List<Integer> labels = new ArrayList<>(from.labels);
        if (arc.out() != 0) {
          labels.add(arc.out());
        }
        into.merge(new Place(target, List.copyOf(labels)), cost + arc.cost(), Math::min);
      }
    }
  }
}
