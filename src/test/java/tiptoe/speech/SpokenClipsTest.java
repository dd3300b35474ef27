package tiptoe.speech;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import tiptoe.audio.Pcm;

/** Committed synthetic speech through the real engine. How much is heard {@code measure} tells. */
@Tag("hearing")
class SpokenClipsTest {
  @Test
  void hearsTheSameSoundTheSameWayAfterOtherSound() throws IOException {
    List<Clips.Clip> some = Clips.all().subList(0, 12);
    List<Clips.Clip> backwards = new ArrayList<>(some);
    Collections.reverse(backwards);
    try (SpeechModel model = SpeechModel.open(Clips.built(Clips.network()))) {
      Map<Path, List<Hypothesis>> first = new HashMap<>();
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
