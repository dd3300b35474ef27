package tiptoe.audio;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class WardSoundsTest {
  @Test
  void writesTheSameSoundsForTheSameSeed(@TempDir Path folder) throws IOException {
    WardSounds.writeAll(folder, 3, 1);
    for (String name : WardSounds.all(3, 1).keySet()) {
      Pcm read = AudioFile.read(folder.resolve(name + ".wav"));
      assertEquals(WardSounds.all(3, 1).get(name), read);
      assertEquals(-26, read.level().rmsDb(), 1, name);
    }
  }

  @Test
  void humsAtTheMainsAndItsHarmonics() {
    Pcm hum = WardSounds.hum(2, 50);
    assertTrue(Goertzel.decibels(hum, 50) - Goertzel.decibels(hum, 100) > 10);
    assertTrue(Goertzel.decibels(hum, 300) > -70);
    assertTrue(Goertzel.decibels(hum, 75) < -90);
  }

  @Test
  void beepsAtEachBeat() {
    Pcm beeps = WardSounds.monitorBeeps(3, 120);
    for (int beat = 0; beat < 6; beat++) {
      assertTrue(Goertzel.amplitude(beeps.slice(0.5 * beat, 0.5 * beat + 0.08), 660) > 0.05);
      assertTrue(beeps.slice(0.5 * beat + 0.09, 0.5 * beat + 0.49).level().isSilent());
    }
  }

  @Test
  void cutsOffAndShiftsAndWeakens() {
    Pcm tone = Signals.tone(500, 1, 0.5);
    assertTrue(WardSounds.clipped(tone, 12).level().isClipping());
    assertEquals(tone.level().rmsDb() - 20, WardSounds.quieter(tone, 20).level().rmsDb(), 0.05);
    Pcm shifted = WardSounds.withOffset(tone, 0.1);
    assertEquals(0.1, mean(shifted) - mean(tone), 0.001);
  }

  /** In full scales. */
  private static double mean(Pcm sound) {
    double sum = 0;
    for (short sample : sound.samples()) {
      sum += sample;
    }
    return sum / sound.samples().length / Pcm.FULL_SCALE;
  }
}
