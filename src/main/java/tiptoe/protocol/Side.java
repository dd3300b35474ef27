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
    return Labels.id(this);
  }

  /** The side with this id. */
  @JsonCreator
  public static Side of(String id) {
    return Labels.byId(Side.class, id, "left or right");
  }

  public Side other() {
    return this == LEFT ? RIGHT : LEFT;
  }
}
