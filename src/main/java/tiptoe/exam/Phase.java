package tiptoe.exam;

import tiptoe.protocol.Identified;

/** Where an examination is between its opening and its signature. */
public enum Phase implements Identified {
  LISTENING,
  PAUSED,
  /** A remark is being spoken. */
  REMARK,
  /** The end was asked for, key steps are missing, and a second word is waited for. */
  ENDING,
  /** Over, not signed yet. */
  ENDED,
  /** Signed; closed to edits. */
  SIGNED,
  /** Signed before, and open again for an addendum. */
  ADDENDUM;

  /** Whether the clinician's findings still count. */
  public boolean takesFindings() {
    return this == LISTENING || this == ENDING;
  }
}
