package tiptoe.audio;

import java.time.Instant;

/**
 * A stretch of a recording without usable sound. Its places count 16 kHz samples since the start,
 * as those of {@link Chunk}.
 *
 * @param from place of the first sample without sound
 * @param to place right behind the last; {@code to >= from}
 * @param since when it began
 * @param until when sound came back
 * @param cause why
 */
public record Gap(long from, long to, Instant since, Instant until, Cause cause) {
  /** Why there is no sound. */
  public enum Cause {
    /** The microphone was unplugged, or its driver failed. */
    GONE("the microphone is gone"),
    /** The microphone is there, yet nothing comes from it. */
    STALLED("nothing comes from the microphone"),
    /** Nothing but zeros come from it: muted, or not plugged in. */
    SILENT("the microphone is mute"),
    /** This computer was asleep or too busy to fetch the sound in time. */
    OVERRUN("the computer was asleep or too busy to listen");

    private final String words;

    Cause(String words) {
      this.words = words;
    }

    /** The cause in words for people, without a full stop. */
    public String words() {
      return words;
    }
  }

  public Gap {
    if (to < from) {
      throw new IllegalArgumentException("expected from <= to, found " + from + " and " + to);
    }
  }

  /** Length in seconds of the recording. */
  public double seconds() {
    return (double) (to - from) / Pcm.RATE;
  }
}
