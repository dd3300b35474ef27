package tiptoe.session;

import java.util.function.BooleanSupplier;

/**
 * Looks whether a record is still where it is kept, also while nobody speaks: a folder that was
 * removed takes all that is written to it, and nobody would ever know.
 */
public final class RecordWatch implements AutoCloseable {
  private static final long PERIOD_MILLIS = 500;

  private final BooleanSupplier inPlace;
  private final Runnable onLoss;
  private final Thread thread;

  private RecordWatch(BooleanSupplier inPlace, Runnable onLoss) {
    this.inPlace = inPlace;
    this.onLoss = onLoss;
    thread = new Thread(this::run, "record watch");
    thread.setDaemon(true);
  }

  /**
   * Begins to look, twice a second.
   *
   * @param onLoss run once, on the watch's own thread, when it is gone
   */
  public static RecordWatch start(BooleanSupplier inPlace, Runnable onLoss) {
    RecordWatch watch = new RecordWatch(inPlace, onLoss);
    watch.thread.start();
    return watch;
  }

  private void run() {
    try {
      while (inPlace.getAsBoolean()) {
        Thread.sleep(PERIOD_MILLIS);
      }
      onLoss.run();
    } catch (InterruptedException e) {
      // The examination is over.
    }
  }

  /** Looks no longer; what is told of a loss is told to the end. */
  @Override
  public void close() {
    thread.interrupt();
    try {
      thread.join();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
