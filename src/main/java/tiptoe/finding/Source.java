package tiptoe.finding;

import tiptoe.protocol.Labels;

/** How a statement was understood. */
public enum Source {
  GRAMMAR,
  TAGGER,
  TYPED;

  @com.fasterxml.jackson.annotation.JsonValue
  public String id() {
    return Labels.id(this);
  }

  /** The source with this id. */
  public static Source of(String id) {
    return Labels.byId(Source.class, id, "grammar, tagger or typed");
  }
}
