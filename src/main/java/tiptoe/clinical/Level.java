package tiptoe.clinical;

import tiptoe.protocol.Identified;
import tiptoe.protocol.Labels;

/** How soon a flag wants someone to act. */
public enum Level implements Identified {
  /** Now. */
  EMERGENCY,
  /** A senior's review today. */
  URGENT,
  /** A test or referral to arrange. */
  ARRANGE,
  /** To be seen by whoever reads the record. */
  NOTE;

  static Level of(String id) {
    return Labels.byId(Level.class, id, "emergency, urgent, arrange or note");
  }
}
