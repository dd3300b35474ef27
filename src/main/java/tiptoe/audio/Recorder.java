package tiptoe.audio;

import java.io.IOException;
import java.util.Optional;
import java.util.function.Consumer;

/**
 * Stores all that a source gives, on a thread of its own, so that neither decoding nor a slow disk
 * holds up the other. When storing fails (a full disk), it says so once and keeps trying.
 */
public final class Recorder implements AutoCloseable {
  private final SampleSource source;
  private final SoundKeeper keeper;
  private final Thread thread;

  private Recorder(SampleSource source, SegmentStore store, Consumer<AudioProblem> onProblem) {
    this.source = source;
    keeper = new SoundKeeper(store, onProblem);
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
    return keeper.unsaved();
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
        keeper.keep(next.get());
      }
    } catch (IOException e) {
      keeper.report("expected sound to record, found ", e);
    }
    keeper.close();
  }
}
