package tiptoe.clinical;

import tiptoe.protocol.Identified;
import tiptoe.protocol.Labels;

/** What a 5-minute Apgar score says (AAP and ACOG Committee Opinion 644, 2015). */
enum ApgarBand implements Identified {
  LOW,
  MODERATELY_ABNORMAL,
  REASSURING;

  static final String SOURCE = "AAP and ACOG Committee Opinion 644, 2015";

  /** The band of a total from 0 to 10. */
  static ApgarBand of(int total) {
    return total >= 7 ? REASSURING : total >= 4 ? MODERATELY_ABNORMAL : LOW;
  }

  /** For people. */
  String text() {
    return Labels.of(id());
  }
}
