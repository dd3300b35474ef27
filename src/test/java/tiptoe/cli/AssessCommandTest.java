package tiptoe.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tiptoe.exam.journal.ExamFolder;
import tiptoe.exam.journal.OpenExam;
import tiptoe.exam.journal.RecordStore;
import tiptoe.protocol.Protocol;
import tiptoe.wording.QuestionWording;

class AssessCommandTest {
  private static final String ANSWERS =
      """
      {"baby": {"sex": "boy", "gestation": "40+0", "age": 20, "presentation": "breech"},
       "examined-at": "2026-11-25T10:30:00Z",
       "answers": [{"step": "weight", "number": 2500, "unit": "g"},
                   {"step": "saturation-right-hand", "number": 97, "unit": "%"},
                   {"step": "saturation-foot", "number": 94, "unit": "%"},
                   {"step": "clavicle", "side": "left", "value": "crepitus"}]}
      """;

  @TempDir Path folder;
  private final ByteArrayOutputStream out = new ByteArrayOutputStream();
  private final ByteArrayOutputStream err = new ByteArrayOutputStream();
  private Path defaults;

  @BeforeEach
  void writeDefaults() throws IOException {
    defaults = Files.writeString(folder.resolve("defaults.yaml"), "tones: on\n");
  }

  private int run(String... args) {
    return Tiptoe.run(
        new PrintStream(out, true, StandardCharsets.UTF_8),
        new PrintStream(err, true, StandardCharsets.UTF_8),
        args);
  }

  private String answers(String json) throws IOException {
    return Files.writeString(folder.resolve("answers.json"), json).toString();
  }

  @Test
  void printsFlagsCentilesAndPlan() throws IOException {
    assertEquals(0, run("assess", answers(ANSWERS), "--config", defaults.toString()));
    String text = out.toString(StandardCharsets.UTF_8);
    assertTrue(text.startsWith("flags\n  ARRANGE, in 1 hour: saturation, right hand, "), text);
    assertTrue(text.contains("  weight 2500 g: 1st centile, z -2.19"), text);
    assertTrue(text.contains("2026-12-22 to 2027-01-05, at 4 to 6 weeks of age: hip"), text);
    assertEquals("", err.toString(StandardCharsets.UTF_8));
  }

  @Test
  void printsTheSameAsJsonAndNothingElse() throws IOException {
    assertEquals(0, run("assess", answers(ANSWERS), "--json", "--config", defaults.toString()));
    JsonNode json = new ObjectMapper().readTree(out.toString(StandardCharsets.UTF_8));
    assertEquals("arrange", json.get("flags").get(0).get("level").asText());
    assertEquals("saturation-screen-unclear-2025", json.get("flags").get(0).get("rule").asText());
  }

  @Test
  void printsWhenTheBabyWasBornAsJson() throws IOException {
    String born =
        answers(
            "{\"baby\": {\"born-at\": \"2026-11-24T16:30:00Z\"},"
                + " \"examined-at\": \"2026-11-26T09:00:00Z\","
                + " \"answers\": [{\"step\": \"cry\", \"value\": \"strong\"}]}");
    assertEquals(0, run("assess", born, "--json", "--config", defaults.toString()));
    JsonNode json = new ObjectMapper().readTree(out.toString(StandardCharsets.UTF_8));
    assertEquals("2026-11-24T16:30:00Z", json.get("born").asText());
  }

  @Test
  void usesTheConfiguredRules() throws IOException {
    Path config = Files.writeString(folder.resolve("c.yaml"), "rules: {saturation-screen: 2011}\n");
    assertEquals(0, run("assess", answers(ANSWERS), "--config", config.toString()));
    String text = out.toString(StandardCharsets.UTF_8);
    assertTrue(text.contains("saturation screen: passed"), text);
    assertTrue(text.contains("rules: saturation-screen 2011, "), text);
  }

