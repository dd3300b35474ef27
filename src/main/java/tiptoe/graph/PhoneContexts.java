package tiptoe.graph;

import java.io.IOException;
import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.Deque;

/**
 * Which forward transition-id a phone has after each left phone. The model's decision tree is not
 * among its files, but its run-time graph has been through it: walking that graph and keeping the
 * last phone shows the transition-id of every pair. Left phone 0 is the start of the utterance.
 */
public final class PhoneContexts {
  private static final int NONE = 0;

  private final int[][] forward;
  private final int pairs;

  private PhoneContexts(int[][] seen) {
    this.pairs = (int) Arrays.stream(seen).flatMapToInt(Arrays::stream).filter(t -> t > 0).count();
    this.forward = completed(seen);
  }

  static PhoneContexts recover(ConstFst graph, TransitionModel transitions) throws IOException {
    int phones = transitions.lastPhone() + 1;
    int[] last = new int[graph.states()];
    Arrays.fill(last, -1);
    int[][] forward = new int[phones][phones];
    Deque<Integer> open = new ArrayDeque<>();
    last[graph.start()] = 0;
    open.add(graph.start());
    while (!open.isEmpty()) {
      int state = open.remove();
      for (int arc = graph.firstArc(state); arc < graph.endArc(state); arc++) {
        int label = graph.inLabel(arc);
        int phone = last[state];
        if (transitions.isTransitionId(label) && !TransitionModel.isSelfLoop(label)) {
          phone = transitions.phoneOf(label);
          note(forward, last[state], phone, label);
        }
        int target = graph.target(arc);
        if (last[target] == -1) {
          last[target] = phone;
          open.add(target);
        } else if (last[target] != phone) {
          throw new UnusableModelException(
              "expected one left phone for each state of %s, found %d and %d for state %d"
                  .formatted(ModelFolder.GRAPH, last[target], phone, target));
        }
      }
    }
    return new PhoneContexts(forward);
  }

  private static void note(int[][] forward, int left, int phone, int transitionId)
      throws IOException {
    if (forward[left][phone] == NONE) {
      forward[left][phone] = transitionId;
    } else if (forward[left][phone] != transitionId) {
      throw new UnusableModelException(
          "expected one transition-id for phone %d after phone %d in %s, found %d and %d"
              .formatted(phone, left, ModelFolder.GRAPH, forward[left][phone], transitionId));
    }
  }

  /** How many (left phone, phone) pairs the model's graph shows. */
  public int pairs() {
    return pairs;
  }

  /**
   * The transition-id that enters a phone after another. A pair that no word of the model has takes
   * the id of the same phone after another variant of the left phone, else after any phone.
   *
   * @return 0 where the model does not have the phone at all
   */
  public int forward(int left, int phone) {
    return forward[left][phone];
  }

  /** Whether the model has a phone; not every phone occurs as a word of its own. */
  boolean has(int phone) {
    return forward[0][phone] != NONE;
  }

  private static int[][] completed(int[][] seen) {
    int[][] full = new int[seen.length][];
    for (int left = 0; left < seen.length; left++) {
      full[left] = seen[left].clone();
      for (int phone = 0; phone < seen.length; phone++) {
        if (full[left][phone] == NONE) {
          full[left][phone] = nearest(seen, left, phone);
        }
      }
    }
    return full;
  }

  private static int nearest(int[][] seen, int left, int phone) {
    var leftPhone = Phone.of(left);
    if (leftPhone.isPresent()) {
      for (Phone.Place place : Phone.Place.values()) {
        int id = seen[leftPhone.get().at(place)][phone];
        if (id != NONE) {
          return id;
        }
      }
    }
    for (int[] row : seen) {
      if (row[phone] != NONE) {
        return row[phone];
      }
    }
    return NONE;
  }
}
