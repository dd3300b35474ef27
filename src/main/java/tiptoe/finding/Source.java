package tiptoe.finding;

import tiptoe.protocol.Identified;
import tiptoe.protocol.Labels;

/** How a statement was understood. */
public enum Source implements Identified {
  GRAMMAR,
  TAGGER,
  TYPED;

  /** The source with this id. */
  public static Source of(String id) {
    return Labels.byId(Source.class, id, "grammar, tagger or typed");
  }
}
