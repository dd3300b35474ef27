package tiptoe.grammar;

import java.util.List;

/**
 * A deterministic automaton over the words of one phrase. State 0 is the start; costs are
 * natural-log penalties, 0 or more, lower is likelier.
 *
 * @param states the states, by number; at least one
 * @param opening the state in which an utterance begins; 0 where it is no other than that of any
 *     phrase
 */
public record WordAutomaton(List<State> states, int opening) {

  /**
   * One state.
   *
   * @param finalCost cost of ending the phrase here; {@link Float#POSITIVE_INFINITY} where it
   *     cannot end
   * @param arcs arcs out of the state, at most one for each word
   * @param backOff where words go on that no arc has; null for nowhere
   */
  public record State(float finalCost, List<Arc> arcs, BackOff backOff) {
    public State {
      arcs = List.copyOf(arcs);
    }

    /** A state out of which only its arcs lead. */
    public State(float finalCost, List<Arc> arcs) {
      this(finalCost, arcs, null);
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

  /**
   * A way out of a state without a word: to one that remembers less of what was said.
   *
   * @param cost natural-log penalty, 0 or more
   * @param next number of that state
   */
  public record BackOff(float cost, int next) {}

  /** An automaton whose utterances begin as any phrase does. */
  public WordAutomaton(List<State> states) {
    this(states, 0);
  }

  public WordAutomaton {
    states = List.copyOf(states);
    if (states.isEmpty()) {
      throw new IllegalArgumentException("expected at least one state, found none");
    }
  }

  /** The cost of saying these words as one utterance; infinite where it is no phrase. */
  public float cost(List<String> words) {
    float cost = 0;
    int at = opening;
    for (String word : words) {
      Arc arc = arc(at, word);
      while (arc == null) {
        BackOff backOff = states.get(at).backOff();
        if (backOff == null) {
          return Float.POSITIVE_INFINITY;
        }
        cost += backOff.cost();
        at = backOff.next();
        arc = arc(at, word);
      }
      cost += arc.cost();
      at = arc.next();
    }
    return cost + states.get(at).finalCost();
  }

  private Arc arc(int state, String word) {
    return states.get(state).arcs().stream()
        .filter(arc -> arc.word().equals(word))
        .findFirst()
        .orElse(null);
  }

  /** Number of arcs of all states. */
  public int arcCount() {
    return states.stream().mapToInt(state -> state.arcs().size()).sum();
  }
}
