package tiptoe.audio;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Levels and times are the gate's own; no source outside. */
class QuietGateTest {
  private static final int PIECE = Pcm.RATE / 50;

  private final QuietGate gate = new QuietGate();
  private final List<short[]> handed = new ArrayList<>();
  private final Random random = new Random(7);
  private boolean busy;

  /** Noise at a level in dB from full scale, in pieces of 20 ms. */
  private void hear(double seconds, double db) {
    double amplitude = Math.pow(10, db / 20) * Pcm.FULL_SCALE;
    for (int i = 0; i < Math.round(seconds * 50); i++) {
      short[] piece = new short[PIECE];
      for (int j = 0; j < PIECE; j++) {
        piece[j] = (short) Math.round(random.nextGaussian() * amplitude);
      }
      handed.addAll(gate.pass(piece, () -> busy));
    }
  }

  private double handedSeconds() {
    return handed.stream().mapToInt(piece -> piece.length).sum() / (double) Pcm.RATE;
  }

  @ParameterizedTest
  @ValueSource(doubles = {-200, -80, -50, -30})
  void shutsAfterThreeSecondsOfOneSteadySound(double db) {
    hear(2.9, db);
    assertFalse(gate.isShut());
    hear(60, db);
    assertTrue(gate.isShut());
    assertEquals(3.0, handedSeconds(), 0.11);
  }

  @ParameterizedTest
  @ValueSource(doubles = {-60, -40, -30})
  void handsOverTheSecondBeforeTheFirstLouderSound(double quiet) {
    hear(20, quiet);
    double before = handedSeconds();
    hear(0.1, quiet + 8);
    assertFalse(gate.isShut());
    assertEquals(before + 1.02, handedSeconds(), 0.001);
    assertEquals(20.1, handedSeconds() + gate.skipped() / (double) Pcm.RATE, 0.001);
  }

  @Test
  void losesNothingAndChangesNoOrderWhenItOpens() {
    hear(10, -60);
    int known = handed.size();
    List<short[]> given = new ArrayList<>();
    for (int i = 0; i < 50; i++) {
      short[] piece = new short[PIECE];
      piece[0] = (short) i;
      given.add(piece);
      assertTrue(gate.pass(piece, () -> false).isEmpty());
    }
    hear(0.2, -20);
    for (int i = 6; i < 50; i++) {
      assertArrayEquals(given.get(i), handed.get(known + i - 4));
    }
  }

  @Test
  void staysOpenWhileWordsAreBeingSaid() {
    busy = true;
    hear(30, -60);
    assertFalse(gate.isShut());
    busy = false;
    hear(0.2, -60);
    assertTrue(gate.isShut());
  }

  @Test
  void staysOpenInSoundThatComesAndGoes() {
    for (int i = 0; i < 60; i++) {
      hear(0.5, -40);
      hear(0.5, -30);
    }
    assertFalse(gate.isShut());
    assertEquals(60.0, handedSeconds(), 0.001);
  }
}
