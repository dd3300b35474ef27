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
}
