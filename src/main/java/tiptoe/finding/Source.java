package tiptoe.finding;

import tiptoe.protocol.Identified;

/** How a statement was understood. */
public enum Source implements Identified {
  GRAMMAR,
  TAGGER,
  TYPED
}
