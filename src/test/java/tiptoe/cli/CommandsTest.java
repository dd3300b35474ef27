package tiptoe.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;
import tiptoe.exam.journal.OpenExam;
import tiptoe.exam.journal.RecordProblem;
import tiptoe.exam.journal.RecordStore;
import tiptoe.protocol.Caution;
import tiptoe.protocol.Protocol;
import tiptoe.session.IdentityDialogue;
import tiptoe.session.ToolVersion;
import tiptoe.wording.QuestionWording;
import tiptoe.wording.Words;

/** The commands as a user calls them. */
class CommandsTest {
  private static final ObjectMapper JSON = new ObjectMapper();

  /** "correction left barlow positive", in a synthetic voice. */
  private static final String CLIP = "src/test/resources/tiptoe/speech/clips/127.wav";

  private record Ran(int code, String out, String err) {
    JsonNode json() throws IOException {
      return JSON.readTree(out);
    }
  }

  private static Ran run(String... args) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    int code =
        Tiptoe.run(
            new PrintStream(out, true, StandardCharsets.UTF_8),
            new PrintStream(err, true, StandardCharsets.UTF_8),
            args);
    return new Ran(
        code, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
  }

  @Test
  void interpretGivesAnswersMissingStepsAndQuestions() throws IOException {
    JsonNode json = run("interpret", "--json", "left clavicle crepitus. femoral pulse weak").json();
    assertEquals(
        "{\"step\":\"clavicle\",\"side\":\"left\",\"value\":\"crepitus\"}",
        json.at("/answers/0").toString());
    assertEquals("grammar", json.at("/utterances/0/statements/0/source").asText());
    assertTrue(
        json.get("missing").toString().contains("{\"step\":\"clavicle\",\"side\":\"right\"}"));
    assertEquals("femoral-pulse", json.at("/questions/0/step").asText());
    // The pulse still lacks its side, and is too pressing to wait for it in silence.
    assertEquals("urgent", json.at("/flags/0/level").asText());
    assertTrue(json.at("/flags/0/provisional").asBoolean());
    assertEquals("arrange", json.at("/flags/1/level").asText());
    assertFalse(json.at("/flags/1/source").asText().isEmpty());
  }

  @Test
  void interpretRecordsWhatIsSureOfASentenceAndExplainsTheRest() throws IOException {
    String text = "the palate is intact, sutures flobbery normal";
    JsonNode json = run("interpret", "--json", "--explain", text).json();
    assertEquals("palate", json.at("/answers/0/step").asText(), json::toString);
    assertEquals(1, json.at("/answers").size(), json::toString);
    JsonNode readings =
        json.at("/utterances").path(json.at("/utterances").size() - 1).at("/readings");
    assertEquals("palate", readings.at("/0/step").asText(), json::toString);
    assertTrue(readings.at("/0/sure").asBoolean(), json::toString);
    assertEquals("no word left open can change it", readings.at("/0/why").asText());
    for (int i = 1; i < readings.size(); i++) {
      assertFalse(readings.at("/" + i + "/sure").asBoolean(), json::toString);
      assertTrue(readings.at("/" + i + "/why").asText().contains("flobbery"), json::toString);
    }
  }

  @Test
  void interpretSaysWhatSoundsLikeTalk() {
    String text = "a cleft palate can be missed if you only look";
    String said = run("interpret", "--explain", text).out();
    assertTrue(said.matches("(?s).*\n    sounds like talk: (0\\.[5-9]\\d|1\\.00)\n.*"), said);
  }

  @Test
  void interpretTellsTheFactsThatWereStated() {
    assertTrue(
        run("interpret", "born by forceps at thirty nine weeks")
            .out()
            .endsWith("\n  birth mode: forceps\n  gestation: 39+0 weeks\n"));
    String aloud = run("interpret", "age eighteen hours", "his sister was born by forceps").out();
    assertFalse(aloud.contains("birth mode"), aloud);
  }

