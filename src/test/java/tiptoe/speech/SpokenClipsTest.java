package tiptoe.speech;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

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
}
