package tiptoe.audio;

import com.code_intelligence.jazzer.junit.FuzzTest;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;

/** Whatever bytes a recording holds, it is heard or refused with a message. */
class AudioFileFuzz {
  private static final Path FILE = scratch();

  private static Path scratch() {
    try {
      Path file = Files.createTempFile("fuzz", ".wav");
      file.toFile().deleteOnExit();
      return file;
    } catch (IOException e) {
      throw new ExceptionInInitializerError(e);
    }
  }

  @FuzzTest
  void anyBytesAreHeardOrRefused(byte[] bytes) throws IOException {
    Files.write(FILE, bytes);
    try (SampleSource source = AudioFile.open(FILE)) {
      for (Optional<Chunk> next = source.next(); next.isPresent(); next = source.next()) {
        if (next.get().samples().length == 0) {
          throw new AssertionError("an empty chunk");
        }
      }
    } catch (AudioProblem e) {
      if (e.getMessage().isBlank() || e.getMessage().contains("\n")) {
        throw new AssertionError("expected a message of one line, found " + e.getMessage(), e);
      }
    }
  }
}
