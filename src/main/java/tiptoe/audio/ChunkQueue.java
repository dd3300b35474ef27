package tiptoe.audio;

import java.io.InterruptedIOException;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Optional;

/**
 * A ring of chunks between the microphone and one reader. Writing never waits: when the reader is
 * too far behind, the oldest chunks go, and the next chunk read says how many samples are missing.
 */
final class ChunkQueue implements SampleSource {
  private final Deque<Chunk> chunks = new ArrayDeque<>();
  private final int capacity;
  private int held;
  private long expected;
  private boolean ended;

  /**
   * An empty queue.
   *
   * @param capacity most samples to hold
   * @param position place of the next sample to be written
   */
  ChunkQueue(int capacity, long position) {
    this.capacity = capacity;
    expected = position;
  }

  synchronized void put(Chunk chunk) {
    if (ended) {
      return;
    }
    chunks.add(chunk);
    held += chunk.samples().length;
    while (held > capacity && chunks.size() > 1) {
      held -= chunks.remove().samples().length;
    }
    notifyAll();
  }

  /** No more will be taken in; what is there can still be read. */
  @Override
  public synchronized void end() {
    ended = true;
    notifyAll();
  }

  @Override
  public synchronized Optional<Chunk> next() throws InterruptedIOException {
    try {
      while (chunks.isEmpty() && !ended) {
        wait();
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new InterruptedIOException("interrupted while waiting for sound");
    }
    if (chunks.isEmpty()) {
      return Optional.empty();
    }
    Chunk chunk = chunks.remove();
    held -= chunk.samples().length;
    long lost = Math.max(0, chunk.position() - expected);
    expected = chunk.end();
    return Optional.of(new Chunk(chunk.position(), lost, chunk.samples()));
  }

  @Override
  public synchronized void close() {
    chunks.clear();
    held = 0;
    end();
  }

  synchronized boolean isEnded() {
    return ended;
  }
}
