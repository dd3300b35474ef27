package tiptoe.audio;

import java.util.concurrent.CompletableFuture;

/** Plays tones at a volume that can be changed or turned off. */
public final class Tones {
  /** A volume that is heard at the cot and not across the room. */
  public static final double DEFAULT_VOLUME = 0.5;

  private final Speaker speaker;
  private volatile double volume = DEFAULT_VOLUME;

  public Tones(Speaker speaker) {
    this.speaker = speaker;
  }

  /**
   * Plays a tone behind those still playing; returns at once.
   *
   * @return as {@link Speaker#play(Pcm)} has it; complete where tones are turned off
   */
  public CompletableFuture<Void> play(Tone tone) {
    double now = volume;
    return now > 0 ? speaker.play(tone.render(now)) : CompletableFuture.completedFuture(null);
  }

  /** The volume: 0 turns tones off, 1 is the loudest. */
  public void setVolume(double volume) {
    if (!(volume >= 0 && volume <= 1)) {
      throw new IllegalArgumentException("expected a volume of 0 to 1, found " + volume);
    }
    this.volume = volume;
  }
}
