package tiptoe.audio;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Test;

/** A pause is told by the fall of the sound, and never where there is none. */
class HushTest {
  private final Hush hush = new Hush();
  private final Random random = new Random(3);

  /** White noise of this root mean square, in dB from full scale. */
  private void hear(double seconds, double level) {
    short[] samples = new short[(int) (seconds * Pcm.RATE)];
    for (int i = 0; i < samples.length; i++) {
      samples[i] = (short) (random.nextGaussian() * Level.amplitude(level) * Pcm.FULL_SCALE);
    }
    hush.take(samples);
  }

  @Test
  void aFallByThirtyDecibelsForTwoTenthsIsAPause() {
    hear(1, -20);
    assertFalse(hush.isQuiet());
    hear(0.1, -50);
    assertFalse(hush.isQuiet(), "no longer than the closure of a stop");
    hear(0.1, -50);
    assertTrue(hush.isQuiet());
  }

  @Test
  void theFirstFiftyMillisecondsOfANewWordEndIt() {
    hear(1, -20);
    hear(0.5, -50);
    hear(0.05, -30);
    assertFalse(hush.isQuiet());
  }

  @Test
  void besideOtherSoundNothingIsTold() {
    hear(1, -20);
    hear(1, -32);
    assertFalse(hush.isQuiet(), "a cry twelve decibels below goes on");
  }

  @Test
  void aRoomThatWasQuietAllTheTimeHasNoPause() {
    assertFalse(hush.isQuiet());
    hear(3, -60);
    assertFalse(hush.isQuiet());
  }
}
