package tiptoe.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tiptoe.ChildJava;
import tiptoe.FullOnly;

/**
 * A step that nobody examines, added as DEVELOPERS.md says: in the protocol and in the grammar of
 * its region. The program then understands it, asks about it, offers its words and flags it.
 */
@Tag("process")
class AddedStepTest {
  private static final String STEP =
      """
      \n    - step: ear-lobe
            sided: true
            normal: [whole]
            abnormal: [cleft]
            details:
              depth: {of: cleft, ask: true, values: [shallow, deep]}
      """;
  private static final String WORDS =
      """
      private $lobe = {step=ear-lobe} (
          [$<shared.gram#side>] ear lobe ($lobed | {deny=cleft} not cleft)
        | [both] ear lobes {side=both} whole {value=whole}
      );
      private $lobed = whole {value=whole} | [shallow {depth=shallow} | deep {depth=deep}] cleft {value=cleft};
      """;

  @TempDir Path folder;

  @BeforeEach
  void add() throws IOException {
    Path grammars = Files.createDirectories(folder.resolve("home/grammars"));
    try (Stream<Path> files = Files.list(Path.of("grammars"))) {
      for (Path file : files.toList()) {
        Files.copy(file, grammars.resolve(file.getFileName()));
      }
    }
    Path ears = grammars.resolve("ears.gram");
    Files.writeString(
        ears, Files.readString(ears).replace("$ears = ", "$ears = $lobe | ") + "\n" + WORDS);
    Path data = Path.of("tiptoe/protocol/protocol.yaml");
    Path protocol = folder.resolve("classes").resolve(data);
    Files.createDirectories(protocol.getParent());
    String before = Files.readString(Path.of("src/main/resources").resolve(data));
    Files.writeString(protocol, before.replace("\n\n- region: nose", STEP + "\n- region: nose"));
  }

  private ChildCommands commands() throws IOException {
    List<String> command = ChildJava.command();
    command.add("-cp");
    command.add(
        folder.resolve("classes") + File.pathSeparator + System.getProperty("java.class.path"));
    return new ChildCommands(command, Map.of("TIPTOE_HOME", folder.resolve("home").toString()));
  }

  private static String run(ChildCommands commands, String... arguments) throws IOException {
    ChildCommands.Ran ran = commands.run(arguments);
    assertEquals(0, ran.code(), ran.out());
    return ran.out();
  }

  @Test
  @FullOnly("LocalProtocolTest adds steps without a process")
  void isUnderstoodAskedAboutOfferedAndFlagged() throws Exception {
    try (ChildCommands commands = commands()) {
      isUnderstoodAskedAboutOfferedAndFlagged(commands);
    }
  }

  private void isUnderstoodAskedAboutOfferedAndFlagged(ChildCommands commands) throws IOException {
    String read =
        run(
            commands,
            "interpret",
            "left ear lobe deep cleft. ear lobe cleft. right ear lobe not cleft");
    assertTrue(read.contains("left ear lobe: cleft, depth deep"), read);
    assertTrue(read.contains("? ear lobe: cleft — left, right or both?"), read);
    assertTrue(read.contains("right ear lobe: whole"), read);
    read = run(commands, "interpret", "left ear lobe cleft");
    assertTrue(read.contains("cleft — depth?"), read);
    String offered = run(commands, "say", "ears");
    assertTrue(offered.contains("**ear lobe** (each side)"), offered);
    Path answers =
        Files.writeString(
            folder.resolve("answers.json"),
            "{\"answers\": [{\"step\": \"ear-lobe\", \"side\": \"left\", \"value\": \"cleft\"}]}");
    String flagged = run(commands, "assess", answers.toString());
    assertTrue(flagged.contains("NOTE, at review: ear lobe (left)"), flagged);
  }
}
