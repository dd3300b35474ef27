package tiptoe.audio;

import java.io.IOException;
import java.io.InterruptedIOException;
import java.util.Optional;

/**
 * Hands on another source's chunks no sooner than they could have been heard: a recording replayed
 * in real time.
 */
public final class PacedSource extends PassedSound {
  private static final long NANOS_A_SAMPLE = 1_000_000_000L / Pcm.RATE;

  private final Pace pace;
  private boolean started;
  private long start;

  /** How time passes; for tests without waiting. */
  interface Pace {
    long nanoTime();

    void sleepNanos(long nanos) throws InterruptedException;
  }

  /** The source in real time, counted from the first call of {@link #next()}. */
  public PacedSource(SampleSource source) {
    this(source, new RealPace());
  }

  PacedSource(SampleSource source, Pace pace) {
    super(source);
    this.pace = pace;
  }

  @Override
  public Optional<Chunk> next() throws IOException {
    if (!started) {
      started = true;
      start = pace.nanoTime();
    }
    Optional<Chunk> chunk = source.next();
    if (chunk.isPresent()) {
      waitUntil(start + chunk.get().end() * NANOS_A_SAMPLE);
    }
    return chunk;
  }

  private void waitUntil(long due) throws InterruptedIOException {
    try {
      for (long left = due - pace.nanoTime(); left > 0; left = due - pace.nanoTime()) {
        pace.sleepNanos(left);
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new InterruptedIOException("interrupted while replaying in real time");
    }
  }

  private static final class RealPace implements Pace {
    @Override
    public long nanoTime() {
      return System.nanoTime();
    }

    @Override
    public void sleepNanos(long nanos) throws InterruptedException {
      Thread.sleep(nanos / 1_000_000, (int) (nanos % 1_000_000));
    }
  }
}
