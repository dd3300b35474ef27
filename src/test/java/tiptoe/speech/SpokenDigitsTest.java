package tiptoe.speech;

import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tiptoe.audio.AudioFile;
import tiptoe.audio.Pcm;
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
class SpokenDigitsTest {
  private static final Path DIGITS = Path.of("../shared/audio/digits");

  /** Measured: the model was trained on 16 kHz speech, and a lone digit has no context. */
  private static final double BASELINE = 0.80;

  /** Of the words that the weights in use still take for digits, so many may be wrong. */
  private static final double WRONG = 0.06;

  // Without the cost that a phrase has to earn in an examination: a lone digit earns little.
  private static final GraphSettings EVEN = new GraphSettings(1, 1, 6, 3.5f, 1);

  /** How many digits were heard right and wrong; the rest was taken for other speech. */
  private record Tally(int right, int wrong, int all) {}

  @Test
  void hearsSpokenDigits(@TempDir Path folder) throws IOException {
    Tally tally = tally(folder, EVEN);
    System.out.println("spoken digits, any phrase as likely as filler: " + tally);
    assertTrue(tally.right() >= BASELINE * tally.all(), tally::toString);
  }

  @Test
  void ratherMissesADigitThanHearsAnother(@TempDir Path folder) throws IOException {
    Tally tally = tally(folder, GraphSettings.DEFAULT);
    System.out.println("spoken digits, by the weights in use: " + tally);
    assertTrue(tally.wrong() <= WRONG * tally.all(), tally::toString);
  }

  private static Tally tally(Path folder, GraphSettings settings) throws IOException {
    assumeTrue(Files.isDirectory(DIGITS), "skipped: no spoken digits in ../shared/audio/digits");
    GrammarSet grammars = GrammarSet.load(Path.of("grammars"), "exam.gram");
    PhraseNetwork scores = PhraseNetwork.of(grammars, "numbers.gram", "score");
    ModelFolder model =
        ModelFolder.open(ModelFolder.locate(null, System.getenv(), Path.of("").toAbsolutePath()));
    GraphInputs inputs =
        new GraphInputs(
            model, scores.automaton(), Path.of("grammars/pronunciations.txt"), settings);
    int right = 0;
    int wrong = 0;
    List<Path> files = files();
    try (SpeechModel speech = SpeechModel.open(new GraphCache(folder).get(inputs, () -> {}))) {
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
    return new Tally(right, wrong, files.size());
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
      return all.filter(file -> file.toString().endsWith(".wav")).sorted().toList();
    }
  }
}
