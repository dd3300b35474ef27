package tiptoe.audio;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Inputs that a reader has broken on, or might. Beside each stands a text file with the message it
 * must get.
 */
class BrokenAudioTest {
  static List<Path> inputs() throws IOException, URISyntaxException {
    Path folder =
        Path.of(Objects.requireNonNull(BrokenAudioTest.class.getResource("broken")).toURI());
    try (Stream<Path> files = Files.list(folder)) {
      return files.filter(file -> !file.toString().endsWith(".txt")).sorted().toList();
    }
  }

  @ParameterizedTest
  @MethodSource("inputs")
  void getsAClearMessage(Path input) throws IOException {
    AudioProblem problem = assertThrows(AudioProblem.class, () -> AudioFile.read(input));
    String expected = Files.readString(Path.of(input + ".txt")).strip();
    assertEquals(expected, problem.getMessage());
    assertFalse(problem.getMessage().contains("\n"));
  }
}
