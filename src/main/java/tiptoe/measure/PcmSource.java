package tiptoe.measure;

import java.util.Arrays;
import java.util.Optional;
import tiptoe.audio.Chunk;
import tiptoe.audio.Pcm;
import tiptoe.audio.SampleSource;

/** Sound in memory, in pieces of 20 ms: as often a microphone is asked for what there is. */
final class PcmSource implements SampleSource {
  private static final int CHUNK = Pcm.RATE / 50;

  private final short[] samples;
  private int position;
  private boolean ended;

  PcmSource(Pcm sound) {
    samples = sound.samples();
  }

  /** How much of it has been handed out, in s. */
  double seconds() {
    return (double) position / Pcm.RATE;
  }

  /** Whether it was asked for more than there is. */
  boolean ended() {
    return ended;
  }

  @Override
  public Optional<Chunk> next() {
    if (position == samples.length) {
      ended = true;
    }
    if (ended) {
      return Optional.empty();
    }
    int from = position;
    position = Math.min(samples.length, from + CHUNK);
    return Optional.of(new Chunk(from, 0, Arrays.copyOfRange(samples, from, position)));
  }

  @Override
  public void end() {
    ended = true;
  }

  @Override
  public void close() {
    ended = true;
  }
}
