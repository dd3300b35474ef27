package tiptoe.audio;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Our conversion beside that of SoX 14.4.2, as packaged by Debian. Not with 8-bit sound: its
 * quantisation noise reaches the edge of the band, where the two filters rightly differ.
 */
@Tag("process")
class SoxComparisonTest {
  @TempDir Path folder;

  @BeforeEach
  void needsSox() {
    boolean present =
        Stream.of(System.getenv().getOrDefault("PATH", "").split(File.pathSeparator))
            .anyMatch(path -> Files.isExecutable(Path.of(path, "sox")));
    assumeTrue(present, "sox is not installed, so there is nothing to compare with");
  }

  @ParameterizedTest
  @CsvSource({
    "8000, 1, 16, signed-integer",
    "11025, 1, 16, signed-integer",
    "22050, 2, 24, signed-integer",
    "44100, 2, 16, signed-integer",
    "48000, 2, 32, floating-point",
    "96000, 1, 32, signed-integer"
  })
  void differsFromSoxByLessThanASixteenBitStepOrTwo(
      int rate, int channels, int bits, String encoding) throws Exception {
    Path source = folder.resolve("source.wav");
    Path theirs = folder.resolve("theirs.wav");
    List<String> make = new ArrayList<>(List.of("sox", "-D", "-R", "-n"));
    make.addAll(List.of("-r", "" + rate, "-c", "" + channels, "-b", "" + bits, "-e", encoding));
    // Chords inside the band of every rate, with soft ends.
    make.addAll(List.of(source.toString(), "synth", "1", "sine", "220", "synth", "sine", "mix"));
    make.addAll(List.of("1730", "synth", "sine", "mix", "3200", "vol", "0.6", "fade", "0.1", "1"));
    run(make);
    run(
        List.of(
            "sox",
            "-D",
            source.toString(),
            "-b",
            "16",
            theirs.toString(),
            "remix",
            "-",
            "rate",
            "-v",
            "-s",
            "16000"));

    short[] ours = AudioFile.read(source).samples();
    short[] expected = AudioFile.read(theirs).samples();

    assertEquals(expected.length, ours.length);
    double error = 0;
    int worst = 0;
    for (int i = 0; i < ours.length; i++) {
      int difference = Math.abs(ours[i] - expected[i]);
      error += difference * difference;
      worst = Math.max(worst, difference);
    }
    assertTrue(Math.sqrt(error / ours.length) < 1, "RMS " + Math.sqrt(error / ours.length));
    assertTrue(worst <= 3, "worst difference " + worst);
  }

  private static void run(List<String> command) throws IOException, InterruptedException {
    Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
    String output = new String(process.getInputStream().readAllBytes());
    assertEquals(0, process.waitFor(), output);
  }
}
