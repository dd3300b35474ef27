package tiptoe.protocol;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;

/** The baby's own left or right. */
public enum Side {
  LEFT,
  RIGHT;

  /** The id used in tags, records and exports: {@code left} or {@code right}. */
  @JsonValue
  public String id() {
    return name().toLowerCase(java.util.Locale.ROOT);
  }

  /** The side with this id. */
  @JsonCreator
  public static Side of(String id) {
    for (Side side : values()) {
      if (side.id().equals(id)) {
        return side;
      }
    }
    throw new IllegalArgumentException("expected left or right, found " + id);
  }

  public Side other() {
    return this == LEFT ? RIGHT : LEFT;
  }
}
