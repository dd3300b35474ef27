package tiptoe.audio;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.Semaphore;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

/** The playing thread on a device that the test decides about. */
class SpeakerTest {
  private final FakeLine line = new FakeLine();
  private volatile boolean present = true;
  private int opened;

  private final Speaker speaker =
      Speaker.on(
          () -> {
            if (!present) {
              throw new AudioProblem("expected a loudspeaker, found none");
            }
            opened++;
            return line;
          });

  @AfterEach
  void close() {
    line.room.release(1000);
    speaker.close();
  }

  @Test
  void playsClipsOneBehindTheOtherOnOneLine() {
    line.room.release(1000);
    CompletableFuture<Void> first = speaker.play(Pcm.of((short) 1, (short) 2));
    CompletableFuture<Void> second = speaker.play(Pcm.of((short) 3));
    assertEquals(Optional.empty(), Speaker.problem(first));
    assertEquals(Optional.empty(), Speaker.problem(second));
    short[] heard = line.heard();
    assertArrayEquals(new short[] {1, 2, 0}, Arrays.copyOf(heard, 3));
    assertEquals(3, heard[heard.length / 2]);
    assertEquals(1, opened);
  }

  @Test
  void returnsAtOnceWhileTheDeviceIsSlow() throws InterruptedException {
    CompletableFuture<Void> done = speaker.play(Pcm.silence(1));
    line.writing.await();
    assertFalse(done.isDone());
  }

  @Test
  void fallsSilentWhenStopped() throws InterruptedException {
    CompletableFuture<Void> playing = speaker.play(Pcm.silence(100));
    CompletableFuture<Void> waiting = speaker.play(Pcm.silence(1));
    line.writing.await();
    speaker.stop();
    line.room.release(1000);
    assertTrue(playing.isCancelled());
    assertTrue(waiting.isCancelled());
    CompletableFuture<Void> next = speaker.play(Pcm.of((short) 7));
    next.join();
    assertTrue(line.heard().length < 10 * Pcm.RATE);
    assertEquals(1, line.flushes);
  }

  @Test
  void saysThatThereIsNoDeviceAndPlaysOnceThereIsOne() {
    present = false;
    line.room.release(1000);
    AudioProblem problem = Speaker.problem(speaker.play(Pcm.silence(0.1))).orElseThrow();
    assertEquals("expected a loudspeaker, found none", problem.getMessage());
    present = true;
    assertEquals(Optional.empty(), Speaker.problem(speaker.play(Pcm.silence(0.1))));
  }

  @Test
  void opensTheDeviceAnewAfterItFailed() {
    line.room.release(1000);
    line.broken = true;
    assertEquals(
        "expected room, found none",
        Speaker.problem(speaker.play(Pcm.silence(0.1))).orElseThrow().getMessage());
    line.broken = false;
    assertEquals(Optional.empty(), Speaker.problem(speaker.play(Pcm.silence(0.1))));
    assertEquals(2, opened);
  }

  @Test
  void playsNothingOnceClosed() {
    speaker.close();
    assertTrue(speaker.play(Pcm.silence(1)).isCancelled());
  }

  @Test
  void refusesSoundAtAnotherRate() {
    IllegalArgumentException e =
        assertThrows(
            IllegalArgumentException.class, () -> speaker.play(new Pcm(new short[1], 8000)));
    assertEquals("expected sound at 16000 Hz, found 8000 Hz", e.getMessage());
  }

  private static final class FakeLine implements SpeakerLine {
    private final Semaphore room = new Semaphore(0);
    private final CountDownLatch writing = new CountDownLatch(1);
    private short[] heard = new short[0];
    private volatile boolean broken;
    private volatile int flushes;

    synchronized short[] heard() {
      return heard;
    }

    @Override
    public void write(short[] samples) throws AudioProblem {
      writing.countDown();
      room.acquireUninterruptibly();
      if (broken) {
        throw new AudioProblem("expected room, found none");
      }
      synchronized (this) {
        int before = heard.length;
        heard = Arrays.copyOf(heard, before + samples.length);
        System.arraycopy(samples, 0, heard, before, samples.length);
      }
    }

    @Override
    public void flush() {
      flushes++;
    }

    @Override
    public void close() {}
  }
}
