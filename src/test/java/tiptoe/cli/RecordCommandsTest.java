package tiptoe.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tiptoe.ChildJava;
import tiptoe.FullOnly;
import tiptoe.audio.Chunk;
import tiptoe.audio.SegmentStore;
import tiptoe.exam.Bedside;
import tiptoe.exam.Review;
import tiptoe.exam.Signer;
import tiptoe.exam.journal.ExamFolder;
import tiptoe.exam.journal.KeepAudio;
import tiptoe.exam.journal.OpenExam;
import tiptoe.exam.journal.RecordStore;
import tiptoe.finding.Command;
import tiptoe.protocol.Protocol;
import tiptoe.wording.QuestionWording;

@Tag("process")
class RecordCommandsTest {
  private static final int RATE = 16_000;

  @TempDir Path folder;
  private final Bedside.SetClock clock = new Bedside.SetClock();
  private final ByteArrayOutputStream out = new ByteArrayOutputStream();
  private final ByteArrayOutputStream err = new ByteArrayOutputStream();
  private Path data;
  private Path defaults;

  @BeforeEach
  void writeDefaults() throws IOException {
    data = folder.resolve("data");
    defaults = Files.writeString(folder.resolve("defaults.yaml"), "tones: on\n");
  }

  private int run(String... args) {
    out.reset();
    err.reset();
    return Tiptoe.run(
        new PrintStream(out, true, StandardCharsets.UTF_8),
        new PrintStream(err, true, StandardCharsets.UTF_8),
        args);
  }

  private String out() {
    return out.toString(StandardCharsets.UTF_8);
  }

  private String err() {
    return err.toString(StandardCharsets.UTF_8);
  }

  private RecordStore store() {
    return new RecordStore(data, Protocol.standard(), clock, QuestionWording::of);
  }

  private ExamFolder recorded(char[] passphrase) throws IOException {
    try (OpenExam open = store().create("Baby Rowan", "0.1.0", null, passphrase)) {
      Bedside bed = new Bedside(clock, open.examination());
      bed.fact("age", "18");
      bed.find("barlow.left positive");
      bed.find("barlow.left negative");
      bed.command(Command.END_EXAM);
      bed.command(Command.YES);
      try (SegmentStore sound = open.openSound()) {
        sound.append(new Chunk(0, 0, new short[16 * RATE]));
      }
      return open.folder();
    }
  }

  private void sign(ExamFolder exam, KeepAudio keep) throws IOException {
    try (OpenExam open = store().open(exam, null)) {
      Review review = open.examination().review("Dr Reed");
      Map<String, String> audio = open.audioHashes();
      review.sign("paediatrician", audio, Signer.NAME_ONLY);
      keep.afterSigning(open);
    }
  }

  @Test
  void dueNamesWhatItCouldNotRead() throws IOException {
    ExamFolder exam = recorded(null);
    ExamFolder encrypted = recorded("correct horse".toCharArray());
    assertEquals(1, run("due", "--data", data.toString()));
    assertTrue(out().contains("Baby Rowan: "), out());
    assertTrue(out().contains(exam.name()), out());
    assertTrue(err().startsWith("not in the list: " + encrypted.name()), err());
    out.reset();
    Path secret = Files.writeString(data.resolve("secret"), "correct horse\n");
    assertEquals(
        0, run("due", "--data", data.toString(), "--passphrase-file", secret.toString()), err());
    assertTrue(out().contains(encrypted.name()), out());
    out.reset();
    run("due", "--format", "ics", "--data", data.toString());
    assertTrue(out().startsWith("BEGIN:VCALENDAR\r\nVERSION:2.0\r\n"), out());
  }

