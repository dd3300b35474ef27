package tiptoe.speech;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tiptoe.TestExtent;
import tiptoe.audio.AudioFile;
import tiptoe.audio.Pcm;

/** The limits are the tool's own, measured on spoken sentences and babble; no source outside. */
@Tag("hearing")
class SecondPassTest {
  @ParameterizedTest(name = "{0} s: {1}")
  @CsvSource({"0.3, false", "0.4, true", "8.0, true", "14.0, true", "14.1, false"})
  void hearsNeitherSingleSyllablesNorLongTalk(double seconds, boolean heard) {
    Word word = new Word("word", 0, seconds, 1);
    assertEquals(heard, SecondPass.isFreely(new Hypothesis(0, seconds, List.of(word))));
  }

  @Test
  void bringsTheSameEvidenceHoweverTheSoundComes() throws IOException {
    try (SpeechModel model = Clips.hearingTwice(Clips.network())) {
      for (Clips.Clip clip : Clips.all().subList(0, TestExtent.of(2, 4))) {
        Pcm sound = Pcm.join(AudioFile.read(clip.file()), Pcm.silence(1.5));
        List<Hypothesis> whole = heard(model, sound, sound.samples().length);
        assertTrue(whole.get(0).support().isPresent());
        assertEquals(whole, heard(model, sound, 320));
        assertEquals(whole, heard(model, sound, 1601));
      }
    }
  }

  private static List<Hypothesis> heard(SpeechModel model, Pcm sound, int piece) {
    List<Hypothesis> heard = new ArrayList<>();
    try (Recogniser recogniser = model.recogniser()) {
      short[] samples = sound.samples();
      for (int at = 0; at < samples.length; at += piece) {
        heard.addAll(recogniser.accept(samples, at, Math.min(piece, samples.length - at)));
      }
      recogniser.finish().ifPresent(heard::add);
    }
    return heard;
  }
}
