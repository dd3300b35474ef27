package tiptoe.audio;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

/** The capture threads on a microphone whose every move the test decides. */
class MicrophoneTest {
  private static final Instant START = Instant.parse("2026-03-01T10:00:00Z");

  /** Far more than any machine needs; only a failing test waits for it. */
  private static final long PATIENCE_SECONDS = 30;

  private final SettableClock clock = new SettableClock();
  private final BlockingQueue<short[]> incoming = new LinkedBlockingQueue<>();
  private final BlockingQueue<CaptureEvent> events = new LinkedBlockingQueue<>();
  private final CountDownLatch hung = new CountDownLatch(1);
  private volatile boolean plugged = true;
  private volatile boolean hanging;
  private Microphone microphone;

  @AfterEach
  void close() {
    if (microphone != null) {
      microphone.close();
    }
  }

  @Test
  void handsOnWhatTheLineGives() throws Exception {
    SampleSource reader = open().listen();
    incoming.add(loud());
    Chunk chunk = reader.next().orElseThrow();
    assertEquals(0, chunk.position());
    assertEquals(1600, chunk.samples().length);
  }

  @Test
  void letsEveryReaderHearAll() throws Exception {
    SampleSource first = open().listen();
    SampleSource second = microphone.listen();
    incoming.add(loud());
    assertEquals(1600, first.next().orElseThrow().end());
    assertEquals(1600, second.next().orElseThrow().end());
    SampleSource late = microphone.listen();
    incoming.add(loud());
    assertEquals(1600, first.next().orElseThrow().position());
    Chunk chunk = late.next().orElseThrow();
    assertEquals(1600, chunk.position());
    assertEquals(0, chunk.lost());
  }

  @Test
  void comesBackAfterTheMicrophoneWasPulledOut() throws Exception {
    SampleSource reader = open().listen();
    incoming.add(loud());
    reader.next();
    plugged = false;
    CaptureEvent.Trouble trouble = assertInstanceOf(CaptureEvent.Trouble.class, event());
    assertEquals(Gap.Cause.GONE, trouble.cause());
    assertEquals("expected sound, found that it was pulled out", trouble.detail());
    clock.advance(Duration.ofSeconds(7));
    incoming.add(loud());
    plugged = true;
    Gap gap = assertInstanceOf(CaptureEvent.Recovered.class, event()).gap();
    assertEquals(1600, gap.from());
    assertEquals(7 * 16_000, gap.to());
    Chunk chunk = reader.next().orElseThrow();
    assertEquals(7 * 16_000 - 1600, chunk.lost());
    assertEquals(7 * 16_000, chunk.position());
  }

  @Test
  void saysThatNothingComes() throws Exception {
    open();
    clock.advance(Duration.ofSeconds(3));
    CaptureEvent.Trouble trouble = assertInstanceOf(CaptureEvent.Trouble.class, event());
    assertEquals(Gap.Cause.STALLED, trouble.cause());
    assertEquals(START, trouble.since());
  }

  @Test
  void goesOnWatchingThoughItsListenerFails() throws Exception {
    microphone =
        Microphone.open(
            this::line,
            clock,
            event -> {
              events.add(event);
              throw new IllegalStateException("a listener at fault, thrown by a test");
            });
    SampleSource reader = microphone.listen();
    clock.advance(Duration.ofSeconds(3));
    assertInstanceOf(CaptureEvent.Trouble.class, event());
    incoming.add(loud());
    assertInstanceOf(CaptureEvent.Recovered.class, event());
    assertEquals(0, reader.next().orElseThrow().lost());
  }

  /** A driver call that never returns, as of a sound server that hangs. */
  @Test
  void triesTheDeviceAnewWhenItsDriverHangs() throws Exception {
    hanging = true;
    SampleSource reader = open().listen();
    hanging = false;
    incoming.add(loud());
    assertEquals(1600, reader.next().orElseThrow().samples().length);
    hung.countDown();
  }

  @Test
  void endsItsReadersWhenClosed() throws Exception {
    SampleSource reader = open().listen();
    microphone.close();
    assertEquals(Optional.empty(), reader.next());
    assertEquals(Optional.empty(), microphone.listen().next());
  }

  @Test
  void saysAtOnceThatItCannotBeOpened() {
    plugged = false;
    AudioProblem problem = assertThrows(AudioProblem.class, this::open);
    assertEquals("expected a microphone, found none", problem.getMessage());
  }

  @Test
  void choosesADeviceByAnyPartOfItsName() throws AudioProblem {
    List<String> names = List.of("default [default]", "Cot USB [plughw:1,0]", "USB [plughw:2,0]");
    assertEquals(0, Devices.choice(names, Optional.empty(), "microphone"));
    assertEquals(1, Devices.choice(names, Optional.of("cot"), "microphone"));
    assertEquals(2, Devices.choice(names, Optional.of("usb [PLUGHW:2,0]"), "microphone"));
  }

  @Test
  void saysWhichDevicesThereAreWhenTheNameFitsNoneOrSeveral() {
    List<String> names = List.of("Cot USB", "Desk USB", "Lid");
    assertEquals(
        "expected one microphone named like 'usb', found Cot USB, Desk USB", problem(names, "usb"));
    assertEquals(
        "expected one microphone named like 'headset', found Cot USB, Desk USB, Lid",
        problem(names, "headset"));
    assertEquals("expected a microphone, found none", problem(List.of(), "usb"));
  }

  private static String problem(List<String> names, String wanted) {
    return assertThrows(
            AudioProblem.class, () -> Devices.choice(names, Optional.of(wanted), "microphone"))
        .getMessage();
  }

  private Microphone open() throws AudioProblem {
    microphone = Microphone.open(this::line, clock, events::add);
    return microphone;
  }

  private CaptureEvent event() throws InterruptedException {
    CaptureEvent event = events.poll(PATIENCE_SECONDS, TimeUnit.SECONDS);
    assertNotNull(event, "no event came");
    return event;
  }

  private CaptureLine line() throws AudioProblem {
    if (!plugged) {
      throw new AudioProblem("expected a microphone, found none");
    }
    boolean hangs = hanging;
    return new CaptureLine() {
      @Override
      public short[] read() throws AudioProblem {
        if (hangs) {
          awaitRelease();
        }
        if (!plugged) {
          throw new AudioProblem("expected sound, found that it was pulled out");
        }
        short[] next = incoming.poll();
        return next == null ? new short[0] : next;
      }

      @Override
      public Duration buffer() {
        return Duration.ofDays(1); // the clock stands still or leaps; no read is ever late
      }

      @Override
      public void close() {}
    };
  }

  private void awaitRelease() throws AudioProblem {
    try {
      hung.await();
    } catch (InterruptedException e) {
      throw new AudioProblem("expected to hang, found an interruption", e);
    }
  }

  private static short[] loud() {
    short[] samples = new short[1600];
    Arrays.fill(samples, (short) 1000);
    return samples;
  }

  private static final class SettableClock extends Clock {
    private volatile Instant now = START;

    void advance(Duration duration) {
      now = now.plus(duration);
    }

    @Override
    public Instant instant() {
      return now;
    }

    @Override
    public ZoneId getZone() {
      return ZoneOffset.UTC;
    }

    @Override
    public Clock withZone(ZoneId zone) {
      return this;
    }
  }
}
