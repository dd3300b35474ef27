package tiptoe.audio;

import java.io.IOException;
import java.util.function.Consumer;

/**
 * Stores sound as long as that can be done. When it fails (a full disk), it says so once and keeps
 * trying, since what is recorded beside the sound goes on without it. For use by one thread.
 */
public final class SoundKeeper implements AutoCloseable {
  private static final int RETRY_SAMPLES = 2 * Pcm.RATE;

  private final SegmentStore store;
  private final Consumer<AudioProblem> onProblem;
  private boolean failing;
  private long retryAt;
  private volatile long unsaved;

  /**
   * @param store closed by the keeper
   * @param onProblem told once each time that storing begins to fail, on the thread that stores
   */
  public SoundKeeper(SegmentStore store, Consumer<AudioProblem> onProblem) {
    this.store = store;
    this.onProblem = onProblem;
  }

  /** Number of samples that could not be stored so far. */
  public long unsaved() {
    return unsaved;
  }

  public void keep(Chunk chunk) {
    if (failing && chunk.position() < retryAt) {
      unsaved += chunk.samples().length;
      return;
    }
    try {
      store.append(chunk);
      failing = false;
    } catch (IOException e) {
      unsaved += chunk.samples().length;
      retryAt = chunk.end() + RETRY_SAMPLES;
      if (!failing) {
        failing = true;
        report("expected to save the recording, found ", e);
      }
    }
  }

  @Override
  public void close() {
    try {
      store.close();
    } catch (IOException e) {
      report("expected to save the recording, found ", e);
    }
  }

  void report(String expectation, IOException e) {
    onProblem.accept(new AudioProblem(expectation + AudioProblem.reason(e), e));
  }
}
