package tiptoe.language.tagger;

import java.util.Set;
import tiptoe.protocol.Side;

/**
 * On which side something was left out.
 *
 * @param side the one named last; null where none was
 * @param both whether it was left out on both
 */
record LeftOutSides(Side side, boolean both) {
  static final LeftOutSides NONE = new LeftOutSides(null, false);

  /** With a side that is named beside it. */
  LeftOutSides and(Side named) {
    return new LeftOutSides(named, both || side != null && side != named);
  }

  LeftOutSides ofBoth() {
    return new LeftOutSides(side, true);
  }

  /** The one side that is said elsewhere, where none was named. */
  LeftOutSides or(Set<Side> said) {
    return side == null && !both && said.size() == 1
        ? new LeftOutSides(said.iterator().next(), false)
        : this;
  }

  /** Null for both. */
  Side one() {
    return both ? null : side;
  }
}
