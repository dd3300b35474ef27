package tiptoe.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import tiptoe.ChildJava;
import tiptoe.FullOnly;
import tiptoe.exam.Bedside;
import tiptoe.exam.journal.OpenExam;
import tiptoe.exam.journal.RecordStore;
import tiptoe.finding.Command;
import tiptoe.protocol.Protocol;
import tiptoe.wording.QuestionWording;

/** A review in a real terminal: corrects, signs, and is found out when somebody tampers. */
@Tag("hearing")
@Tag("process")
class ReviewTmuxTest extends RealTerminal {
  private final ByteArrayOutputStream out = new ByteArrayOutputStream();

  private int run(String... args) {
    out.reset();
    PrintStream both = new PrintStream(out, true, StandardCharsets.UTF_8);
    return Tiptoe.run(both, both, args);
  }

  private String printed() {
    return out.toString(StandardCharsets.UTF_8);
  }

  private String data() {
    return folder.resolve("data").toString();
  }

  private String examined() throws IOException {
    Bedside.SetClock clock = new Bedside.SetClock();
    RecordStore store =
        new RecordStore(Path.of(data()), Protocol.standard(), clock, QuestionWording::of);
    try (OpenExam open = store.create(null, "0.1.0", null, null)) {
      Bedside bed = new Bedside(clock, open.examination());
      bed.find("barlow.right positive");
      bed.find("ortolani.left negative");
      bed.command(Command.END_EXAM);
      bed.command(Command.YES);
      return open.folder().name();
    }
  }

  private void keys(String... keys) throws Exception {
    for (String key : keys) {
      tmux("send-keys", "-t", "exam", key);
    }
  }

  private Path journal(String record) {
    return folder.resolve("data/examinations").resolve(record).resolve("journal.jsonl");
  }

  @Test
  void correctsSignsAndIsFoundOutWhenSomebodyTampers() throws Exception {
    String record = examined();
    start("LC_ALL=C.UTF-8", "review " + record, "--as", "'Rowan Reed, registrar'");
    await(frame -> frame.contains("DRAFT, NOT SIGNED"));
    keys("t", "right ortolani neg", "Tab", "Enter");
    await(frame -> frame.contains("recorded right Ortolani: negative"));
    keys("S");
    await(frame -> frame.contains("KEY STEPS MISSING"));
    keys("Enter");
    await(frame -> frame.contains("sign as, name: Rowan Reed"));
    keys("Enter");
    await(frame -> frame.contains("role: registrar"));
    keys("Enter");
    await(frame -> frame.contains("type yes to sign"));
    keys("yes", "Enter");
    await(
        frame ->
            frame.lines().findFirst().orElse("").contains("SIGNED")
                && !frame.contains("NOT SIGNED"));
    keys("q");
    await(frame -> frame.contains("exit 0"));
    assertTerminalIsAsBefore();

    assertEquals(0, run("record", record, "--verify", "--data", data()), this::printed);
    assertTrue(printed().contains("Rowan Reed"), this::printed);
    String sealed = Files.readString(journal(record));
    Files.writeString(journal(record), sealed.replace("\"Rowan Reed\"", "\"Robin Reed\""));
    assertEquals(1, run("record", record, "--verify", "--data", data()), this::printed);
    assertTrue(printed().contains("entry "), this::printed);
    assertTrue(printed().contains("checksum"), this::printed);
  }

  @Test
  void aTerminatedReviewGivesTheTerminalBackAndKeepsItsEdits() throws Exception {
    String record = examined();
    start("LC_ALL=C.UTF-8", "review " + record, "--as", "'Rowan Reed, registrar'");
    await(frame -> frame.contains("DRAFT, NOT SIGNED"));
    keys("t", "right ortolani negative", "Enter");
    await(frame -> frame.contains("recorded right Ortolani: negative"));
    long process = Long.parseLong(Files.readString(folder.resolve("pid")).strip());
    ProcessHandle.of(process).orElseThrow().destroy();
    await(frame -> frame.contains("exit 143"));
    assertTerminalIsAsBefore();
    assertEquals(0, run("record", record, "--verify", "--data", data()), this::printed);
    assertEquals(0, run("record", record, "--data", data()), this::printed);
    assertTrue(printed().contains("right Ortolani: negative"), this::printed);
  }

  @Test
  @FullOnly("CrashTest refuses a second process")
  void aSecondReviewerReadsOnlyAndIsToldWhy() throws Exception {
    String record = examined();
    start("LC_ALL=C.UTF-8", "review " + record, "--as", "'Rowan Reed, registrar'");
    await(frame -> frame.contains("DRAFT, NOT SIGNED"));
    List<String> command = ChildJava.command();
    command.addAll(List.of("-cp", System.getProperty("java.class.path"), "tiptoe.cli.Tiptoe"));
    command.addAll(List.of("sign", record, "--as", "Robin Vale", "--role", "consultant", "--yes"));
    command.addAll(List.of("--data", data()));
    Process second = new ProcessBuilder(command).redirectErrorStream(true).start();
    String why = new String(second.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertEquals(1, second.waitFor(), why);
    assertFalse(why.contains("Exception"), why);
    assertTrue(why.contains("another"), why);
  }
}
