package tiptoe.speech;

import java.io.IOException;
import java.io.InterruptedIOException;
import java.io.UncheckedIOException;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;
import java.util.function.Supplier;

/** Something that is being loaded on a thread of its own; whoever needs it waits for it. */
public final class Loading<T> implements Supplier<T> {
  private final FutureTask<T> task;

  private Loading(FutureTask<T> task) {
    this.task = task;
  }

  /**
   * Begins to load.
   *
   * @param name of the thread
   */
  public static <T> Loading<T> load(String name, Callable<T> loading) {
    FutureTask<T> task = new FutureTask<>(loading);
    Thread thread = new Thread(task, name);
    thread.setDaemon(true);
    thread.start();
    return new Loading<>(task);
  }

  /**
   * Waits for it.
   *
   * @throws IOException as loading failed, or because waiting was broken off
   */
  public T await() throws IOException {
    try {
      return task.get();
    } catch (ExecutionException e) {
      if (e.getCause() instanceof IOException io) {
        throw io;
      }
      if (e.getCause() instanceof UncheckedIOException io) {
        throw io.getCause();
      }
      if (e.getCause() instanceof RuntimeException runtime) {
        throw runtime;
      }
      throw new IllegalStateException(e.getCause());
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new InterruptedIOException("loading was broken off");
    }
  }

  @Override
  public T get() {
    try {
      return await();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
