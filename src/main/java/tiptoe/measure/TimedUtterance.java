package tiptoe.measure;

import java.util.List;
import tiptoe.finding.Outcome;

/**
 * An utterance that was handed out.
 *
 * @param start second at which it begins
 * @param end second at which its last word of a phrase ends; its end where it has none
 * @param text its words without filler
 * @param outcome what became of it
 * @param reason why it is unsure or ignored; empty otherwise
 * @param at how much of the sound had been heard when it was handed out, in s
 * @param byEnd whether the end of the recording ended it, and no pause
 * @param meant what it did
 */
public record TimedUtterance(
    double start,
    double end,
    String text,
    Outcome outcome,
    String reason,
    double at,
    boolean byEnd,
    List<ComparableMeaning> meant) {
  public TimedUtterance {
    meant = List.copyOf(meant);
  }

  /** From the end of the phrase to the moment it was handed out, in s of the recording. */
  public double latency() {
    return at - end;
  }

  /** Whether it counts: as findings, facts or questions, or as a command. */
  public boolean counts() {
    return outcome == Outcome.ACCEPTED || outcome == Outcome.COMMAND;
  }

  /** Whether a pause ended it and it has a phrase, so that its latency tells something. */
  boolean timed() {
    return !byEnd && !text.isEmpty() && outcome != Outcome.IGNORED;
  }
}
