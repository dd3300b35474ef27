package tiptoe.audio;

import java.io.IOException;
import java.time.Clock;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.function.Consumer;

/**
 * Listens to a microphone on a thread of its own until closed. Any number of readers hear all of it
 * from the time they join, each at its own pace: one that is slow loses sound, but never holds up
 * the others. A microphone that falls silent or vanishes is reported within 3 s, and listened to
 * again as soon as it is back.
 */
public final class Microphone implements AutoCloseable {
  private static final int READER_SECONDS = 60;
  private static final Duration TICK = Duration.ofMillis(100);

  /** A driver call that takes longer is given up, and the device tried on a new thread. */
  private static final Duration HUNG = Duration.ofSeconds(5);

  private static final int MOST_HUNG_THREADS = 5;
  private static final long CLOSE_MILLIS = 1000;

  private final CaptureLine.Opener opener;
  private final Clock clock;
  private final Consumer<CaptureEvent> listener;
  private final CaptureWatch watch;
  private final List<ChunkQueue> readers = new CopyOnWriteArrayList<>();
  private final Thread guard;
  private CaptureWorker worker;
  private int hung;
  private volatile boolean closed;

  private Microphone(
      CaptureLine first, CaptureLine.Opener opener, Clock clock, Consumer<CaptureEvent> listener) {
    this.opener = opener;
    this.clock = clock;
    this.listener = listener;
    watch = new CaptureWatch(clock.instant());
    watch.opened(clock.instant(), first.buffer());
    worker = new CaptureWorker(this, first);
    guard = new Thread(this::guard, "microphone guard");
    guard.setDaemon(true);
  }

  /** Names of the microphones that there are, the default one first; possibly none. */
  public static List<String> devices() {
    return Devices.microphones().stream().map(Devices.Offer::name).toList();
  }

  /**
   * Looks for one without listening to it yet.
   *
   * @param device its name or a part of it; empty for the first one
   * @throws AudioProblem if there is no such microphone
   */
  public static void require(Optional<String> device) throws AudioProblem {
    JavaSoundLine.choose(device);
  }

  /**
   * Starts to listen.
   *
   * @param device the microphone's name or a part of it; empty for the first one
   * @param clock for the times in events
   * @param listener told of trouble and recovery, on a thread that must not be held up
   * @throws AudioProblem if there is no such microphone, or it cannot be opened
   */
  public static Microphone open(
      Optional<String> device, Clock clock, Consumer<CaptureEvent> listener) throws AudioProblem {
    return open(() -> JavaSoundLine.open(device), clock, listener);
  }

  static Microphone open(CaptureLine.Opener opener, Clock clock, Consumer<CaptureEvent> listener)
      throws AudioProblem {
    Microphone microphone = new Microphone(opener.open(), opener, clock, listener);
    microphone.worker.start();
    microphone.guard.start();
    return microphone;
  }

  /**
   * A new reader, which hears everything from now on. When it falls back by more than a minute, or
   * the microphone fails, the next chunk says how many samples were lost.
   */
  public SampleSource listen() {
    synchronized (watch) {
      ChunkQueue reader = new ChunkQueue(READER_SECONDS * Pcm.RATE, watch.position());
      if (closed) {
        reader.end();
      }
      readers.removeIf(ChunkQueue::isEnded);
      readers.add(reader);
      return reader;
    }
  }

  /** Time of the recording so far, in seconds, losses included. */
  public double seconds() {
    synchronized (watch) {
      return (double) watch.position() / Pcm.RATE;
    }
  }

  /**
   * Stops listening, and lets the device go unless its driver hangs. Readers still get what was
   * heard before, then the end.
   */
  @Override
  public void close() {
    CaptureWorker last;
    synchronized (watch) {
      closed = true;
      readers.forEach(ChunkQueue::end);
      last = worker;
      last.giveUp();
    }
    last.await(CLOSE_MILLIS);
  }

  CaptureLine openLine() throws AudioProblem {
    CaptureLine line = opener.open();
    synchronized (watch) {
      watch.opened(clock.instant(), line.buffer());
    }
    return line;
  }

  void heard(CaptureWorker from, short[] samples) {
    synchronized (watch) {
      if (from == worker && !closed) {
        for (Chunk chunk : watch.polled(clock.instant(), samples)) {
          readers.forEach(reader -> reader.put(chunk));
        }
      }
    }
  }

  void failed(CaptureWorker from, IOException problem) {
    synchronized (watch) {
      if (from == worker && !closed) {
        watch.broke(clock.instant(), AudioProblem.reason(problem));
      }
    }
  }

  /** Reports trouble, even while the capture thread is stuck in the driver. */
  private void guard() {
    try {
      while (!closed) {
        Thread.sleep(TICK.toMillis());
        List<CaptureEvent> events;
        synchronized (watch) {
          watch.check(clock.instant());
          events = watch.takeEvents();
          replaceHungWorker();
        }
        events.forEach(this::tell);
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  /** A listener that fails must not end the watch over the microphone. */
  private void tell(CaptureEvent event) {
    try {
      listener.accept(event);
    } catch (RuntimeException e) {
      guard.getUncaughtExceptionHandler().uncaughtException(guard, e);
    }
  }

  private void replaceHungWorker() {
    boolean stuck = worker.idleNanos(System.nanoTime()) > HUNG.toNanos();
    if (stuck && !closed && hung < MOST_HUNG_THREADS) {
      hung++;
      worker.giveUp();
      worker = new CaptureWorker(this, null);
      worker.start();
    }
  }
}
