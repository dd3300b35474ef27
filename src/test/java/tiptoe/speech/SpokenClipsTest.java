package tiptoe.speech;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import tiptoe.audio.Pcm;

/** Committed synthetic speech through the real engine: at least 100 phrases of all regions. */
class SpokenClipsTest {
  /** Measured when the clips were committed; hearing less of them is a step back. */
  private static final double BASELINE = 0.93;

  @Test
  void hearsThePhrasesOfAllRegions() throws IOException {
    List<String> wrong = new ArrayList<>();
    List<Clips.Clip> clips = Clips.all();
    try (SpeechModel model = SpeechModel.open(Clips.built(Clips.network()))) {
      for (Clips.Clip clip : clips) {
        String heard = Clips.text(Clips.hear(model, clip.file()));
        if (!heard.equals(clip.text())) {
          wrong.add(clip.file().getFileName() + " " + clip.text() + " -> " + heard);
        }
      }
    }
    double right = 1 - (double) wrong.size() / clips.size();
    System.out.printf("clips heard word for word: %.1f %% of %d%n", 100 * right, clips.size());
    wrong.forEach(System.out::println);
    assertTrue(clips.size() >= 100);
    assertTrue(right >= BASELINE, wrong.toString());
  }

  @Test
  void hearsTheSameSoundTheSameWayAfterOtherSound() throws IOException {
    List<Clips.Clip> some = Clips.all().subList(0, 12);
    List<Clips.Clip> backwards = new ArrayList<>(some);
    Collections.reverse(backwards);
    try (SpeechModel model = SpeechModel.open(Clips.built(Clips.network()))) {
      Map<Path, List<Utterance>> first = new HashMap<>();
      for (Clips.Clip clip : some) {
        first.put(clip.file(), Clips.hear(model, clip.file()));
      }
      for (Clips.Clip clip : backwards) {
        assertEquals(first.get(clip.file()), Clips.hear(model, clip.file()));
      }
    }
  }

  @Test
  void hearsNothingInDigitalSilence() throws IOException {
    try (SpeechModel model = SpeechModel.open(Clips.built(Clips.network()));
        Recogniser recogniser = model.recogniser()) {
      assertEquals(List.of(), Clips.hear(recogniser, Pcm.silence(20)));
    }
  }
}
