package tiptoe.audio;

import java.io.IOException;
import java.util.Optional;
import java.util.function.Consumer;

/**
 * Stores all that a source gives, on a thread of its own, so that neither decoding nor a slow disk
 * holds up the other. When storing fails (a full disk), it says so once and keeps trying.
 */
public final class Recorder implements AutoCloseable {
  private static final int RETRY_SAMPLES = 2 * Pcm.RATE;

  private final SampleSource source;
  private final SegmentStore store;
  private final Consumer<AudioProblem> onProblem;
  private final Thread thread;
  private boolean failing;
  private long retryAt;
  private volatile long unsaved;

  private Recorder(SampleSource source, SegmentStore store, Consumer<AudioProblem> onProblem) {
    this.source = source;
    this.store = store;
    this.onProblem = onProblem;
    thread = new Thread(this::run, "recorder");
    thread.setDaemon(true);
  }

  /**
   * Starts to store.
   *
   * @param source read to its end; closed by the recorder
   * @param store written to by no one else; closed by the recorder
   * @param onProblem told once each time that storing begins to fail, on the recorder's thread
   */
  public static Recorder start(
      SampleSource source, SegmentStore store, Consumer<AudioProblem> onProblem) {
    Recorder recorder = new Recorder(source, store, onProblem);
    recorder.thread.start();
    return recorder;
  }

  /** Number of samples that could not be stored so far. */
  public long unsaved() {
    return unsaved;
  }

  /** Waits until the source has ended and all of it is on the disk. */
  public void finish() throws InterruptedException {
    thread.join();
  }

  /** Ends the source, and returns when all that it still held is on the disk. */
  @Override
  public void close() {
    source.end();
    try {
      finish();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  private void run() {
    try (source) {
      for (Optional<Chunk> next = source.next(); next.isPresent(); next = source.next()) {
        keep(next.get());
      }
    } catch (IOException e) {
      report("expected sound to record, found ", e);
    }
    try {
      store.close();
    } catch (IOException e) {
      report("expected to save the recording, found ", e);
    }
  }

  private void keep(Chunk chunk) {
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

  private void report(String expectation, IOException e) {
    onProblem.accept(new AudioProblem(expectation + AudioProblem.reason(e), e));
  }
}
