package tiptoe.finding;

import com.fasterxml.jackson.annotation.JsonCreator;
import tiptoe.protocol.Identified;
import tiptoe.protocol.Labels;

/** What became of an utterance. */
public enum Outcome implements Identified {
  /** Phrases and nothing else: its findings are recorded. */
  ACCEPTED,
  /** Phrases, but not surely said as findings: asked about or left to the reviewer. */
  UNSURE,
  /** Not meant for the record. */
  IGNORED,
  /** An instruction to the tool. */
  COMMAND,
  /** Free speech between the start and the end of a remark. */
  REMARK;

  @JsonCreator
  public static Outcome of(String id) {
    return Labels.byId(Outcome.class, id, "an outcome");
  }
}