  @Test
  void whatWasDoneIsTickedOffBehindASignatureAndTheRecordIsWhole() throws IOException {
    ExamFolder exam = recorded(null);
    String place = data.toString();
    String[] done = {
      "due", "--done", exam.name(), "hip-unstable", "--data", place, "--as", "Sam Fell"
    };
    String[] again = {
      "due", "--not-done", exam.name(), "hip-unst", "--data", place, "--as", "Sam Fell, clerk"
    };
    sign(exam, KeepAudio.ALWAYS);
    run("due", "--data", place);
    assertTrue(out().contains("(" + exam.name() + " hip-unstable)"), out());
    assertEquals(2, run(done), "a signature wants a role");
    assertEquals(2, run("due", "--done", exam.name(), "hip-unstable", "--data", place), err());
    done[done.length - 1] = "Sam Fell, clerk";
    assertEquals(0, run(done), err());
    assertEquals(1, run(done));
    assertTrue(err().contains(" is done already"), err());
    assertEquals(0, run("record", exam.name(), "--verify", "--data", place), out() + err());
    assertTrue(out().contains("closed by “Sam Fell”, “clerk”"), out());
    run("due", "--data", place);
    assertFalse(out().contains("hip-unstable"), out());
    run("due", "--all", "--data", place);
    assertTrue(out().matches("(?s).*done .*hip-unstable\\); done \\(.*, Sam Fell\\)\n.*"), out());
    assertEquals(0, run(again), err());
    run("due", "--data", place);
    assertTrue(out().contains("hip-unstable"), out());
    assertEquals(1, run("due", "--done", exam.name(), "kidneys", "--data", place, "--as", "S, t"));
    assertTrue(
        err().startsWith("expected one item of its plan, found none called kidneys: "), err());
  }

  @Test
  void recordsListsWhatIsKept() throws IOException {
    ExamFolder exam = recorded(null);
    assertEquals(0, run("records", "--data", data.toString()), err());
    List<String> lines = out().lines().toList();
    assertTrue(lines.get(0).startsWith("RECORD "), out());
    assertTrue(lines.get(1).startsWith(exam.name()), out());
    assertTrue(lines.get(1).contains("Baby Rowan"), out());
    assertTrue(lines.get(1).matches(".* 18 h +1 of \\d+ +ended, not signed"), out());
    sign(exam, KeepAudio.ALWAYS);
    run("records", "--data", data.toString());
    assertTrue(
        out().contains("closed by “Dr Reed”, “paediatrician” (a name, not a signature)"), out());
  }

  @Test
  void recordsShowsOnlyWhatIsAskedForAndSeveralAreSignedAtOnce() throws IOException {
    ExamFolder quiet;
    try (OpenExam open = store().create("Bed 8", "test", null, null)) {
      new Bedside(clock, open.examination()).find("spine straight");
      quiet = open.folder();
    }
    ExamFolder pressing;
    try (OpenExam open = store().create("Bed 9", "test", "Ada Quill", null)) {
      new Bedside(clock, open.examination()).find("barlow.left positive");
      pressing = open.folder();
    }
    assertEquals(List.of(pressing.name()), listed("--urgent"));
    assertEquals(List.of(pressing.name()), listed("--by", "quill"));
    assertEquals(2, listed("--unsigned").size());
    assertEquals(List.of(), listed("--since", "2999-01-01"));
    assertEquals(2, run("records", "--since", "soon", "--data", data.toString()));
    assertEquals(List.of(pressing.name()), listed("--urgent", "--due", "2999-01-01"));
    String[] sign = {
      "sign",
      quiet.name(),
      pressing.name(),
      "nobody",
      "--as",
      "Rowan Reed",
      "--role",
      "registrar",
      "--yes",
      "--data",
      data.toString()
    };
    assertEquals(1, run(sign), "one of the three is not there");
    assertTrue(err().contains("found none called nobody"), err());
    assertEquals(List.of(), listed("--unsigned"));
    assertEquals(0, run("statistics", "--data", data.toString()), err());
    assertTrue(out().startsWith("2 records, 2 signed\n"), out());
    assertTrue(out().matches("(?s).*\\nBarlow +1 of 4 +25% .*"), out());
    assertEquals(0, run("statistics", "--csv", "--data", data.toString()), err());
    assertTrue(out().startsWith("step,wanted,done,left-out,judged,corrected\n"), out());
    assertTrue(out().contains("\nbarlow,4,1,0,1,0\n"), out());
  }

