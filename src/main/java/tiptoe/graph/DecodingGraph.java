package tiptoe.graph;

import java.util.List;

/**
 * A decoding graph: a transducer from transition-ids to words, as Kaldi's HCLG.
 *
 * @param start number of the start state
 * @param states the states by number
 * @param words the word of each out-label; label 0 is empty, 1 is filler
 */
public record DecodingGraph(int start, List<State> states, List<String> words) {
  /** The word that stands for speech which is no phrase. */
  public static final String FILLER = "[unk]";

  /** Label of {@link #FILLER}. */
  static final int FILLER_LABEL = 1;

  /** Stands for the state's own number as a target, since equal states are found before that. */
  static final int SELF = -1;

  /**
   * One state.
   *
   * @param finalCost cost of ending here; infinite where the utterance cannot end
   */
  record State(float finalCost, List<Arc> arcs) {
    State {
      arcs = List.copyOf(arcs);
    }

    static State of(List<Arc> arcs) {
      return new State(Float.POSITIVE_INFINITY, arcs);
    }
  }

  /**
   * One arc.
   *
   * @param in a transition-id, 0 for none
   * @param out a word label, 0 for none
   * @param target number of a state or {@link #SELF}
   */
  record Arc(int in, int out, float cost, int target) {
    /** An arc that consumes no sound and brings no word. */
    static Arc empty(float cost, int target) {
      return new Arc(0, 0, cost, target);
    }
  }

  public DecodingGraph {
    states = List.copyOf(states);
    words = List.copyOf(words);
  }

  public int stateCount() {
    return states.size();
  }

  public int arcCount() {
    return states.stream().mapToInt(state -> state.arcs().size()).sum();
  }
}
