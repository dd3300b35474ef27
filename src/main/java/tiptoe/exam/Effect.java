package tiptoe.exam;

import tiptoe.protocol.Identified;

/**
 * What a statement does to those before it. It is decided once, when the statement is made, and
 * kept with it, so that a record reads the same after the rules have changed.
 */
public enum Effect implements Identified {
  /** It stands, and replaces the statements it names. */
  STANDS,
  /** It says again what the statement it names says; its details are added to that one. */
  CONFIRMS,
  /** It contradicts the statements it names, or the context: a question has to settle it. */
  WAITS,
  /** It was said for a whole region and had nothing left to fill. */
  UNUSED,
  /** It was settled that it does not count. */
  WITHDRAWN;
}