  private List<String> listed(String... how) {
    List<String> call = new ArrayList<>(List.of("records", "--data", data.toString()));
    call.addAll(List.of(how));
    assertEquals(0, run(call.toArray(String[]::new)), err());
    return out().lines().skip(1).map(line -> line.split(" ")[0]).toList();
  }

  @Test
  void recordsSaysSoWhenThereIsNone() {
    assertEquals(0, run("records", "--data", data.toString()));
    assertEquals("no examination is kept here\n", err());
  }

  @Test
  void recordsRemovesOnlyAfterAYes() throws IOException {
    ExamFolder exam = recorded(null);
    assertEquals(
        1, withInput("no\n", "records", "--data", data.toString(), "--remove", exam.name()));
    assertTrue(exam.exists());
    assertEquals(1, withInput("", "records", "--data", data.toString(), "--remove", exam.name()));
    assertTrue(exam.exists());
    assertEquals(
        0, withInput("yes\n", "records", "--data", data.toString(), "--remove", exam.name()));
    assertEquals("removed " + exam.name() + "\n", out());
    assertFalse(Files.exists(exam.path()));
  }

  @Test
  void recordsRemovesNothingThatIsKeptElsewhere() throws IOException {
    ExamFolder exam = recorded(null);
    Path other = Files.move(exam.path(), folder.resolve("elsewhere"));
    assertEquals(
        1, withInput("yes\n", "records", "--data", data.toString(), "--remove", other.toString()));
    assertTrue(Files.exists(other));
    assertTrue(err().contains("expected an examination in "), err());
  }

  private int withInput(String typed, String... args) {
    InputStream before = System.in;
    System.setIn(new ByteArrayInputStream(typed.getBytes(StandardCharsets.UTF_8)));
    try {
      return run(args);
    } finally {
      System.setIn(before);
    }
  }

  @Test
  void recordShowsAnswersContradictionsAndHowItCameToBe() throws IOException {
    ExamFolder exam = recorded(null);
    assertEquals(0, run(record(exam)), err());
    assertTrue(out().contains("Baby Rowan"), out());
    assertTrue(
        out().contains("left Barlow: first positive, then negative; keep the first or the second?"),
        out());
    assertEquals(0, run(record(exam, "--json")), err());
    JsonNode json = new ObjectMapper().readTree(out());
    assertEquals("positive", json.at("/answers/0/value").asText());
    assertEquals("left barlow negative", json.at("/contradictions/0/newer/words").asText());
    assertEquals("waits", json.at("/history/1/status").asText());
    assertEquals("ended", json.at("/examination/phase").asText());
    assertEquals(0, json.get("breaks").size());
  }

  private String[] record(ExamFolder exam, String... more) {
    List<String> args = new java.util.ArrayList<>(List.of("record", exam.name()));
    args.addAll(List.of("--data", data.toString(), "--config", defaults.toString()));
    args.addAll(List.of(more));
    return args.toArray(String[]::new);
  }

  @Test
  void verifyNamesTheEntryThatWasChanged() throws IOException {
    ExamFolder exam = recorded(null);
    sign(exam, KeepAudio.ALWAYS);
    assertEquals(0, run(record(exam, "--verify")), out());
    assertTrue(
        out()
            .matches(
                "\\d+ entries, each as it was written; closed by “Dr Reed”, “paediatrician”"
                    + " \\(a name, not a signature\\)\n"
                    + "seal of Dr Reed: [0-9a-f]{64}\n"),
        out());
    String journal = Files.readString(exam.journal());
    Files.writeString(exam.journal(), journal.replaceFirst("\"positive\"", "\"negative\""));
    assertEquals(1, run(record(exam, "--verify")));
    assertEquals(
        "entry 5: the line cannot be read: its checksum does not match",
        out().lines().findFirst().orElseThrow());
    assertEquals(1, run(record(exam)));
    assertTrue(
        err()
            .startsWith(
                "examination " + exam.name() + " is not as it was signed: entry 5: the line"),
        err());
    assertEquals("", out());
    assertEquals(0, run(record(exam, "--altered")), err());
    assertTrue(out().startsWith("not as it was signed: entry 5: "), out());
  }

