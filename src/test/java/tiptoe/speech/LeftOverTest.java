package tiptoe.speech;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;

/** A tone stands for speech: 3 s that begin 10 s after the recogniser was opened. */
class LeftOverTest {
  private static final double BEGIN = 10;
  private static final double ACCURACY = 0.011;

  @Test
  void soundAsLoudAsTheWordsThatNoneOfThemCoversIsLeftOver() {
    short[] sound = new short[3 * Recogniser.RATE];
    tone(sound, 0, 1, 3000);
    tone(sound, 2, 2.5, 3000);
    assertEquals(1, seconds(sound, word(12, 12.5)), ACCURACY);
    assertEquals(0.5, seconds(sound, word(10, 11)), ACCURACY);
    assertEquals(0, seconds(sound, word(10, 11), word(12, 12.5)), ACCURACY);
  }

  @Test
  void wordsMayBeALittleLongerThanTold() {
    short[] sound = new short[3 * Recogniser.RATE];
    tone(sound, 0, 1, 3000);
    assertEquals(0, seconds(sound, word(10.05, 10.95)), ACCURACY);
    assertEquals(0.04, seconds(sound, word(10, 10.9)), ACCURACY);
  }

  @Test
  void fillerAccountsForSoundToo() {
    short[] sound = new short[3 * Recogniser.RATE];
    tone(sound, 0, 2.5, 3000);
    assertEquals(
        0, seconds(sound, new Word(Hypothesis.FILLER, 10, 12, 1), word(12, 12.5)), ACCURACY);
  }

  @Test
  void fainterSoundIsNot() {
    short[] sound = new short[3 * Recogniser.RATE];
    tone(sound, 0, 1, 1100); // 8.7 dB below
    tone(sound, 2, 2.5, 3000);
    assertEquals(0, seconds(sound, word(12, 12.5)), ACCURACY);
    tone(sound, 0, 1, 1300); // 7.3 dB below
    assertEquals(1, seconds(sound, word(12, 12.5)), ACCURACY);
  }

  @Test
  void aMicrophoneThatIsOffCentreMakesNoSound() {
    short[] sound = new short[3 * Recogniser.RATE];
    tone(sound, 2, 2.5, 3000);
    for (int i = 0; i < sound.length; i++) {
      sound[i] += 8000;
    }
    assertEquals(0, seconds(sound, word(12, 12.5)), ACCURACY);
  }

  @Test
  void whereWordsLieOutsideTheSoundNothingIsSaidOfIt() {
    short[] sound = new short[3 * Recogniser.RATE];
    tone(sound, 0, 1, 3000);
    assertEquals(0, seconds(sound, word(20, 21)), ACCURACY);
  }

  private static double seconds(short[] sound, Word... words) {
    return LeftOver.seconds(sound, BEGIN, List.of(words));
  }

  private static Word word(double start, double end) {
    return new Word("pink", start, end, 1);
  }

  private static void tone(short[] sound, double from, double to, double peak) {
    for (int i = (int) (from * Recogniser.RATE); i < to * Recogniser.RATE; i++) {
      sound[i] = (short) (peak * Math.sin(2 * Math.PI * 200 * i / Recogniser.RATE));
    }
  }
}
