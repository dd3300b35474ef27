package tiptoe.audio;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

class CaptureWatchTest {
  private static final Instant START = Instant.parse("2026-03-01T10:00:00Z");

  private final CaptureWatch watch = new CaptureWatch(START);

  @Test
  void placesSamplesOneBehindTheOther() {
    assertEquals(0, sound(0.1, 1600).get(0).position());
    assertEquals(1600, sound(0.2, 1600).get(0).position());
    assertEquals(List.of(), watch.takeEvents());
  }

  @Test
  void cutsWhatComesAtOnceIntoChunksOfAFifthOfASecond() {
    List<Chunk> chunks = sound(1, 8000);
    assertEquals(List.of(3200, 3200, 1600), chunks.stream().map(c -> c.samples().length).toList());
    assertEquals(List.of(0L, 3200L, 6400L), chunks.stream().map(Chunk::position).toList());
  }

  @Test
  void tellsWithinThreeSecondsThatNothingComes() {
    sound(0.1, 1600);
    watch.check(at(2.5));
    assertEquals(List.of(), watch.takeEvents());
    watch.check(at(2.7));
    assertEquals(
        List.of(new CaptureEvent.Trouble(at(0.1), at(2.7), Gap.Cause.STALLED, "")),
        watch.takeEvents());
    watch.check(at(2.9));
    assertEquals(List.of(), watch.takeEvents());
  }

  @Test
  void tellsThatAMicrophoneNeverBegins() {
    watch.check(at(2.6));
    sound(4, 1600);
    assertEquals(
        List.of(
            new CaptureEvent.Trouble(START, at(2.6), Gap.Cause.STALLED, ""),
            new CaptureEvent.Recovered(new Gap(0, 0, START, at(4), Gap.Cause.STALLED))),
        watch.takeEvents());
  }

  @Test
  void countsWhatWasLostWhileTheMicrophoneWasGone() {
    sound(1, 16_000);
    watch.broke(at(1.1), "unplugged");
    watch.check(at(5));
    watch.opened(at(6), Duration.ofSeconds(1));
    List<Chunk> chunks = sound(6.1, 1600);
    assertEquals(80_000, chunks.get(0).lost());
    assertEquals(96_000, chunks.get(0).position());
    assertEquals(
        List.of(
            new CaptureEvent.Trouble(at(1), at(1.1), Gap.Cause.GONE, "unplugged"),
            new CaptureEvent.Recovered(new Gap(16_000, 96_000, at(1), at(6.1), Gap.Cause.GONE))),
        watch.takeEvents());
    assertEquals(0, sound(6.2, 1600).get(0).lost());
  }

  @Test
  void tellsWithinThreeSecondsThatTheMicrophoneIsMute() {
    sound(0.1, 1600);
    for (int i = 1; i <= 24; i++) {
      watch.polled(at(0.1 + 0.1 * i), new short[1600]);
    }
    assertEquals(List.of(), watch.takeEvents());
    watch.polled(at(2.6), new short[1600]);
    assertEquals(
        List.of(new CaptureEvent.Trouble(at(0.1), at(2.6), Gap.Cause.SILENT, "")),
        watch.takeEvents());
    Chunk back = sound(2.7, 1600).get(0);
    assertEquals(0, back.lost());
    CaptureEvent.Recovered recovered = (CaptureEvent.Recovered) watch.takeEvents().get(0);
    assertEquals(1600, recovered.gap().from());
    assertEquals(Gap.Cause.SILENT, recovered.gap().cause());
    assertEquals(at(2.7), recovered.gap().until());
  }

  @Test
  void takesAQuietRoomForSound() {
    short[] quiet = new short[1600];
    quiet[800] = 1;
    for (int i = 1; i <= 100; i++) {
      watch.polled(at(0.1 * i), quiet);
    }
    assertEquals(List.of(), watch.takeEvents());
  }

  @Test
  void countsWhatWasLostWhileTheComputerSlept() {
    sound(1, 16_000);
    List<Chunk> chunks = sound(61, 16_000);
    assertEquals(59 * 16_000, chunks.get(0).lost());
    assertEquals(0, chunks.get(1).lost());
    List<CaptureEvent> events = watch.takeEvents();
    assertEquals(2, events.size());
    Gap gap = ((CaptureEvent.Recovered) events.get(1)).gap();
    assertEquals(59, gap.seconds());
    assertEquals(Gap.Cause.OVERRUN, gap.cause());
  }

  /** The driver holds a second of sound, so that a pause of half a second loses none. */
  @Test
  void losesNothingInAShortPause() {
    sound(1, 16_000);
    assertEquals(0, sound(1.9, 14_400).get(0).lost());
    assertEquals(List.of(), watch.takeEvents());
  }

  /** The driver held more than it had promised: nothing is missing. */
  @Test
  void losesNothingWhereTheDriverKeptItAll() {
    sound(1, 16_000);
    assertEquals(0, sound(3, 32_000).get(0).lost());
    assertEquals(List.of(), watch.takeEvents());
  }

  @Test
  void goesByTheBufferThatTheDriverReallyHas() {
    watch.opened(START, Duration.ofMillis(200));
    sound(0.1, 1600);
    assertEquals(4800, sound(0.6, 3200).get(0).lost());
    assertEquals(2, watch.takeEvents().size());
  }

  @Test
  void noticesTroubleThoughTheClockWasPutBack() {
    sound(1, 16_000);
    watch.check(at(-3600));
    watch.check(at(-3597));
    assertEquals(1, watch.takeEvents().size());
  }

  @Test
  void tellsWhenOneTroubleTurnsIntoAnother() {
    sound(1, 16_000);
    watch.check(at(4));
    watch.broke(at(5), "no such device");
    List<CaptureEvent> events = watch.takeEvents();
    assertEquals(
        new CaptureEvent.Trouble(at(1), at(5), Gap.Cause.GONE, "no such device"), events.get(1));
    watch.check(at(9));
    assertTrue(watch.takeEvents().isEmpty());
  }

  private List<Chunk> sound(double seconds, int samples) {
    short[] loud = new short[samples];
    Arrays.fill(loud, (short) 1000);
    return watch.polled(at(seconds), loud);
  }

  private static Instant at(double seconds) {
    return START.plus(Duration.ofMillis(Math.round(seconds * 1000)));
  }
}