  @Test
  void interpretGivesNumbersInTheUnitOfTheStep() throws IOException {
    JsonNode json = run("interpret", "--json", "weight seven pounds six ounces").json();
    assertEquals(
        "{\"step\":\"weight\",\"number\":3345,\"unit\":\"g\"}", json.at("/answers/0").toString());
  }

  @Test
  void aFileThatDoesNotSayWhoTheBabyIsIsWrongUseAndLeavesNoRecord(@TempDir Path folder)
      throws IOException {
    Path file = Files.writeString(folder.resolve("baby.json"), "{\"name\": 3, \"sex\": \"f\"}");
    Path data = folder.resolve("data");
    Ran ran = run("exam", "--patient", file.toString(), "--data", data.toString());
    assertEquals(2, ran.code());
    assertTrue(ran.err().startsWith("--patient: expected girl or boy or undetermined"), ran.err());
    Ran missing = run("exam", "--patient", folder.resolve("none").toString());
    assertEquals(2, missing.code());
    assertFalse(Files.exists(data.resolve("examinations")));
  }

  @Test
  void whoTheBabyIsIsAskedUntilItIsConfirmed() throws IOException {
    run("settings");
    assertEquals(
        Map.of("record-number", "K1234567"),
        IdentityDialogue.ask(
            Words.asKept(Protocol.standard()),
            new ByteArrayInputStream(
                "no\nK7654321\nno\nK1234567\r\n\n".getBytes(StandardCharsets.UTF_8)),
            Console.err()));
  }

  @Test
  void whatIsUnsureIsNoAnswer() throws IOException {
    JsonNode json = run("interpret", "--json", "perhaps some crepitus on the left clavicle").json();
    assertEquals("unsure", json.at("/utterances/0/outcome").asText());
    assertEquals(0, json.get("answers").size());
  }

  @Test
  void anOlderStatementStandsUntilItIsCorrected() throws IOException {
    JsonNode json = run("interpret", "--json", "left barlow positive. both hips stable").json();
    assertEquals(1, json.get("contradictions").size());
    assertTrue(
        json.get("answers")
            .toString()
            .contains("{\"step\":\"barlow\",\"side\":\"left\",\"value\":\"positive\"}"));
    JsonNode corrected =
        run("interpret", "--json", "left barlow positive. correction left barlow negative").json();
    assertEquals(0, corrected.get("contradictions").size());
  }

  @Test
  void eachTextIsAnExaminationOfItsOwn() {
    Ran ran = run("interpret", "--json", "left clavicle intact", "right clavicle intact");
    assertEquals(2, ran.out().strip().split("\n").length);
  }

  @Test
  void theFilesOfACallThatCanBeHeardAreHeard(@TempDir Path folder) throws IOException {
    Path broken = folder.resolve("broken.wav");
    Files.writeString(broken, "not a recording");
    Ran ran = run("replay", "--json", broken.toString(), CLIP);
    assertEquals(1, ran.code());
    assertTrue(ran.err().contains("found text in broken.wav"), ran.err());
    JsonNode json = ran.json();
    assertEquals(CLIP, json.get("file").asText());
    String answers = json.get("answers").toString();
    assertTrue(answers.contains("{\"step\":\"barlow\",\"side\":\"left\",\"value\":\"positive\"}"));
    assertTrue(json.get("missing").toString().contains("\"ortolani\",\"side\":\"right\""));
  }

