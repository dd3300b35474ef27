package tiptoe.audio;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class LevelControlTest {
  @ParameterizedTest
  @ValueSource(doubles = {-40, -33, -26, -18, -15})
  void bringsVoicesToTheTarget(double voiceDb) {
    Pcm out = controlled(talk(voiceDb, 12));
    assertEquals(LevelControl.TARGET_DB, SpeechLevel.of(out.slice(15, 24)).activeDb(), 2);
  }

  @Test
  void liftsAWhisperNoFurtherThanItsLimit() {
    LevelControl control = new LevelControl();
    control.apply(talk(-55, 12).samples());
    assertEquals(18, control.gainDb(), 0.01);
  }

  @Test
  void movesNoFasterThanFourDecibelsASecond() {
    LevelControl control = new LevelControl();
    double before = 0;
    for (int i = 0; i < 200; i++) {
      control.apply(talk(-45, 12).slice(0.1 * i, 0.1 * (i + 1)).samples());
      assertTrue(Math.abs(control.gainDb() - before) <= 0.4 + 1e-9);
      before = control.gainDb();
    }
  }

  @Test
  void doesNotLiftSteadyNoise() {
    LevelControl control = new LevelControl();
    control.apply(Signals.noise(60, Level.amplitude(-50), 1).samples());
    assertEquals(0, control.gainDb(), 0.5);
  }

  @Test
  void restsInPauses() {
    LevelControl control = new LevelControl();
    control.apply(talk(-40, 12).samples());
    double before = control.gainDb();
    control.apply(Signals.noise(30, Level.amplitude(-68), 1).samples());
    assertEquals(before, control.gainDb(), 0.5);
  }

  @Test
  void keepsASuddenCryBelowFullScale() {
    LevelControl control = new LevelControl();
    control.apply(talk(-45, 12).samples());
    Level level = Level.of(control.apply(Signals.tone(450, 1, 0.9).samples()));
    assertTrue(level.peakDb() <= -0.9, level.toString());
    assertEquals(0, level.clipped());
  }

  @Test
  void givesTheSameForAnyChunks() {
    Pcm talk = talk(-35, 3);
    LevelControl pieced = new LevelControl();
    short[] first = pieced.apply(talk.slice(0, 1.2345).samples());
    short[] rest = pieced.apply(talk.slice(1.2345, talk.seconds()).samples());
    assertArrayEquals(controlled(talk).samples(), Pcm.join(Pcm.of(first), Pcm.of(rest)).samples());
  }

  private static Pcm controlled(Pcm pcm) {
    return Pcm.of(new LevelControl().apply(pcm.samples()));
  }

  /** Phrases of 1.2 s with pauses of 0.8 s, over a quiet room. */
  private static Pcm talk(double activeDb, int phrases) {
    Pcm all = Pcm.of();
    for (int i = 0; i < phrases; i++) {
      all =
          Pcm.join(
              all,
              Signals.noise(1.2, Level.amplitude(activeDb), i),
              Signals.noise(0.8, Level.amplitude(-75), i));
    }
    return all;
  }
}
