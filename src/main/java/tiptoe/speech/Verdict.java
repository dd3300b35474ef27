package tiptoe.speech;

import tiptoe.finding.Outcome;

/**
 * A decision about an utterance.
 *
 * @param reason why it was not accepted, for the reviewer; empty when it was
 */
public record Verdict(Outcome outcome, String reason) {
  public static final Verdict ACCEPTED = new Verdict(Outcome.ACCEPTED, "");
}
