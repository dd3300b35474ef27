package tiptoe.exam.journal;

/** How an examination was left the last time. */
enum Ending {
  /** It is being written to. */
  OPEN,
  /** It was let go of in good order, and this installation saw it: all that it has is noted. */
  CLOSED,
  /** The process died, or another installation wrote it: what came last may not be noted. */
  BROKEN_OFF
}