  @Test
  void aSealReadOffPaperIsHeldAgainstTheRecord() throws IOException {
    ExamFolder exam = recorded(null);
    String seal = "0".repeat(64);
    assertEquals(1, run(record(exam, "--verify", "--seal", seal)));
    assertTrue(out().endsWith("the seal is none of this record's\n"), out());
    sign(exam, KeepAudio.ALWAYS);
    assertEquals(1, run(record(exam, "--verify", "--seal", seal)));
    assertTrue(out().endsWith("the seal is none of this record's\n"), out());
    seal = store().read(exam, null).record().signatures().get(0).seal();
    String copied = seal.substring(0, 32).toUpperCase(Locale.ROOT) + "\n " + seal.substring(32);
    assertEquals(0, run(record(exam, "--verify", "--seal", copied)), out());
    assertTrue(out().endsWith("the seal is that of Dr Reed, paediatrician\n"), out());
    assertEquals(2, run(record(exam, "--verify", "--seal", seal.substring(1))));
    assertEquals("expected a seal of 64 hex digits, found " + seal.substring(1) + "\n", err());
    assertEquals(2, run(record(exam, "--seal", seal)), "a seal alone checks nothing");
  }

  @Test
  void aSealDoesNotVouchForARecordThatWasChangedBehindIt() throws IOException {
    ExamFolder exam = recorded(null);
    sign(exam, KeepAudio.ALWAYS);
    String seal = store().read(exam, null).record().signatures().get(0).seal();
    Files.delete(SegmentStore.segments(exam.audio()).get(0).file());
    assertEquals(1, run(record(exam, "--verify", "--seal", seal)));
    assertTrue(out().startsWith("sound "), out());
    assertTrue(out().endsWith("the seal is that of Dr Reed, paediatrician\n"), out());
  }

  @Test
  void verifyNamesSoundThatWasChangedOrIsMissingSinceItWasSigned() throws IOException {
    ExamFolder exam = recorded(null);
    sign(exam, KeepAudio.ALWAYS);
    Path first = SegmentStore.segments(exam.audio()).get(0).file();
    byte[] sound = Files.readAllBytes(first);
    sound[1000] ^= 1;
    Files.write(first, sound);
    assertEquals(1, run(record(exam, "--verify")));
    assertEquals("sound " + first.getFileName() + " was changed since it was signed\n", out());
    Files.delete(first);
    assertEquals(1, run(record(exam, "--verify")));
    assertTrue(
        out().startsWith("sound " + first.getFileName() + " is missing since it was signed\n"),
        out());
    assertTrue(out().contains("utterance 1 (1.0 to 3.0 s) has no sound\n"), out());
  }

  @Test
  void soundThatIsKeptUntilSignedIsRemovedThenAndItsHashesStay() throws IOException {
    ExamFolder exam = recorded(null);
    sign(exam, KeepAudio.UNTIL_SIGNED);
    assertEquals(List.of(), SegmentStore.segments(exam.audio()));
    assertEquals(0, run(record(exam, "--verify")), out());
    var record = store().read(exam, null).record();
    assertTrue(record.signed());
    assertEquals(2, record.signatures().get(0).audio().size());
    assertEquals("2 audio segments were removed: kept until signed", record.notes().get(0).text());
  }

