package tiptoe.audio;

import java.time.Instant;

/** What a microphone reports while it listens. */
public sealed interface CaptureEvent {
  /**
   * No usable sound comes in.
   *
   * @param since when the last usable sound came
   * @param at when it was noticed
   * @param cause why
   * @param detail what the driver said, possibly empty
   */
  record Trouble(Instant since, Instant at, Gap.Cause cause, String detail)
      implements CaptureEvent {}

  /** Sound came back; the gap is what was missed. */
  record Recovered(Gap gap) implements CaptureEvent {}
}
