package tiptoe.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
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
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tiptoe.FullOnly;
import tiptoe.TestExtent;
import tiptoe.audio.AudioFile;
import tiptoe.audio.Pcm;
import tiptoe.exam.Heard;
import tiptoe.exam.Review;
import tiptoe.exam.Signer;
import tiptoe.exam.journal.OpenExam;
import tiptoe.exam.journal.RecordStore;
import tiptoe.finding.Finding;
import tiptoe.finding.Outcome;
import tiptoe.language.Interpretation;
import tiptoe.language.Meaning;
import tiptoe.measure.Split;
import tiptoe.protocol.Protocol;
import tiptoe.protocol.Side;
import tiptoe.session.Hearing;
import tiptoe.wording.QuestionWording;

/** The command {@code measure} as a user calls it, through the real engine. */
@Tag("hearing")
class MeasureCommandTest {
  private static final Path CLIPS = Path.of("src/test/resources/tiptoe/speech/clips");
  private static final Path DEMO = Path.of("demo-audio");
  private static final Path OFF_SCRIPT = Path.of("../shared/audio/off-script");
  private static final ObjectMapper JSON = new ObjectMapper();

  /** Then each call finds the models loaded. */
  @BeforeAll
  static void load() {
    Hearing.loaded();
  }

  private record Ran(int code, String out, String err) {
    List<JsonNode> lines() throws IOException {
      List<JsonNode> nodes = new ArrayList<>();
      for (String line : out.lines().toList()) {
        nodes.add(JSON.readTree(line));
      }
      return nodes;
    }

    JsonNode row(int number) throws IOException {
      return lines().get(lines().size() - 1).path("summary").path(number);
    }
  }

  private static Ran run(Object... args) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    int code =
        Tiptoe.run(
            new PrintStream(out, true, StandardCharsets.UTF_8),
            new PrintStream(err, true, StandardCharsets.UTF_8),
            Stream.of(args).map(Object::toString).toArray(String[]::new));
    return new Ran(
        code, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
  }

  /** A folder with some clips and their texts. */
  private static Path clips(Path folder, String... names) throws IOException {
    for (String name : names) {
      Files.copy(CLIPS.resolve(name + ".wav"), folder.resolve(name + ".wav"));
      Files.copy(CLIPS.resolve(name + ".txt"), folder.resolve(name + ".txt"));
    }
    return folder;
  }

  private static void noise(Path file, long seed) throws IOException {
    Random random = new Random(seed);
    short[] samples = new short[2 * 8_000];
    for (int i = 0; i < samples.length; i++) {
      samples[i] = (short) (2_000 * random.nextGaussian());
    }
    AudioFile.write(file, new Pcm(samples, 8_000));
  }

  /** 001 "posture flexed", 002 "skin pink", 003 "no central cyanosis". */
  @Test
  void countsWhatIsHeardAgainstWhatWasSaid(@TempDir Path folder) throws IOException {
    clips(folder, "001", "002", "003");
    Files.writeString(folder.resolve("002.txt"), "skin pale\n"); // said otherwise than heard
    Ran ran = run("measure", "--json", folder);
    assertEquals(0, ran.code(), ran.err());
    assertEquals(4, ran.lines().size());
    JsonNode second = ran.lines().get(1);
    assertEquals("skin pink", second.path("text").asText());
    assertEquals(1, second.path("wrong").asInt());
    assertEquals(1, second.path("false-answers").size());
    assertEquals(1, second.path("missing-answers").size());
    JsonNode row = ran.row(0);
    assertEquals(3, row.path("lines").asInt());
    assertEquals(2, row.path("exact").asInt());
    assertEquals(2, row.path("understood").asInt());
    assertEquals(1, row.path("wrong").asInt());
    assertEquals(3, row.path("expected").asInt());
    assertEquals(0.6667, row.path("precision").asDouble());
    assertEquals(0.6667, row.path("recall").asDouble());
    assertEquals(1, row.path("false-answers").asInt());
  }

  @Test
  void doesTheOthersWhenSomeCannotBeDone(@TempDir Path folder) throws IOException {
    clips(folder, "001", "002", "003");
    Files.writeString(folder.resolve("000.wav"), "no sound");
    Files.delete(folder.resolve("003.txt"));
    Ran ran = run("measure", folder);
    assertEquals(1, ran.code());
    assertEquals(
        2, ran.err().lines().filter(line -> line.startsWith("expected")).count(), ran.err());
    assertTrue(
        ran.err().contains("expected 003.txt or 003.json beside 003.wav, found neither"),
        ran.err());
    assertTrue(ran.err().contains("000.wav"), ran.err());
    assertTrue(ran.out().lines().skip(1).findFirst().orElse("").contains(" 2 "), ran.out());
  }

