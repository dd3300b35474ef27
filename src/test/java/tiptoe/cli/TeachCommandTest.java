package tiptoe.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tiptoe.ChildJava;

/** Teaching in a process of its own, whose user has settings of its own. */
@Tag("process")
class TeachCommandTest {
  /** "no caput", in a synthetic voice. */
  private static final String CLIP = "src/test/resources/tiptoe/speech/clips/027.wav";

  @TempDir private Path home;

  private record Ran(int code, String out) {}

  private Ran run(String... args) throws IOException, InterruptedException {
    List<String> command = ChildJava.command();
    // On macOS and Windows settings are found by these.
    command.add("-Duser.home=" + home);
    command.addAll(List.of("-cp", System.getProperty("java.class.path"), Tiptoe.class.getName()));
    command.addAll(List.of(args));
    ProcessBuilder builder = new ProcessBuilder(command).redirectErrorStream(true);
    builder.environment().put("XDG_CONFIG_HOME", home.toString());
    builder.environment().put("APPDATA", home.toString());
    Process process = builder.start();
    String out = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    return new Ran(process.waitFor(), out);
  }

  @Test
  void whatIsTaughtIsHeardListedAndForgotten() throws Exception {
    Ran taught = run("teach", "caput", "cap", "putt", "--from", CLIP);
    assertEquals(2, taught.code(), taught.out());
    taught = run("teach", "caput", "cap putt", "--from", CLIP);
    assertEquals(0, taught.code(), taught.out());
    assertTrue(taught.out().contains("K AE P P AH T"), taught.out());
    assertTrue(taught.out().contains("caput was heard"), taught.out());
    Path file;
    try (var files = Files.walk(home)) {
      file = files.filter(path -> path.endsWith("own-words.txt")).findFirst().orElseThrow();
    }
    assertTrue(Files.readAllLines(file).contains("caput ~ cap putt"));
    assertTrue(run("teach", "--list").out().contains("caput ~ cap putt"));
    assertEquals(0, run("teach", "--forget", "caput").code());
    assertFalse(run("teach", "--list").out().contains("caput"));
    assertEquals(1, run("teach", "--forget", "caput").code());
  }

  @Test
  void refusesWhatCannotBeTaught() throws Exception {
    Ran unknown = run("teach", "spaceship", "space ship");
    assertEquals(1, unknown.code());
    assertTrue(
        unknown.out().startsWith("expected a word of the grammars, found spaceship"),
        unknown.out());
    Ran phones = run("teach", "caput", "--phones", "K QQ P");
    assertEquals(1, phones.code());
    assertTrue(phones.out().contains("expected an ARPABET phone, found QQ"), phones.out());
    Ran same = run("teach", "left", "right");
    assertEquals(1, same.code());
    assertTrue(
        same.out()
            .contains("left sounds the same as right (R AY T), which can be said in its place"),
        same.out());
  }
}
