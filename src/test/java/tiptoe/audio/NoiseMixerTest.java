package tiptoe.audio;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class NoiseMixerTest {
  private static final Pcm TALK =
      Pcm.join(Pcm.silence(1), Signals.noise(2, 0.05, 1), Pcm.silence(1));

  @ParameterizedTest
  @ValueSource(doubles = {20, 15, 10, 5, 0, -5})
  void setsTheRatioOfActiveSpeechToNoise(double snrDb) {
    Pcm mixed = NoiseMixer.mix(TALK, Signals.noise(7, 0.2, 2), snrDb, 3);
    // The first second holds nothing but noise.
    double noiseDb = mixed.slice(0, 0.9).level().rmsDb();
    assertEquals(SpeechLevel.of(TALK).activeDb() - snrDb, noiseDb, 0.15);
  }

  @Test
  void givesTheSameForTheSameSeedOnly() {
    Pcm noise = Signals.noise(7, 0.2, 2);
    Pcm mixed = NoiseMixer.mix(TALK, noise, 10, 3);
    assertArrayEquals(mixed.samples(), NoiseMixer.mix(TALK, noise, 10, 3).samples());
    assertFalse(Arrays.equals(mixed.samples(), NoiseMixer.mix(TALK, noise, 10, 4).samples()));
  }

  @Test
  void repeatsNoiseThatIsTooShort() {
    Pcm mixed = NoiseMixer.mix(TALK, Signals.noise(0.5, 0.2, 2), 10, 3);
    double expected = SpeechLevel.of(TALK).activeDb() - 10;
    assertEquals(expected, mixed.slice(3.2, 4).level().rmsDb(), 0.5);
  }

  @Test
  void turnsBothDownWhereTheSumWouldBeCutOff() {
    Pcm loud = Signals.tone(300, 2, 0.9);
    Pcm mixed = NoiseMixer.mix(loud, Signals.tone(1000, 2, 0.5), 0, 1);
    assertEquals(0, mixed.level().peakDb(), 0.01);
    double ratio = Goertzel.amplitude(mixed, 300) / Goertzel.amplitude(mixed, 1000);
    assertEquals(0, 20 * Math.log10(ratio), 0.1);
  }

  /** A cry in a long silence: whatever the seed, the stretch used holds some of it. */
  @Test
  void doesNotMixInAPause() {
    Pcm cry = Pcm.join(Pcm.silence(20), Signals.noise(10, 0.2, 2), Pcm.silence(20));
    for (int seed = 0; seed < 20; seed++) {
      Pcm mixed = NoiseMixer.mix(Signals.noise(4, 0.05, 1), cry, 0, seed);
      assertEquals(-23, mixed.level().rmsDb(), 0.3);
    }
  }

  @Test
  void refusesSilence() {
    assertEquals("expected sound on both sides, found silent noise", message(TALK, Pcm.silence(3)));
    assertEquals(
        "expected sound on both sides, found silent speech", message(Pcm.silence(3), TALK));
    assertEquals("expected sound on both sides, found silent noise", message(TALK, Pcm.of()));
  }

  private static String message(Pcm speech, Pcm noise) {
    return assertThrows(IllegalArgumentException.class, () -> NoiseMixer.mix(speech, noise, 10, 1))
        .getMessage();
  }
}
