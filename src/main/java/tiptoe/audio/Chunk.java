package tiptoe.audio;

/**
 * A short stretch of 16 kHz sound at its place in the recording. Places count every sample since
 * the start, those that were lost included, so {@code position / 16000} is the time in seconds.
 *
 * @param position place of the first sample, 0 or more
 * @param lost number of samples missing right before this chunk, 0 or more
 * @param samples the sound; not copied, not to be changed
 */
public record Chunk(long position, long lost, short[] samples) {
  public Chunk {
    if (position < 0 || lost < 0 || lost > position) {
      throw new IllegalArgumentException(
          "expected 0 <= lost <= position, found lost " + lost + " at position " + position);
    }
  }

  /** The place right behind this chunk. */
  public long end() {
    return position + samples.length;
  }

  /** Time of the first sample, in seconds since the start of the recording. */
  public double seconds() {
    return (double) position / Pcm.RATE;
  }
}
