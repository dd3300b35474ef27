package tiptoe.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tiptoe.ChildJava;
import tiptoe.FullOnly;

/** Teaching in a process of its own, whose user has settings of its own. */
@Tag("process")
class TeachCommandTest {
  /** "no caput", in a synthetic voice. */
  private static final String CLIP = "src/test/resources/tiptoe/speech/clips/027.wav";

  @TempDir private static Path home;

  private static ChildCommands commands;

  @BeforeAll
  static void start() throws IOException {
    List<String> command = ChildJava.command();
    // On macOS and Windows settings are found by these.
    command.add("-Duser.home=" + home);
    command.addAll(List.of("-cp", System.getProperty("java.class.path")));
    commands =
        new ChildCommands(
            command, Map.of("XDG_CONFIG_HOME", home.toString(), "APPDATA", home.toString()));
  }

  @AfterAll
  static void end() throws IOException {
    commands.close();
  }

  private static ChildCommands.Ran run(String... args) throws IOException {
    return commands.run(args);
  }

  @Test
  @FullOnly("what was taught before is listed, heard and forgotten")
  void whatIsTaughtIsHeardListedAndForgotten() throws Exception {
    ChildCommands.Ran taught = run("teach", "caput", "cap", "putt", "--from", CLIP);
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

  /** No graph has to be built for a word that sounds as it did. */
  @Test
  void whatWasTaughtBeforeIsListedHeardAndForgotten() throws Exception {
    List<Path> files =
        Stream.of("tiptoe", "Library/Application Support/tiptoe")
            .map(place -> home.resolve(place).resolve("own-words.txt"))
            .toList();
    for (Path file : files) {
      Files.createDirectories(file.getParent());
      Files.deleteIfExists(file);
    }
    ChildCommands.Ran known = run("teach", "caput", "caput", "--from", CLIP);
    assertEquals(0, known.code(), known.out());
    assertTrue(known.out().contains("caput is understood when said so already"), known.out());
    assertTrue(known.out().contains("caput was heard"), known.out());
    for (Path file : files) {
      Files.writeString(file, "caput ~ cap putt\n");
    }
    assertTrue(run("teach", "--list").out().contains("caput ~ cap putt"));
    assertEquals(0, run("teach", "--forget", "caput").code());
    assertFalse(run("teach", "--list").out().contains("caput ~"));
  }

  @Test
  void refusesWhatCannotBeTaught() throws Exception {
    ChildCommands.Ran unknown = run("teach", "spaceship", "space ship");
    assertEquals(1, unknown.code());
    assertTrue(
        unknown.out().startsWith("expected a word of the grammars, found spaceship"),
        unknown.out());
    ChildCommands.Ran phones = run("teach", "caput", "--phones", "K QQ P");
    assertEquals(1, phones.code());
    assertTrue(phones.out().contains("expected an ARPABET phone, found QQ"), phones.out());
    ChildCommands.Ran same = run("teach", "left", "right");
    assertEquals(1, same.code());
    assertTrue(
        same.out()
            .contains("left sounds the same as right (R AY T), which can be said in its place"),
        same.out());
  }
}
