package tiptoe.audio;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

class ToneTest {
  @ParameterizedTest
  @EnumSource(Tone.class)
  void soundsItsNotesOneAfterTheOther(Tone tone) {
    Pcm pcm = tone.render(1);
    double at = 0;
    for (Tone.Note note : tone.notes()) {
      Pcm part = pcm.slice(at, at + note.seconds());
      assertTrue(Goertzel.decibels(part, note.hertz()) > -14, tone + " at " + note.hertz());
      for (Tone.Note other : tone.notes()) {
        if (other != note) {
          assertTrue(Goertzel.decibels(part, other.hertz()) < -40);
        }
      }
      at += note.seconds() + 0.02;
    }
    assertEquals(at - 0.02, pcm.seconds(), 1e-4);
  }

  @ParameterizedTest
  @EnumSource(Tone.class)
  void isShortSoftAndFreeOfClicks(Tone tone) {
    short[] samples = tone.render(1).samples();
    assertTrue(samples.length <= 0.4 * Pcm.RATE);
    assertTrue(Level.of(samples).peakDb() <= -12);
    assertEquals(0, samples[0]);
    assertEquals(0, samples[samples.length - 1]);
    // A step between two samples no steeper than the steepest slope of the highest note.
    double steepest = 0.25 * Pcm.FULL_SCALE * 2 * Math.PI * 1046.5 / Pcm.RATE;
    for (int i = 1; i < samples.length; i++) {
      assertTrue(Math.abs(samples[i] - samples[i - 1]) <= steepest + 1);
    }
  }

  /** No harmonics: that is what sets them apart from the alarms of monitors. */
  @ParameterizedTest
  @EnumSource(Tone.class)
  void isMadeOfBareSines(Tone tone) {
    Tone.Note first = tone.notes().get(0);
    Pcm part = tone.render(1).slice(0, first.seconds());
    for (int harmonic = 2; harmonic <= 5; harmonic++) {
      assertTrue(Goertzel.decibels(part, harmonic * first.hertz()) < -70);
    }
  }

  @Test
  void isUnlikeAnyOther() {
    List<List<Long>> melodies = new ArrayList<>();
    for (Tone tone : Tone.values()) {
      melodies.add(tone.notes().stream().map(n -> Math.round(n.hertz())).toList());
    }
    assertEquals(Tone.values().length, melodies.stream().collect(Collectors.toSet()).size());
    assertTrue(Tone.QUESTION.notes().get(0).hertz() < Tone.QUESTION.notes().get(1).hertz());
    assertTrue(Tone.FLAG.notes().get(0).hertz() > Tone.FLAG.notes().get(1).hertz());
  }

  @Test
  void getsQuieterWithTheSquareOfTheVolume() {
    double loud = Tone.PAUSED.render(1).level().rmsDb();
    assertEquals(loud - 12.04, Tone.PAUSED.render(0.5).level().rmsDb(), 0.05);
    assertTrue(Tone.PAUSED.render(0).level().isSilent());
  }

  @ParameterizedTest
  @ValueSource(doubles = {-0.1, 1.1, Double.NaN})
  void refusesVolumesOutsideZeroToOne(double volume) {
    IllegalArgumentException e =
        assertThrows(IllegalArgumentException.class, () -> Tone.FLAG.render(volume));
    assertEquals("expected a volume of 0 to 1, found " + volume, e.getMessage());
  }
}