  @Test
  void takesTheAnswersOfAJsonFile(@TempDir Path folder) throws IOException {
    clips(folder, "002");
    Files.delete(folder.resolve("002.txt"));
    Files.writeString(
        folder.resolve("002.json"),
        "{\"answers\":[{\"step\":\"barlow\",\"side\":\"left\",\"value\":\"negative\"}]}");
    JsonNode row = run("measure", "--json", folder).row(0);
    assertEquals(0, row.path("lines").asInt());
    assertTrue(row.path("precision").isNumber());
    assertEquals(0, row.path("found").asInt());
    assertEquals(1, row.path("expected").asInt());
    assertEquals(1, row.path("false-answers").asInt());
    Files.writeString(folder.resolve("002.json"), "{\"answers\":[{\"step\":\"barlo\"}]}");
    Ran broken = run("measure", folder);
    assertEquals(1, broken.code());
    assertTrue(broken.err().contains("002.json: answer 1: "), broken.err());
  }

  @Test
  @FullOnly("the others hear with the usual seed and threads")
  void theSameSeedGivesTheSameFiguresWhateverTheThreads(@TempDir Path folder) throws IOException {
    int files = TestExtent.of(1, 2);
    Path speech = Files.createDirectory(folder.resolve("speech"));
    clips(speech, List.of("001", "002").subList(0, files).toArray(String[]::new));
    Path noises = Files.createDirectory(folder.resolve("noise"));
    noise(noises.resolve("a.wav"), 1);
    noise(noises.resolve("b.wav"), 2);
    List<String> one = figures(speech, noises, 1, 7);
    assertEquals(2 * files + 1, one.size()); // 2 conditions of each, and the summary
    assertEquals(one, figures(speech, noises, 3, 7));
    List<String> other = figures(speech, noises, 2, 8);
    assertEquals(one.subList(0, files), other.subList(0, files));
    assertNotEquals(one.subList(files, 2 * files), other.subList(files, 2 * files));
  }

  private static List<String> figures(Path speech, Path noises, int threads, int seed)
      throws IOException {
    List<String> lines = new ArrayList<>();
    for (JsonNode line :
        run(
                "measure",
                "--json",
                speech,
                "--noise",
                noises,
                "--snr",
                -6,
                "--threads",
                threads,
                "--seed",
                seed)
            .lines()) {
      ((ObjectNode) line).remove("busy");
      line.path("summary").forEach(row -> ((ObjectNode) row).remove("real-time-factor"));
      lines.add(line.toString());
    }
    return lines;
  }

  @Test
  void timesAnUtteranceThatAPauseEnds(@TempDir Path folder) throws IOException {
    clips(folder, "002");
    assertEquals(0, run("measure", "--json", folder).row(0).path("timed").asInt());
    JsonNode row = run("measure", "--json", "--pause", "1.5", folder).row(0);
    assertEquals(1, row.path("timed").asInt());
    // The rules of the endpoint wait half a second at least, a second and a bit at most.
    double latency = row.path("latency-p50").asDouble();
    assertTrue(latency >= 0.4 && latency <= 1.5, row.toString());
  }

  @Test
  void offScriptTellsWhatWasAcceptedAndWhatItDid(@TempDir Path folder) throws IOException {
    clips(folder, "001", "002");
    Files.delete(folder.resolve("001.txt"));
    Ran ran = run("measure", "--off-script", folder);
    assertEquals(0, ran.code(), ran.err());
    assertTrue(ran.out().contains("002.wav, clean: accepted \"skin pink\": "), ran.out());
  }

  /** Some of the held-out half of unrelated read speech (LibriSpeech, CC BY 4.0). */
  @Test
  @FullOnly("UnrelatedSpeechTest hears such speech")
  void acceptsHardlyAnythingOfUnrelatedSpeech(@TempDir Path folder) throws IOException {
    assumeTrue(Files.isDirectory(OFF_SCRIPT), "skipped: no recordings in ../shared");
    int number = 4;
    try (Stream<Path> files = Files.list(OFF_SCRIPT)) {
      for (Path file :
          files
              .filter(one -> Split.HELD_OUT.takes(one.getFileName().toString()))
              .sorted()
              .limit(number)
              .toList()) {
        Files.copy(file, folder.resolve(file.getFileName()));
      }
    }
    Ran ran = run("measure", "--off-script", "--json", "--split", "held-out", folder);
    assertEquals(0, ran.code(), ran.err());
    assertEquals(number, ran.row(0).path("files").asInt());
    assertTrue(ran.row(0).path("accepted").asInt() <= 1, ran.out());
    assertTrue(ran.row(0).path("ignored").asInt() > 0, ran.out());
  }