  @Test
  void anExaminationIsKeptShownReportedAndNotSentUnsigned(@TempDir Path folder) throws IOException {
    String data = folder.resolve("data").toString();
    Ran exam = run("exam", "--from", CLIP, "--fast", "--label", "x", "--data", data);
    assertEquals(0, exam.code(), exam.err());
    assertTrue(exam.out().startsWith(Caution.TEXT));
    String id;
    try (Stream<Path> exams = Files.list(folder.resolve("data/examinations"))) {
      id = exams.findFirst().orElseThrow().getFileName().toString();
    }
    assertTrue(run("records", "--data", data).out().contains(id));
    assertEquals(0, run("record", "--verify", id, "--data", data).code());
    String to = folder.resolve("out").toString();
    assertEquals(0, run("report", id, "--format", "md,csv", "--to", to, "--data", data).code());
    assertTrue(Files.readString(folder.resolve("out/" + id + ".md")).contains("DRAFT"));
    Ran again = run("report", id, "--as", "md,csv", "--to", to, "--data", data);
    assertEquals(1, again.code());
    assertTrue(again.err().contains("--force replaces it"));
    Ran send = run("send", id, "--to", "http://127.0.0.1:9/fhir", "--data", data);
    assertEquals(1, send.code());
    assertTrue(send.err().contains("expected a signed record, found a draft"));
  }

  @Test
  void wrongUseIsCode2AndSaysWhatWasExpected() {
    assertEquals(2, run("interpret").code());
    assertEquals("not expected: 'x'\nsee tiptoe ready --help\n", run("ready", "x").err());
    Ran misspelt = run("exam", "--form", "x");
    assertEquals(
        "not expected: '--form'; perhaps --from\nsee tiptoe exam --help\n", misspelt.err());
    assertEquals("not expected: 'exma'; perhaps exam\nsee tiptoe --help\n", run("exma").err());
    assertEquals("not expected: '--zzz'\nsee tiptoe say --help\n", run("say", "--zzz").err());
    assertEquals("expected TEXT\nsee tiptoe interpret --help\n", run("interpret").err());
    assertEquals(
        "expected PATH behind --from\nsee tiptoe exam --help\n", run("exam", "--from").err());
    assertEquals(
        "expected nothing behind --list, found '3'\nsee tiptoe soundcheck --help\n",
        run("soundcheck", "--list=3").err());
    assertEquals(
        "expected NUMBER behind --seed, found 'x'\nsee tiptoe measure --help\n",
        run("measure", "demo-audio", "--seed", "x").err());
    assertEquals(
        "Invalid value for option '--since': expected a day such as 2026-03-01, found x\n"
            + "see tiptoe records --help\n",
        run("records", "--since", "x").err());
    assertEquals(
        "expected txt, csv, ics behind --format, found 'xml'\nsee tiptoe due --help\n",
        run("due", "--format", "xml").err());
    assertEquals(
        "expected fhir, html, pdf, md, txt, csv, json, letter, letter-html, parents, parents-html"
            + " behind --format, found 'docx'\nsee tiptoe report --help\n",
        run("report", "last", "--format", "docx").err());
    assertEquals(
        1,
        run("interpret", "left", "barlow", "positive")
            .out()
            .lines()
            .filter(line -> line.startsWith("\""))
            .count());
    Ran say = run("say", "knee");
    assertEquals(2, say.code());
    assertTrue(say.err().contains("found knee"));
  }

  @Test
  void everyCommandHasHelpWithAnExample() {
    for (String command : new CommandLine(new Tiptoe()).getSubcommands().keySet()) {
      Ran help = run(command, "--help");
      assertEquals(0, help.code());
      assertTrue(help.out().contains("Example: tiptoe " + command), command);
      assertEquals("tiptoe " + ToolVersion.number() + "\n", run(command, "--version").out());
    }
  }

  @Test
  void theHelpListsEveryCommandOnceWithWhatIsWantedFirstOnTop() {
    List<String> known = List.copyOf(new CommandLine(new Tiptoe()).getSubcommands().keySet());
    assertEquals(known.stream().sorted().toList(), HelpByTask.names().stream().sorted().toList());
    assertEquals(List.of("ready", "exam"), HelpByTask.names().subList(0, 2));
    String help = run("--help").out();
    assertTrue(help.contains("\nAt the cot:\n  ready "), help);
    assertTrue(help.lines().allMatch(line -> line.length() <= 80), help);
  }

