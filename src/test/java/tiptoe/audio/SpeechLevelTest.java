package tiptoe.audio;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What ITU-T P.56 says of the active level, on sounds whose active part is known. */
class SpeechLevelTest {
  @Test
  void isTheWholeLevelOfSoundWithoutPauses() {
    SpeechLevel level = SpeechLevel.of(Signals.noise(10, 0.05, 1));
    assertEquals(20 * Math.log10(0.05), level.activeDb(), 0.1);
    assertEquals(1, level.activity(), 0.02);
  }

  /** Pauses of 2 s: all but the hangover of 0.2 s, and the envelope's decay, are left out. */
  @Test
  void leavesPausesOut() {
    Pcm talk = bursts(2, 2, 0.05, 10);
    SpeechLevel level = SpeechLevel.of(talk);
    assertEquals(2.3 / 4, level.activity(), 0.03);
    assertEquals(20 * Math.log10(0.05) + 10 * Math.log10(2 / 2.3), level.activeDb(), 0.3);
    assertEquals(20 * Math.log10(0.05) - 3.01, level.longTermDb(), 0.1);
  }

  /** The hangover of 200 ms bridges the gaps inside words (P.56, section 6). */
  @Test
  void countsShortGapsAsSpeech() {
    assertEquals(1, SpeechLevel.of(bursts(0.3, 0.15, 0.05, 20)).activity(), 0.03);
  }

  @ParameterizedTest
  @ValueSource(doubles = {-12, -6, 6})
  void movesWithTheGain(double gainDb) {
    Pcm talk = bursts(1.3, 0.8, 0.03, 8);
    Pcm louder = bursts(1.3, 0.8, 0.03 * Level.amplitude(gainDb), 8);
    // The thresholds are 6 dB apart; between them the method interpolates.
    assertEquals(gainDb, SpeechLevel.of(louder).activeDb() - SpeechLevel.of(talk).activeDb(), 0.1);
  }

  @Test
  void isSilentForSilence() {
    assertEquals(Level.SILENCE, SpeechLevel.of(Pcm.silence(1)).activeDb());
    assertEquals(Level.SILENCE, SpeechLevel.of(Pcm.of()).activeDb());
  }

  @Test
  void findsMostOfReadSpeechActive() throws IOException {
    Path folder = Path.of("../shared/audio/off-script");
    assumeTrue(Files.isDirectory(folder), "no recordings of read speech in " + folder);
    try (Stream<Path> files = Files.list(folder)) {
      for (Path file :
          files.filter(f -> f.toString().endsWith(".wav")).sorted().limit(20).toList()) {
        SpeechLevel level = SpeechLevel.of(AudioFile.read(file));
        assertTrue(level.activity() > 0.6 && level.activity() <= 1, file + " " + level);
      }
    }
  }

  private static Pcm bursts(double on, double off, double rms, int count) {
    Pcm all = Pcm.of();
    for (int i = 0; i < count; i++) {
      all = Pcm.join(all, Signals.noise(on, rms, 42 + i), Pcm.silence(off));
    }
    return all;
  }
}
