package tiptoe.session;

import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import tiptoe.TestExtent;
import tiptoe.audio.AudioFile;
import tiptoe.audio.Pcm;
import tiptoe.finding.Outcome;
import tiptoe.measure.Split;

/**
 * Real people reading books (LibriSpeech, Panayotov et al. 2015, CC BY 4.0): nobody examines a
 * newborn, so nothing may be recorded. Of the half that nothing was fitted on every other reading
 * is heard.
 */
@Tag("hearing")
class UnrelatedSpeechTest {
  private static final Path TALK = Path.of("../shared/audio/off-script");

  /** At most so many of the utterances that mean something; the aim is 1 and 20 an hour. */
  private static final int ACCEPTED = 0;

  private static final int UNSURE = 2;

  @Test
  void recordsNothingOfAReadingAndLeavesLittleToTheReviewer() throws IOException {
    assumeTrue(Files.isDirectory(TALK), "skipped: no unrelated speech in ../shared/audio");
    int[] outcomes = new int[Outcome.values().length];
    double seconds = 0;
    for (Path file : heldOut()) {
      Pcm sound = AudioFile.read(file);
      seconds += sound.seconds();
      for (UtteranceVerifier.Decision decision : Hearing.loaded().decide(sound)) {
        if (!decision.interpretation().meanings().isEmpty()) {
          outcomes[decision.outcome().ordinal()]++;
        }
      }
    }
    int accepted = outcomes[Outcome.ACCEPTED.ordinal()] + outcomes[Outcome.COMMAND.ordinal()];
    int unsure = outcomes[Outcome.UNSURE.ordinal()];
    String told = "%d accepted, %d unsure in %.1f min".formatted(accepted, unsure, seconds / 60);
    System.out.println("unrelated speech, held-out half: " + told);
    assertTrue(seconds > TestExtent.of(30, 200), told);
    assertTrue(accepted <= ACCEPTED, told);
    assertTrue(unsure <= UNSURE, told);
  }

  private static List<Path> heldOut() throws IOException {
    try (Stream<Path> files = Files.list(TALK)) {
      return TestExtent.some(
          files
              .filter(
                  file ->
                      file.toString().endsWith(".wav")
                          && Split.HELD_OUT.takes(file.getFileName().toString()))
              .sorted()
              .toList(),
          12,
          2);
    }
  }
}
