package tiptoe.protocol;

/** How a value stands to what is expected in a healthy newborn. */
public enum Norm {
  /** Expected. */
  NORMAL,
  /** A common variant that needs no action by itself. */
  BENIGN,
  /** Not expected; some rule or the reviewer must look at it. */
  ABNORMAL,
  /** Says neither: a bare count, "not yet passed", "not assessable". */
  NEUTRAL
}
