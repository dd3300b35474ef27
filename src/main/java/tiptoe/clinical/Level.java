package tiptoe.clinical;

import com.fasterxml.jackson.annotation.JsonValue;
import tiptoe.protocol.Labels;

/** How soon a flag wants someone to act. */
public enum Level {
  /** Now. */
  EMERGENCY,
  /** A senior's review today. */
  URGENT,
  /** A test or referral to arrange. */
  ARRANGE,
  /** To be seen by whoever reads the record. */
  NOTE;

  @JsonValue
  public String id() {
    return Labels.id(this);
  }

  /** The level with this id. */
  static Level of(String id) {
    return Labels.byId(Level.class, id, "emergency, urgent, arrange or note");
  }
}
