package tiptoe.speech;

/** What became of an utterance, from the best to the least. */
public enum Outcome {
  /** Phrases and nothing else: its statements are recorded. */
  ACCEPTED,
  /** Phrases, but not surely said as findings: asked about or left to the reviewer. */
  UNSURE,
  /** No phrase. */
  IGNORED,
  /** A command to the program; told apart from findings by a later stage. */
  COMMAND
}
