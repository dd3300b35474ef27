package tiptoe.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** An examination on a real disk that fills up; needs the right to mount one. */
@Tag("hearing")
@Tag("process")
class FullDiskTest {
  private static final Path CLIPS = Path.of("src/test/resources/tiptoe/speech/clips");

  /** "correction left barlow positive". */
  private static final Path BARLOW = CLIPS.resolve("127.wav");

  private final ByteArrayOutputStream out = new ByteArrayOutputStream();
  private final ByteArrayOutputStream err = new ByteArrayOutputStream();

  @TempDir private Path folder;
  private Path disk;
  private boolean mounted;

  @BeforeEach
  void mount() throws Exception {
    disk = Files.createDirectory(folder.resolve("disk"));
    mounted = command("mount", "-t", "tmpfs", "-o", "size=1200k", "tmpfs", disk.toString());
    Assumptions.assumeTrue(mounted, "needs the right to mount a small disk");
  }

  @AfterEach
  void unmount() throws Exception {
    if (mounted) {
      command("umount", disk.toString());
    }
  }

  private static boolean command(String... words) throws InterruptedException {
    try {
      return new ProcessBuilder(words).redirectErrorStream(true).start().waitFor() == 0;
    } catch (IOException e) {
      return false;
    }
  }

  private int run(String... args) {
    out.reset();
    err.reset();
    return Tiptoe.run(
        new PrintStream(out, true, StandardCharsets.UTF_8),
        new PrintStream(err, true, StandardCharsets.UTF_8),
        args);
  }

  /**
   * "weight three thousand four hundred and twenty grams" and then a Barlow test, again and again.
   */
  private String recordings(int times) throws IOException {
    Path some = Files.createDirectory(folder.resolve("recordings"));
    Files.copy(CLIPS.resolve("012.wav"), some.resolve("0.wav"));
    for (int i = 1; i <= times; i++) {
      Files.copy(BARLOW, some.resolve(i + ".wav"));
    }
    return some.toString();
  }

  /** The sound does not fit beside what is left to the journal. */
  @Test
  void soundGivesWayToTheRecord() throws Exception {
    String data = disk.toString();
    assertEquals(
        0,
        run("exam", "--from", recordings(1), "--fast", "--plain", "--data", data),
        err::toString);
    assertTrue(out.toString(StandardCharsets.UTF_8).contains("left Barlow: positive"));
    String told = err.toString(StandardCharsets.UTF_8);
    assertTrue(
        told.contains("less than 1 MiB of room on the disk, which is left to the record"), told);
    assertTrue(told.contains(" s of sound could not be stored"), told);
    assertTrue(Files.getFileStore(disk).getUsableSpace() > 500_000);
    String record = out.toString(StandardCharsets.UTF_8);
    record = record.substring(record.lastIndexOf("record kept in ")).strip();
    record = record.lines().findFirst().orElseThrow().replaceFirst(".*/", "");
    assertEquals(1, run("record", record, "--verify", "--data", data));
    assertTrue(
        out.toString(StandardCharsets.UTF_8)
            .lines()
            .allMatch(line -> line.endsWith(" has no sound")),
        out::toString);
  }

  @Test
  void losesNothingThatWasShownAndGoesOnWhenThereIsRoomAgain() throws Exception {
    String data = disk.toString();
    assertTrue(command("mount", "-o", "remount,size=8k", data));
    assertEquals(
        1,
        run("exam", "--from", recordings(9), "--fast", "--plain", "--data", data),
        err::toString);
    String shown = out.toString(StandardCharsets.UTF_8);
    assertTrue(shown.contains("weight: 3420 g"), shown);
    String why = err.toString(StandardCharsets.UTF_8);
    assertTrue(why.contains("No space left on device"), why);
    String record = why.substring(why.lastIndexOf("--continue ") + "--continue ".length()).strip();

    assertTrue(command("mount", "-o", "remount,size=20m", data));
    assertEquals(0, run("record", record, "--verify", "--data", data), err::toString);
    assertEquals(
        0,
        run(
            "exam",
            "--continue",
            record,
            "--from",
            BARLOW.toString(),
            "--fast",
            "--plain",
            "--data",
            data),
        err::toString);
    String after = out.toString(StandardCharsets.UTF_8);
    assertTrue(after.contains("weight: 3420 g"), after);
    assertTrue(after.contains("left Barlow: positive"), after);
  }
}
