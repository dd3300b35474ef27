package tiptoe.session;

import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import tiptoe.TestExtent;
import tiptoe.audio.AudioFile;
import tiptoe.audio.NoiseMixer;
import tiptoe.audio.Pcm;
import tiptoe.language.Meaning;
import tiptoe.speech.Clips;

/** Committed clips with real infants' cries behind them, 10 dB below the speech. */
@Tag("hearing")
class CryingTest {
  private static final Path CRIES = Path.of("../shared/audio/cry");
  private static final double SNR_DB = 10;

  /** Every third clip or fewer, so that all voices and regions take part. */
  private static final int EVERY = TestExtent.of(12, 6);

  /** Measured: 40 of 43 accepted as meant, none accepted and wrong. */
  private static final double UNDERSTOOD = 0.88;

  private static final double WRONG = 0.03;

  private final Hearing hearing = Hearing.loaded();

  @Test
  void understandsFindingsWhileTheBabyCries() throws IOException {
    assumeTrue(Files.isDirectory(CRIES), "skipped: no infants' cries in ../shared/audio");
    List<Pcm> cries = cries();
    List<Clips.Clip> clips = Clips.all();
    int all = 0;
    int understood = 0;
    int wrong = 0;
    for (int i = 0; i < clips.size(); i += EVERY) {
      Clips.Clip clip = clips.get(i);
      Pcm speech = AudioFile.read(clip.file());
      List<Meaning> meant = hearing.means(clip.text());
      List<Meaning> accepted =
          hearing.accepted(NoiseMixer.mix(speech, cries.get(i % cries.size()), SNR_DB, i));
      all++;
      understood += accepted.equals(meant) ? 1 : 0;
      wrong += meant.containsAll(accepted) ? 0 : 1;
    }
    String told =
        "%d of %d accepted as meant, %d accepted and wrong".formatted(understood, all, wrong);
    System.out.println("clips in crying at 10 dB: " + told);
    assertTrue(understood >= UNDERSTOOD * all, told);
    assertTrue(wrong <= WRONG * all, told);
  }

  private static List<Pcm> cries() throws IOException {
    List<Pcm> cries = new ArrayList<>();
    try (Stream<Path> files = Files.list(CRIES)) {
      for (Path file : files.filter(f -> f.toString().endsWith(".wav")).sorted().toList()) {
        cries.add(AudioFile.read(file));
      }
    }
    return cries;
  }
}