  @Test
  void aStartThatFailsLeavesNoRecord(@TempDir Path folder) throws IOException {
    String data = folder.resolve("data").toString();
    Ran ran = run("exam", "--plain", "--from", "/no/such.wav", "--fast", "--data", data);
    assertEquals(1, ran.code());
    assertTrue(ran.err().contains("found nothing at /no/such.wav"), ran::err);
    assertFalse(ran.err().contains("--continue"), ran::err);
    try (Stream<Path> left = Files.list(folder.resolve("data/examinations"))) {
      assertEquals(0, left.count());
    }
  }

  @Test
  void aRecordIsNamedByItsBeginningOrAsTheLast(@TempDir Path folder) throws IOException {
    RecordStore store =
        new RecordStore(folder, Protocol.standard(), Clock.systemUTC(), QuestionWording::of);
    List<String> ids = new ArrayList<>();
    for (String minute : List.of("2026-03-01-0900", "2026-03-01-0901", "2026-03-02-0000")) {
      try (OpenExam open = store.create(null, "test", null, null)) {
        Files.move(
            open.folder().path(), open.folder().path().resolveSibling(minute + "-" + "abcd"));
        ids.add(minute + "-abcd");
      }
    }
    assertEquals(ids.get(2), store.find("last").name());
    assertEquals(ids.get(2), store.find("2026-03-02").name());
    assertEquals(ids.get(0), store.find("2026-03-01-0900").name());
    RecordProblem two = assertThrows(RecordProblem.class, () -> store.find("2026-03-01"));
    assertEquals(
        "expected one examination, found 2 called 2026-03-01: " + ids.get(1) + ", " + ids.get(0),
        two.getMessage());
    assertThrows(RecordProblem.class, () -> store.find(""));
    Files.move(
        folder.resolve("examinations/" + ids.get(0)),
        folder.resolve("examinations/2026-03-02-0000-bcde"));
    assertThrows(RecordProblem.class, () -> store.find("last"), "two of one minute");
  }

  @Test
  void whoSignsIsSaidInTheCallOrInTheSettings(@TempDir Path folder) throws IOException {
    String data = folder.resolve("data").toString();
    RecordStore store =
        new RecordStore(Path.of(data), Protocol.standard(), Clock.systemUTC(), QuestionWording::of);
    store.create(null, "test", null, null).close();
    String settings = folder.resolve("tiptoe.yaml").toString();
    Files.writeString(Path.of(settings), "tones: off\n");
    String[] sign = {"sign", "last", "--yes", "--data", data, "--config", settings};
    assertEquals(2, run(sign).code(), "nobody signs");
    assertEquals(
        0,
        run("settings", "--as", "Rowan Reed", "--role", "registrar", "--config", settings).code());
    Ran signed = run(sign);
    assertEquals(0, signed.code(), signed.err());
    assertTrue(signed.out().contains("“Rowan Reed”, “registrar”"), signed.out());
  }

  @Test
  void withoutArgumentsItExplainsItselfOnOneScreen() {
    Ran none = run();
    assertEquals(0, none.code());
    assertTrue(none.out().lines().count() <= 24, none.out());
    assertTrue(none.out().lines().allMatch(line -> line.length() <= 80), none.out());
    for (String next : List.of("tiptoe ready", "tiptoe soundcheck", "tiptoe demo", "tiptoe exam")) {
      assertTrue(none.out().contains(next), next);
    }
    assertTrue(none.out().contains("does not diagnose"), none.out());
  }

  @Test
  void thePhraseBookIsDrawnFromTheGrammars() {
    String hips = run("say", "hip").out();
    assertTrue(hips.contains("**Barlow** (each side) — key step"), hips);
    assertTrue(hips.contains("barlow"));
  }
}
