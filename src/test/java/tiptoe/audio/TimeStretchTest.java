package tiptoe.audio;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class TimeStretchTest {
  @ParameterizedTest
  @ValueSource(doubles = {0.5, 0.7, 0.85, 1.3, 2})
  void changesTheLengthAndKeepsThePitch(double speed) {
    Pcm tone = Signals.tone(220, 2, 0.5);
    Pcm stretched = TimeStretch.stretch(tone, speed);
    assertEquals(2 / speed, stretched.seconds(), 1e-3);
    Pcm middle = stretched.slice(0.1, stretched.seconds() - 0.1);
    assertEquals(0.5, Goertzel.amplitude(middle, 220), 0.02);
    assertTrue(Goertzel.amplitude(middle, 220 * speed) < 0.05);
  }

  /** Each event stays in its place: two clicks of tone move apart by the same factor. */
  @Test
  void keepsEventsInProportion() {
    Pcm burst = Signals.tone(500, 0.1, 0.5);
    Pcm clip = Pcm.join(Pcm.silence(0.5), burst, Pcm.silence(0.9), burst, Pcm.silence(0.4));
    Pcm slow = TimeStretch.stretch(clip, 0.5);
    assertTrue(slow.slice(1.05, 1.15).level().rmsDb() > -15);
    assertTrue(slow.slice(3.05, 3.15).level().rmsDb() > -15);
    assertTrue(slow.slice(0.1, 0.9).level().rmsDb() < -60);
    assertTrue(slow.slice(1.4, 2.9).level().rmsDb() < -60);
  }

  @Test
  void leavesNearlyUnchangedWhatKeepsItsSpeed() {
    Pcm noise = Signals.noise(1, 0.1, 1);
    assertArrayEquals(
        noise.slice(0, 0.9).samples(), TimeStretch.stretch(noise, 1).slice(0, 0.9).samples());
  }

  @Test
  void leavesTooShortClipsAlone() {
    assertEquals(0, TimeStretch.stretch(Pcm.of(), 0.5).samples().length);
  }

  @Test
  void refusesSpeedsOutsideHalfToDouble() {
    IllegalArgumentException e =
        assertThrows(
            IllegalArgumentException.class, () -> TimeStretch.stretch(Pcm.silence(1), 0.3));
    assertEquals("expected a speed of 0.5 to 2, found 0.3", e.getMessage());
  }
}