  @Test
  void anEncryptedRecordOpensWithItsPassphraseOnly() throws IOException {
    ExamFolder exam = recorded("quiet boats".toCharArray());
    run("records", "--data", data.toString());
    assertTrue(out().contains("encrypted"), out());
    Path right = Files.writeString(folder.resolve("right"), "quiet boats\n");
    Path wrong = Files.writeString(folder.resolve("wrong"), "loud boats\n");
    assertEquals(0, run(record(exam, "--passphrase-file", right.toString())), err());
    assertTrue(out().contains("Baby Rowan"), out());
    assertEquals(1, run(record(exam, "--passphrase-file", wrong.toString())));
    assertEquals("the passphrase is wrong\n", err());
  }

  @Test
  void anUnknownRecordIsSaidToBeSo() {
    assertEquals(1, run("record", "nobody", "--data", data.toString()));
    assertEquals("expected an examination, found none called nobody\n", err());
  }

  /**
   * Watches the system calls of a real process. The Java runtime itself makes and closes a socket
   * or two when it starts, to find out whether there is IPv6; what counts is that none is used.
   */
  @Test
  @FullOnly("ArchitectureTest finds no socket but in report.send")
  void noCommandTalksToANetwork() throws Exception {
    assumeTrue(Files.isExecutable(Path.of("/usr/bin/strace")), "needs strace");
    ExamFolder exam = recorded(null);
    Path trace = folder.resolve("trace");
    List<String> command =
        new ArrayList<>(
            List.of(
                "strace",
                "-f",
                "--seccomp-bpf",
                "-e",
                "trace=connect,bind,listen,sendto,sendmsg",
                "-o",
                trace.toString()));
    command.addAll(ChildJava.command());
    command.addAll(List.of("-cp", System.getProperty("java.class.path")));
    List<ChildCommands.Ran> done = new ArrayList<>();
    try (ChildCommands commands = new ChildCommands(command, Map.of())) {
      done.add(commands.run("records", "--data", data.toString()));
      done.add(commands.run("record", exam.name(), "--data", data.toString()));
      done.add(commands.run("interpret", "left barlow positive"));
    } finally {
      assumeTrue(
          Files.exists(trace) && Files.readString(trace).contains("exited"),
          "strace may not trace here");
    }
    String calls = Files.readString(trace);
    done.forEach(ran -> assertEquals(0, ran.code(), ran.out()));
    assertFalse(calls.contains("AF_INET"), calls);
  }

  @Test
  void writesSeveralRecordsInOneGoAndTheOthersWhereOneCannotBeWritten() throws IOException {
    List<ExamFolder> exams = List.of(recorded(null), recorded(null), recorded(null));
    List<String> names = exams.stream().map(ExamFolder::name).toList();
    Path reports = Files.createDirectories(folder.resolve("reports"));
    Files.writeString(reports.resolve(names.get(1) + ".md"), "mine");
    List<String> call = new java.util.ArrayList<>(List.of("report"));
    call.addAll(names);
    call.addAll(List.of("--as", "md,csv", "--to", reports.toString(), "--data", data.toString()));
    call.addAll(List.of("--config", defaults.toString()));
    assertEquals(1, run(call.toArray(String[]::new)));
    assertTrue(err().contains(names.get(1)), err());
    assertEquals("mine", Files.readString(reports.resolve(names.get(1) + ".md")));
    for (int i : List.of(0, 2)) {
      String report = Files.readString(reports.resolve(names.get(i) + ".md"));
      assertTrue(report.contains("Baby Rowan") && report.contains("DRAFT"), report);
      assertTrue(Files.exists(reports.resolve(names.get(i) + ".csv")));
      assertTrue(out().contains(names.get(i) + ".csv"), out());
    }
    call.add("--force");
    assertEquals(0, run(call.toArray(String[]::new)), err());
    try (var files = Files.list(reports)) {
      assertEquals(6, files.count());
    }
  }
}
