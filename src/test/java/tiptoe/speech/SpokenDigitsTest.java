package tiptoe.speech;

import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tiptoe.TestExtent;
import tiptoe.audio.AudioFile;
import tiptoe.audio.Pcm;
import tiptoe.files.ContentCache;
import tiptoe.grammar.GrammarSet;
import tiptoe.grammar.PhraseNetwork;
import tiptoe.graph.GraphCache;
import tiptoe.graph.GraphInputs;
import tiptoe.graph.GraphSettings;
import tiptoe.graph.ModelFolder;
import tiptoe.language.NumberWords;

/**
 * Real speech: 180 digits by three people, recorded at 8 kHz (Free Spoken Digit Dataset, CC BY-SA
 * 4.0), through the number grammar.
 */
@Tag("hearing")
class SpokenDigitsTest {
  private static final Path DIGITS = Path.of("../shared/audio/digits");

  /** Measured: the model was trained on 16 kHz speech, and a lone digit has no context. */
  private static final double BASELINE = 0.80;

  @Test
  void hearsSpokenDigits(@TempDir Path folder) throws IOException {
    assumeTrue(Files.isDirectory(DIGITS), "skipped: no spoken digits in ../shared/audio/digits");
    GrammarSet grammars = GrammarSet.load(Path.of("grammars"), "exam.gram");
    PhraseNetwork scores = PhraseNetwork.of(grammars, "numbers.gram", "score");
    ModelFolder model =
        ModelFolder.open(ModelFolder.locate(null, System.getenv(), Path.of("").toAbsolutePath()));
    GraphInputs inputs =
        new GraphInputs(
            model,
            scores.automaton(),
            Path.of("grammars/pronunciations.txt"),
            GraphSettings.DEFAULT);
    int right = 0;
    int wrong = 0;
    List<Path> files = files();
    try (SpeechModel speech =
        SpeechModel.open(new GraphCache(new ContentCache(List.of(folder))).get(inputs, () -> {}))) {
      for (Path file : files) {
        Double heard = heard(speech, file);
        int said = file.getFileName().toString().charAt(0) - '0';
        if (heard != null && heard == said) {
          right++;
        } else if (heard != null) {
          wrong++;
        }
      }
    }
    System.out.printf(
        "spoken digits: %d of %d right, %d wrong, the rest taken for other speech%n",
        right, files.size(), wrong);
    assertTrue(right >= BASELINE * files.size(), right + " of " + files.size());
  }

  private static Double heard(SpeechModel speech, Path file) throws IOException {
    try (Recogniser recogniser = speech.recogniser()) {
      // The clips are cut close: a moment of silence on either side, as in a room.
      Pcm sound = Pcm.join(Pcm.silence(0.4), AudioFile.read(file), Pcm.silence(0.6));
      String words = Clips.text(Clips.hear(recogniser, sound));
      List<Double> readings =
          words.isEmpty() ? List.of() : NumberWords.readings(List.of(words.split(" ")));
      return readings.isEmpty() ? null : readings.get(0);
    }
  }

  private static List<Path> files() throws IOException {
    try (Stream<Path> all = Files.list(DIGITS)) {
      return TestExtent.some(
          all.filter(file -> file.toString().endsWith(".wav")).sorted().toList(), 3);
    }
  }
}
