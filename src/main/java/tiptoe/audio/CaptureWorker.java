package tiptoe.audio;

/**
 * The thread that fetches sound from the driver, and opens the device again when it fails. Driver
 * calls may hang; a worker that was given up ends as soon as its call returns.
 */
final class CaptureWorker implements Runnable {
  private static final long POLL_MILLIS = 20;
  private static final long RETRY_MILLIS = 500;

  private final Microphone microphone;
  private final Thread thread = new Thread(this, "microphone");
  private CaptureLine line;
  private volatile boolean givenUp;
  private volatile long lastSign = System.nanoTime();

  /** A worker on an open line, or on none yet: null. */
  CaptureWorker(Microphone microphone, CaptureLine line) {
    this.microphone = microphone;
    this.line = line;
  }

  void start() {
    thread.setDaemon(true);
    thread.setPriority(Thread.MAX_PRIORITY);
    thread.start();
  }

  void giveUp() {
    givenUp = true;
  }

  /** Waits for the thread's end, but no longer than so. */
  void await(long millis) {
    try {
      thread.join(millis);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  /** Time since it was last seen alive. */
  long idleNanos(long now) {
    return now - lastSign;
  }

  @Override
  public void run() {
    try {
      while (!givenUp) {
        lastSign = System.nanoTime();
        Thread.sleep(step() ? POLL_MILLIS : RETRY_MILLIS);
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    } finally {
      closeLine();
    }
  }

  /** Fetches what there is; false if the device is not there. */
  private boolean step() {
    try {
      if (line == null) {
        line = microphone.openLine();
      }
      microphone.heard(this, line.read());
      return true;
    } catch (AudioProblem e) {
      fail(e);
    } catch (RuntimeException e) {
      fail(new AudioProblem(AudioProblem.reason(e), e));
    }
    return false;
  }

  private void fail(AudioProblem problem) {
    microphone.failed(this, problem);
    closeLine();
  }

  private void closeLine() {
    if (line != null) {
      line.close();
      line = null;
    }
  }
}