  @Test
  void refusesWhatItCannotUse() throws IOException {
    String bad = answers("{\"answers\": [{\"step\": \"moro\", \"value\": \"gone\"}]}");
    assertEquals(1, run("assess", bad, "--config", defaults.toString()));
    assertEquals(
        bad + ": answer 1: expected a value of step moro, found gone\n",
        err.toString(StandardCharsets.UTF_8));
    assertEquals("", out.toString(StandardCharsets.UTF_8));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "[]                                                                 | an object with a"
            + " list",
        "{}                                                                 | an object with a"
            + " list",
        "{\"answers\": [{\"step\": \"tail\", \"value\": \"long\"}]}            | answer 1:"
            + " expected",
        "{\"answers\": [{\"step\": \"barlow\", \"value\": \"negative\"}]}      | a side for step"
            + " barlow",
        "{\"answers\": [{\"step\": \"moro\", \"side\": \"left\", \"value\": \"x\"}]} | a value"
            + " of step moro",
        "{\"answers\": [{\"step\": \"weight\", \"number\": \"much\"}]}         | a number for step"
            + " weight",
        "{\"answers\": [{\"step\": \"weight\", \"number\": 1e99}]}           | plausible number"
            + " for",
        "{\"answers\": [], \"examined-at\": \"yesterday\"}                   | expected a time such"
            + " as",
        "{\"answers\": []} {}                                               | expected JSON",
        "{\"answers\": [], \"answers\": []}                                 | expected JSON"
      })
  void refusesAllOfAFileOfWhichItCannotUseAPart(String text, String why) throws IOException {
    String bad = answers(text);
    assertEquals(1, run("assess", bad, "--config", defaults.toString()), text);
    String told = err.toString(StandardCharsets.UTF_8);
    assertTrue(told.startsWith(bad + ": ") && told.contains(why), told);
    assertEquals("", out.toString(StandardCharsets.UTF_8));
  }

  @Test
  void refusesWhatIsNotThere() {
    Path none = folder.resolve("none.json");
    assertEquals(1, run("assess", none.toString(), "--config", defaults.toString()));
    assertEquals(
        "expected a file, found none at " + none + "\n", err.toString(StandardCharsets.UTF_8));
  }

  @Test
  void refusesAnExaminationThatIsNotThere() {
    String data = folder.toString();
    assertEquals(1, run("assess", "none", "--data", data, "--config", defaults.toString()));
    assertEquals(
        "expected an examination, found none called none\n", err.toString(StandardCharsets.UTF_8));
  }

  @Test
  void judgesAnExaminationThatWasKept() throws IOException {
    Clock clock = Clock.fixed(Instant.parse("2026-11-25T10:30:00Z"), ZoneOffset.UTC);
    RecordStore store = new RecordStore(folder, Protocol.standard(), clock, QuestionWording::of);
    ExamFolder kept;
    try (OpenExam open = store.create("demo", "0", null, null)) {
      open.examination().context("presentation", "breech", null);
      open.examination().context("age", "18", null);
      kept = open.folder();
    }
    for (String record : List.of(kept.name(), kept.path().toString())) {
      out.reset();
      assertEquals(
          0, run("assess", record, "--data", "" + folder, "--config", defaults.toString()));
      String text = out.toString(StandardCharsets.UTF_8);
      assertTrue(text.startsWith("flags\n  ARRANGE, at 4 to 6 weeks of age: Barlow"), text);
      assertTrue(text.contains("2026-12-22 to 2027-01-05"), text);
    }
    assertEquals("", err.toString(StandardCharsets.UTF_8));
  }

  @Test
  void refusesWhatIsNoText() throws IOException {
    Path bytes = Files.write(folder.resolve("answers.json"), new byte[] {'{', (byte) 0xff});
    assertEquals(1, run("assess", bytes.toString(), "--config", defaults.toString()));
    assertEquals(
        "expected UTF-8 text, found other bytes in " + bytes + "\n",
        err.toString(StandardCharsets.UTF_8));
  }

  @Test
  void refusesSettingsItDoesNotKnowWithTheirLine() throws IOException {
    Path config = Files.writeString(folder.resolve("c.yaml"), "tone: on\n");
    assertEquals(1, run("assess", answers(ANSWERS), "--config", config.toString()));
    assertEquals(
        config
            + " line 1: expected one of rules, units, spelling, keep-audio, tones, tone-volume,"
            + " weights, spoken-answers, synthesiser, whom-to-call, protocol, who, found tone\n",
        err.toString(StandardCharsets.UTF_8));
  }

  @Test
  void showsTheSettingsInForce() throws IOException {
    Path config = Files.writeString(folder.resolve("c.yaml"), "tones: off\n");
    assertEquals(0, run("settings", "--config", config.toString()));
    assertTrue(out.toString(StandardCharsets.UTF_8).contains("\ntones: off\n"));
    assertEquals("changed: tones off\n", err.toString(StandardCharsets.UTF_8));
  }
}
