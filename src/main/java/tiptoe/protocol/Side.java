package tiptoe.protocol;

import com.fasterxml.jackson.annotation.JsonCreator;

/** The baby's own left or right. */
public enum Side implements Identified {
  LEFT,
  RIGHT;

  @JsonCreator
  public static Side of(String id) {
    return Labels.byId(Side.class, id, "left or right");
  }

  public Side other() {
    return this == LEFT ? RIGHT : LEFT;
  }
}
