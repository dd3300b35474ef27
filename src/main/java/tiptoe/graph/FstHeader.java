package tiptoe.graph;

import java.io.IOException;

/**
 * The header of an OpenFst file (OpenFst 1.8, {@code fst/fst.cc}).
 *
 * @param type kind of machine: {@code const}, {@code ngram}, {@code olabel_lookahead} …
 * @param arcType kind of arcs; {@code standard} has tropical weights of 4 bytes
 * @param flags 1 in-symbols, 2 out-symbols, 4 aligned to 16 bytes
 * @param start the start state, −1 for none
 */
record FstHeader(
    String type, String arcType, int version, int flags, long start, long states, long arcs) {
  static final int MAGIC = 2125659606;
  private static final int HAS_IN_SYMBOLS = 1;
  private static final int HAS_OUT_SYMBOLS = 2;
  private static final int ALIGNED = 4;

  static FstHeader read(BinaryReader in) throws IOException {
    int magic = in.int32();
    if (magic != MAGIC) {
      throw in.unusable("expected an OpenFst file", "the number " + magic + " at its start");
    }
    String type = in.string();
    String arcType = in.string();
    int version = in.int32();
    int flags = in.int32();
    in.int64(); // properties, which the reader does not rely on
    return new FstHeader(type, arcType, version, flags, in.int64(), in.int64(), in.int64());
  }

  boolean hasSymbols() {
    return (flags & (HAS_IN_SYMBOLS | HAS_OUT_SYMBOLS)) != 0;
  }

  boolean isAligned() {
    return (flags & ALIGNED) != 0;
  }
}
