package tiptoe.grammar;

import java.util.List;

/**
 * A deterministic automaton without empty arcs over the words of one phrase. State 0 is the start;
 * costs are natural-log penalties, 0 or more, lower is likelier.
 *
 * @param states the states, by number; at least one
 */
public record WordAutomaton(List<State> states) {

  /**
   * One state.
   *
   * @param finalCost cost of ending the phrase here; {@link Float#POSITIVE_INFINITY} where it
   *     cannot end
   * @param arcs arcs out of the state, at most one for each word
   */
  public record State(float finalCost, List<Arc> arcs) {
    public State {
      arcs = List.copyOf(arcs);
    }

    /** Whether a phrase may end here. */
    public boolean isFinal() {
      return finalCost < Float.POSITIVE_INFINITY;
    }
  }

  /**
   * One spoken word.
   *
   * @param word the word, lower case, no spaces
   * @param cost natural-log penalty, 0 or more
   * @param next number of the state behind the word
   */
  public record Arc(String word, float cost, int next) {}

  public WordAutomaton {
    states = List.copyOf(states);
    if (states.isEmpty()) {
      throw new IllegalArgumentException("expected at least one state, found none");
    }
  }

  /** The cost of saying these words as one phrase; infinite where it is none. */
  public float cost(List<String> words) {
    float cost = 0;
    int at = 0;
    for (String word : words) {
      Arc arc =
          states.get(at).arcs().stream()
              .filter(a -> a.word().equals(word))
              .findFirst()
              .orElse(null);
      if (arc == null) {
        return Float.POSITIVE_INFINITY;
      }
      cost += arc.cost();
      at = arc.next();
    }
    return cost + states.get(at).finalCost();
  }

  /** Number of arcs of all states. */
  public int arcCount() {
    return states.stream().mapToInt(state -> state.arcs().size()).sum();
  }
}
