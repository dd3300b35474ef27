package tiptoe.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tiptoe.audio.AudioFile;
import tiptoe.audio.Pcm;

/** The folder of a record is taken away while an examination goes on and nobody speaks. */
@Tag("hearing")
@Tag("process")
class LostFolderTest {
  /** Longer than the test may take: the loss ends the examination, not the end of the sound. */
  private static final double QUIET_SECONDS = 600;

  @TempDir private Path folder;
  private final ByteArrayOutputStream out = new ByteArrayOutputStream();
  private final ByteArrayOutputStream err = new ByteArrayOutputStream();

  private int run(String... args) {
    return Tiptoe.run(
        new PrintStream(out, true, StandardCharsets.UTF_8),
        new PrintStream(err, true, StandardCharsets.UTF_8),
        args);
  }

  @Test
  void isToldAtOnceAndNotSaidToBeKept() throws Exception {
    Path quiet = folder.resolve("quiet.wav");
    AudioFile.write(quiet, Pcm.silence(QUIET_SECONDS));
    Path data = folder.resolve("data");
    CompletableFuture<Integer> code =
        CompletableFuture.supplyAsync(
            () -> run("exam", "--from", quiet.toString(), "--plain", "--data", data.toString()));
    while (!out.toString(StandardCharsets.UTF_8).contains("listening;") && !code.isDone()) {
      Thread.sleep(100);
    }
    Path exams = data.resolve("examinations");
    Files.move(exams, data.resolve("elsewhere"));
    assertEquals(1, code.get(60, TimeUnit.SECONDS));
    String told = err.toString(StandardCharsets.UTF_8);
    String gone = "the folder of the record was removed or moved away: " + exams;
    assertTrue(told.contains("RECORDING HAS STOPPED: " + gone), told);
    assertTrue(told.contains("the examination stopped: " + gone), told);
    assertTrue(told.contains("what was recorded went with it"), told);
    assertFalse(told.contains("kept in"), told);
    assertFalse(out.toString(StandardCharsets.UTF_8).contains("kept in"), out.toString());
  }
}
