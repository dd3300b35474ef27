package tiptoe.audio;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Levels are the lift's own, common practice; no source outside. */
class LevelLiftTest {
  private final LevelLift lift = new LevelLift();

  private static short[] square(double db) {
    short[] block = new short[LevelLift.BLOCK];
    short size = (short) Math.round(Level.amplitude(db) * Pcm.FULL_SCALE);
    for (int i = 0; i < block.length; i++) {
      block[i] = i % 2 == 0 ? size : (short) -size;
    }
    return block;
  }

  private double heard(double db) {
    short[] block = square(db);
    lift.apply(block);
    return Level.of(block).rmsDb();
  }

  @ParameterizedTest(name = "{0} dB is heard at {1} dB")
  @CsvSource({"-40, -22", "-50, -22", "-60, -26", "-70, -36"})
  void bringsUpWhatIsFarTooLow(double db, double wanted) {
    assertEquals(wanted, heard(db), 1);
  }

  @ParameterizedTest
  @ValueSource(doubles = {-10, -26, -31, -80})
  void leavesSpeechOfAnyUsualLevelAndAQuietRoomToTheLastBit(double db) {
    short[] block = square(db);
    lift.apply(block);
    assertArrayEquals(square(db), block);
  }

  @Test
  void bringsNothingUpForAMinuteBehindSomethingLoudEnough() {
    heard(-20);
    int blocksOfAMinute = 60 * Pcm.RATE / LevelLift.BLOCK;
    for (int i = 0; i < blocksOfAMinute - 40; i++) {
      assertEquals(-50, heard(-50), 0.5);
    }
    for (int i = 0; i < 80; i++) {
      heard(-50);
    }
    assertEquals(-22, heard(-50), 0.5);
  }
}
