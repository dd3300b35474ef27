package tiptoe.exam;

import com.fasterxml.jackson.annotation.JsonValue;
import tiptoe.protocol.Labels;

/** How a statement now stands. */
public enum Status {
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

  @JsonValue
  public String id() {
    return Labels.id(this);
  }

  static Status of(Effect effect) {
    return valueOf(effect.name());
  }
}
