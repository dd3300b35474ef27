package tiptoe.graph;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Arrays;

/**
 * The transition model of a Kaldi acoustic model: which phone and which acoustic distributions a
 * transition-id stands for. Each tuple (phone, state, distributions) of a phone with one emitting
 * state has two ids: 2k+1 stays in the state, 2k+2 enters it, for tuple k counted from 0.
 *
 * <p>Layout as written by Kaldi 5.5, {@code hmm/transition-model.cc} and {@code
 * hmm/hmm-topology.cc}.
 */
public final class TransitionModel {
  private final int[] phones;
  private final int[] phoneOfTuple;

  private TransitionModel(int[] phones, int[] phoneOfTuple) {
    this.phones = phones;
    this.phoneOfTuple = phoneOfTuple;
  }

  /** Reads {@code am/final.mdl}. */
  public static TransitionModel read(Path file) throws IOException {
    BinaryReader in = new BinaryReader(file);
    if (in.int8() != 0 || in.int8() != 'B') {
      throw in.unusable("expected a binary Kaldi file", "another");
    }
    in.expect("<TransitionModel>", in.token());
    in.expect("<Topology>", in.token());
    int[] phones = in.sizedInt32s();
    readTopology(in);
    in.expect("</Topology>", in.token());
    String kind = in.token();
    boolean separateLoop = kind.equals("<Tuples>");
    if (!separateLoop) {
      in.expect("<Triples>", kind);
    }
    int[] phoneOfTuple = new int[in.length(in.sizedInt32(), separateLoop ? 20 : 15)];
    int last = Arrays.stream(phones).max().orElse(0);
    for (int i = 0; i < phoneOfTuple.length; i++) {
      phoneOfTuple[i] = in.sizedInt32();
      if (phoneOfTuple[i] < 1 || phoneOfTuple[i] > last) {
        throw in.unusable("expected a phone from 1 to " + last, String.valueOf(phoneOfTuple[i]));
      }
      int state = in.sizedInt32();
      if (state != 0) {
        throw in.unusable("expected one emitting state for each phone", "state " + state);
      }
      in.sizedInt32();
      if (separateLoop) {
        in.sizedInt32();
      }
    }
    return new TransitionModel(phones, phoneOfTuple);
  }

  private static void readTopology(BinaryReader in) throws IOException {
    in.sizedInt32s();
    int entries = in.sizedInt32();
    // Kaldi writes -1 before the count when states have a distribution of their own for staying
    boolean separateLoop = entries == -1;
    if (separateLoop) {
      entries = in.sizedInt32();
    }
    for (int entry = 0; entry < entries; entry++) {
      int states = in.sizedInt32();
      for (int state = 0; state < states; state++) {
        in.sizedInt32();
        if (separateLoop) {
          in.sizedInt32();
        }
        readTransitions(in, state);
      }
    }
  }

  private static void readTransitions(BinaryReader in, int state) throws IOException {
    int count = in.sizedInt32();
    for (int i = 0; i < count; i++) {
      int target = in.sizedInt32();
      in.sizedInt32();
      if (state == 0 && target != i) {
        throw in.unusable("expected a transition to stay and one to leave", "one to " + target);
      }
    }
    if (state == 0 && count != 2) {
      throw in.unusable("expected 2 transitions out of a phone's state", String.valueOf(count));
    }
  }

  /** How many phones the model has. */
  public int phones() {
    return phones.length;
  }

  /** The highest phone number. */
  int lastPhone() {
    return Arrays.stream(phones).max().orElse(0);
  }

  /** The highest transition-id; the lowest is 1. */
  public int transitionIds() {
    return 2 * phoneOfTuple.length;
  }

  /** Whether an in-label of a graph is a transition-id rather than empty or a disambiguation. */
  boolean isTransitionId(int label) {
    return label > 0 && label <= transitionIds();
  }

  int phoneOf(int transitionId) {
    return phoneOfTuple[(transitionId - 1) / 2];
  }

  /** Whether the transition stays in the phone's state. */
  static boolean isSelfLoop(int transitionId) {
    return transitionId % 2 == 1;
  }

  /** The id that stays in the state which a forward transition-id enters. */
  static int selfLoopOf(int forward) {
    return forward - 1;
  }
}
