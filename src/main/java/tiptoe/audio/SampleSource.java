package tiptoe.audio;

import java.io.IOException;
import java.util.Optional;

/**
 * Sound as a series of chunks of at most 0.2 s, 16 kHz, mono, 16 bit: from a file, or from a
 * microphone while it is spoken into. For use by one thread at a time.
 */
public interface SampleSource extends AutoCloseable {
  /**
   * Waits for the next chunk.
   *
   * @return the chunk, never without samples, or empty when the source has ended or was closed
   * @throws AudioProblem if the sound turns out to be broken
   * @throws java.io.InterruptedIOException if the thread was interrupted while it waited
   */
  Optional<Chunk> next() throws IOException;

  /**
   * Makes the source end once what it already holds has been read. May be called from any thread.
   */
  void end();

  @Override
  void close() throws IOException;
}