  @ParameterizedTest
  @CsvSource({
    "measure demo-audio --snr 5, expected --noise beside --snr",
    "measure, 'expected a folder of recordings, or --reviewed'",
    "measure demo-audio --reviewed, 'expected no folder beside --reviewed, found demo-audio'",
    "measure demo-audio --split dev, 'expected train, held-out, all behind --split, found ''dev'''",
    "measure demo-audio --loud, not expected: '--loud'",
    "measure demo-audio --threads 0, 'expected at least 1 for --threads, found 0'",
    "measure demo-audio --pause NaN, 'expected 0 to 60 s for --pause, found NaN'",
  })
  void refusesAWrongCall(String call, String message) {
    Ran ran = run((Object[]) call.split(" "));
    assertEquals(2, ran.code());
    assertTrue(ran.err().contains(message.replace("''", "'")), ran.err());
    assertEquals("", ran.out());
  }

  @Test
  void refusesAFolderWithoutRecordings(@TempDir Path folder) {
    Ran none = run("measure", folder);
    assertEquals(1, none.code());
    assertTrue(none.err().contains("expected WAV files, found none in " + folder), none.err());
    Ran nowhere = run("measure", folder.resolve("x"));
    assertEquals(1, nowhere.code());
    assertTrue(nowhere.err().contains("expected a folder of recordings, found nothing at"));
  }

  @Test
  void tellsHowOftenReviewersFoundItRight(@TempDir Path data) throws IOException {
    RecordStore store =
        new RecordStore(data, Protocol.standard(), Clock.systemUTC(), QuestionWording::of);
    Ran none = run("measure", "--reviewed", "--data", data);
    assertEquals(0, none.code());
    assertEquals("no signed record is kept here", none.err().strip());
    try (OpenExam open = store.create(null, "0.1.0", null, null)) {
      for (Side side : Side.values()) {
        open.examination()
            .hear(
                new Heard(1, 2, "barlow negative", List.of(), Outcome.ACCEPTED, null),
                new Interpretation(
                    List.of(new Meaning.States(Finding.of("barlow", side, "negative"), false)),
                    List.of(),
                    open.examination().dialogue()));
      }
      Review review = open.examination().review("Dr Reed");
      review.reject(1, "not said");
      review.sign("registrar", Map.of(), Signer.NAME_ONLY);
    }
    Ran ran = run("measure", "--reviewed", "--data", data);
    assertEquals(0, ran.code(), ran.err());
    assertTrue(ran.out().matches("(?s).*  barlow +1 of 2   50% .*"), ran.out());
    JsonNode last = run("measure", "--reviewed", "--json", "--data", data).lines().get(2);
    assertEquals(1, last.at("/summary/records").asInt());
    assertEquals(1, last.at("/summary/accepted/right").asInt());
    assertEquals(2, last.at("/summary/accepted/of").asInt());
  }

  /**
   * The demonstration and at least 100 committed phrases of all regions, or a sample of both;
   * prints the table. The bounds are what was measured when they were written, less a clip or so.
   */
  @Test
  void hearsNoWorseThanTheBaseline(@TempDir Path folder) throws IOException {
    Ran ran =
        run(
            "measure",
            some(DEMO, 5, folder),
            some(CLIPS, 10, folder),
            "--baseline",
            TestExtent.isFull()
                ? "src/test/resources/tiptoe/measure/baseline.csv"
                : "src/test/resources/tiptoe/measure/baseline-sample.csv");
    System.out.println(ran.out());
    assertEquals(0, ran.code(), ran.err());
    assertTrue(
        ran.out()
            .matches("(?s).*\\nclips +clean +" + (TestExtent.isFull() ? "1" : "") + "\\d\\d .*"),
        ran.out());
  }

  /** A folder of the same name with every so many-th recording, or the folder itself. */
  private static Path some(Path all, int every, Path into) throws IOException {
    if (TestExtent.isFull()) {
      return all;
    }
    Path some = Files.createDirectory(into.resolve(all.getFileName()));
    try (Stream<Path> files = Files.list(all)) {
      List<Path> sounds = files.filter(f -> f.toString().endsWith(".wav")).sorted().toList();
      for (Path sound : TestExtent.some(sounds, every)) {
        String text = sound.getFileName().toString().replace(".wav", ".txt");
        Files.copy(sound, some.resolve(sound.getFileName()));
        Files.copy(sound.resolveSibling(text), some.resolve(text));
      }
    }
    return some;
  }
}
