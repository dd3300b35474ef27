package tiptoe.clinical;

import com.fasterxml.jackson.annotation.JsonValue;
import java.util.Locale;

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
    return name().toLowerCase(Locale.ROOT);
  }

  /** The level with this id. */
  static Level of(String id) {
    for (Level level : values()) {
      if (level.id().equals(id)) {
        return level;
      }
    }
    throw new IllegalArgumentException("expected emergency, urgent, arrange or note, found " + id);
  }
}
