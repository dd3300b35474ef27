package tiptoe.exam;

import tiptoe.protocol.Identified;

/** How a statement now stands. */
public enum Status implements Identified {
  /** An answer of the record rests on it. */
  STANDS,
  /** It says again what another statement says. */
  CONFIRMS,
  /** It contradicts something; a question is open. */
  WAITS,
  /** Said for a whole region, with nothing left to fill. */
  UNUSED,
  /** It contradicted something and was found not to count. */
  WITHDRAWN,
  /** A newer statement took its place. */
  REPLACED,
  /** The clinician took it back. */
  STRUCK,
  /** The reviewer took it out. */
  REJECTED,
  /** The reviewer's edit that made it was undone. */
  UNDONE;

  static Status of(Effect effect) {
    return valueOf(effect.name());
  }
}
