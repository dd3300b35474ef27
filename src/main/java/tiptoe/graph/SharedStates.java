package tiptoe.graph;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import tiptoe.graph.DecodingGraph.Arc;
import tiptoe.graph.DecodingGraph.State;

/**
 * The states of a graph under construction. States that are built after all they lead to are kept
 * once however often they are asked for, which makes the graph minimal from its ends backwards;
 * states that close a loop are reserved first and filled later.
 */
final class SharedStates {
  private final List<State> states = new ArrayList<>();
  private final Map<State, Integer> numbers = new HashMap<>();

  /** The number of a state with this content, the same for the same content. */
  int share(State state) {
    Integer known = numbers.get(state);
    if (known != null) {
      return known;
    }
    int number = states.size();
    states.add(state);
    numbers.put(state, number);
    return number;
  }

  /**
   * A state in which a phone is sounding.
   *
   * @param forward the transition-id that entered the phone
   * @param onward arcs out of it, without the one that stays
   */
  int sounding(int forward, List<Arc> onward) {
    List<Arc> arcs = new ArrayList<>(onward.size() + 1);
    arcs.add(
        new Arc(TransitionModel.selfLoopOf(forward), 0, PhoneCosts.TRANSITION, DecodingGraph.SELF));
    arcs.addAll(onward);
    return share(State.of(arcs));
  }

  /** The number of a state whose content comes later. */
  int reserve() {
    states.add(null);
    return states.size() - 1;
  }

  void fill(int number, State state) {
    if (states.get(number) != null) {
      throw new IllegalStateException("expected an empty state, found " + states.get(number));
    }
    states.set(number, state);
  }

  List<State> states() {
    return Collections.unmodifiableList(states);
  }
}
