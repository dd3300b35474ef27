package tiptoe.graph;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Path;

/**
 * A read-only transducer as OpenFst's {@code const} type stores it: states of 20 bytes (final cost,
 * first arc, arc count, two counts of empty labels), arcs of 16 bytes (in-label, out-label, cost,
 * target).
 */
final class ConstFst {
  private static final int ADD_ON_MAGIC = 0x1A9FD15A;
  private static final int STATE_BYTES = 20;
  private static final int ARC_BYTES = 16;

  private final int start;
  private final int stateCount;
  private final int arcCount;
  private final ByteBuffer states;
  private final ByteBuffer arcs;

  private ConstFst(FstHeader header, BinaryReader in) throws IOException {
    start = (int) header.start();
    stateCount = in.length(header.states(), STATE_BYTES);
    if (header.isAligned()) {
      in.alignTo(16);
    }
    states = in.slice(stateCount * STATE_BYTES);
    if (header.isAligned()) {
      in.alignTo(16);
    }
    arcCount = in.length(header.arcs(), ARC_BYTES);
    arcs = in.slice(arcCount * ARC_BYTES);
    check(in);
  }

  /** Reads a {@code const} file, or the {@code const} part of a lookahead file. */
  static ConstFst read(Path file) throws IOException {
    BinaryReader in = new BinaryReader(file);
    FstHeader header = FstHeader.read(in);
    if (header.type().equals("olabel_lookahead")) {
      int magic = in.int32();
      if (magic != ADD_ON_MAGIC) {
        throw in.unusable("expected a lookahead table", "the number " + magic);
      }
      header = FstHeader.read(in);
    }
    if (!header.type().equals("const") || !header.arcType().equals("standard")) {
      throw in.unusable(
          "expected a const transducer with standard arcs",
          header.type() + " with " + header.arcType());
    }
    if (header.hasSymbols()) {
      throw in.unusable("expected no symbol table", "one");
    }
    return new ConstFst(header, in);
  }

  private void check(BinaryReader in) throws IOException {
    if (start < 0 || start >= stateCount) {
      throw in.unusable("expected a start state below " + stateCount, String.valueOf(start));
    }
    for (int state = 0; state < stateCount; state++) {
      if (firstArc(state) < 0
          || arcCount(state) < 0
          || (long) firstArc(state) + arcCount(state) > arcCount) {
        throw in.unusable("expected arcs up to " + arcCount, "state " + state + " beyond");
      }
    }
    for (int arc = 0; arc < arcCount; arc++) {
      if (target(arc) < 0 || target(arc) >= stateCount) {
        throw in.unusable("expected states below " + stateCount, String.valueOf(target(arc)));
      }
    }
  }

  int start() {
    return start;
  }

  int states() {
    return stateCount;
  }

  int arcs() {
    return arcCount;
  }

  /** Cost of ending in the state; infinite where it cannot end. */
  float finalCost(int state) {
    return states.getFloat(state * STATE_BYTES);
  }

  int firstArc(int state) {
    return states.getInt(state * STATE_BYTES + 4);
  }

  private int arcCount(int state) {
    return states.getInt(state * STATE_BYTES + 8);
  }

  /** The arc behind the last one of a state. */
  int endArc(int state) {
    return firstArc(state) + arcCount(state);
  }

  int inLabel(int arc) {
    return arcs.getInt(arc * ARC_BYTES);
  }

  int outLabel(int arc) {
    return arcs.getInt(arc * ARC_BYTES + 4);
  }

  float cost(int arc) {
    return arcs.getFloat(arc * ARC_BYTES + 8);
  }

  int target(int arc) {
    return arcs.getInt(arc * ARC_BYTES + 12);
  }
}
