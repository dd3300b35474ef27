package tiptoe.audio;

import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;

/**
 * Plays sound on a thread of its own, one clip behind the other. The device is opened when there is
 * something to play and let go soon after, so that one that comes or goes meanwhile does no harm.
 */
public final class Speaker implements AutoCloseable {
  private static final int BLOCK_SAMPLES = Pcm.RATE / 20;
  private static final long IDLE_MILLIS = 3000;
  private static final int MOST_WAITING = 16;

  private record Clip(Pcm pcm, CompletableFuture<Void> done) {}

  private final SpeakerLine.Opener opener;
  private final Deque<Clip> waiting = new ArrayDeque<>();
  private Thread thread;
  private Clip playing;
  private SpeakerLine line;
  private boolean closed;

  private Speaker(SpeakerLine.Opener opener) {
    this.opener = opener;
  }

  /** Names of the loudspeakers that there are, the default one first; possibly none. */
  public static List<String> devices() {
    return Devices.speakers().stream().map(Devices.Offer::name).toList();
  }

  /**
   * A speaker; whether the device is there shows when something is played.
   *
   * @param device the loudspeaker's name or a part of it; empty for the first one
   */
  public static Speaker on(Optional<String> device) {
    return new Speaker(() -> SpeakerLine.open(device));
  }

  static Speaker on(SpeakerLine.Opener opener) {
    return new Speaker(opener);
  }

  /**
   * Plays a 16 kHz clip behind those that wait; returns at once.
   *
   * @return completes when the clip has been heard; fails with an {@link AudioProblem} if it could
   *     not be played, and is cancelled by {@link #stop()}, {@link #close()} or when too many wait
   */
  public synchronized CompletableFuture<Void> play(Pcm pcm) {
    if (pcm.sampleRate() != Pcm.RATE) {
      throw new IllegalArgumentException(
          "expected sound at " + Pcm.RATE + " Hz, found " + pcm.sampleRate() + " Hz");
    }
    CompletableFuture<Void> done = new CompletableFuture<>();
    if (closed || waiting.size() >= MOST_WAITING) {
      done.cancel(false);
      return done;
    }
    waiting.add(new Clip(pcm, done));
    if (thread == null) {
      thread = new Thread(this::run, "speaker");
      thread.setDaemon(true);
      thread.start();
    }
    notifyAll();
    return done;
  }

  /**
   * Plays a clip at another pace but the same pitch.
   *
   * @param speed 0.5 (half as fast) to 2
   */
  public CompletableFuture<Void> play(Pcm pcm, double speed) {
    return play(speed == 1 ? pcm : TimeStretch.stretch(pcm, speed));
  }

  /** Falls silent at once, and forgets what waits. */
  public synchronized void stop() {
    waiting.forEach(clip -> clip.done().cancel(false));
    waiting.clear();
    if (playing != null) {
      playing.done().cancel(false);
    }
  }

  @Override
  public synchronized void close() {
    closed = true;
    stop();
    notifyAll();
  }

  /** Waits for a clip that was played; the problem to show if it could not be. */
  public static Optional<AudioProblem> problem(CompletableFuture<Void> done) {
    try {
      done.join();
      return Optional.empty();
    } catch (CancellationException e) {
      return Optional.empty();
    } catch (CompletionException e) {
      return e.getCause() instanceof AudioProblem problem
          ? Optional.of(problem)
          : Optional.of(new AudioProblem(AudioProblem.reason(e), e));
    }
  }

  private void run() {
    try {
      for (Optional<Clip> clip = take(); clip.isPresent(); clip = take()) {
        play(clip.get());
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    } finally {
      closeLine();
    }
  }

  /** The next clip; closes the device when there is none for a while. Empty when closed. */
  private Optional<Clip> take() throws InterruptedException {
    Optional<Clip> next = poll(IDLE_MILLIS);
    while (next.isEmpty() && !isClosed()) {
      closeLine();
      next = poll(0);
    }
    return next;
  }

  /** Waits for a clip so long, or without an end for 0; it may wake up early. */
  private synchronized Optional<Clip> poll(long millis) throws InterruptedException {
    playing = null;
    if (waiting.isEmpty() && !closed) {
      wait(millis);
    }
    playing = waiting.poll();
    return Optional.ofNullable(playing);
  }

  private synchronized boolean isClosed() {
    return closed;
  }

  private void play(Clip clip) {
    try {
      if (line == null) {
        line = opener.open();
      }
      short[] samples = clip.pcm().samples();
      // Silence behind it: once the driver has taken that, it has played the clip.
      int length = samples.length + (int) (SpeakerLine.BUFFER_SECONDS * Pcm.RATE);
      for (int at = 0; at < length && !clip.done().isDone(); at += BLOCK_SAMPLES) {
        line.write(block(samples, at));
      }
      if (clip.done().isCancelled()) {
        line.flush();
      }
      clip.done().complete(null);
    } catch (AudioProblem e) {
      closeLine();
      clip.done().completeExceptionally(e);
    } catch (RuntimeException e) {
      closeLine();
      clip.done().completeExceptionally(new AudioProblem(AudioProblem.reason(e), e));
    }
  }

  private static short[] block(short[] samples, int at) {
    return at < samples.length
        ? Arrays.copyOf(
            Arrays.copyOfRange(samples, at, Math.min(samples.length, at + BLOCK_SAMPLES)),
            BLOCK_SAMPLES)
        : new short[BLOCK_SAMPLES];
  }

  private void closeLine() {
    if (line != null) {
      line.close();
      line = null;
    }
  }
}
