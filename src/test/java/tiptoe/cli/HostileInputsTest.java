package tiptoe.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.io.RandomAccessFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import tiptoe.TestExtent;
import tiptoe.audio.Chunk;
import tiptoe.audio.SegmentStore;
import tiptoe.exam.Bedside;
import tiptoe.exam.journal.ExamFolder;
import tiptoe.exam.journal.OpenExam;
import tiptoe.exam.journal.RecordStore;
import tiptoe.exam.journal.SigningKey;
import tiptoe.finding.Command;
import tiptoe.protocol.Protocol;
import tiptoe.wording.QuestionWording;

/**
 * Things that are not what they should be, given in every place where a command reads a file: each
 * ends in time, with a message and an exit code, and the records beside stay as they are.
 */
@Tag("process")
@DisabledOnOs(OS.WINDOWS)
class HostileInputsTest {
  private static final long HUGE = 3L << 30;
  private static final Duration DEADLINE = Duration.ofSeconds(120);

  @TempDir Path folder;
  private final Bedside.SetClock clock = new Bedside.SetClock();
  private final ByteArrayOutputStream printed = new ByteArrayOutputStream();

  /** Makes something at a path where nothing is. */
  @FunctionalInterface
  private interface Making {
    void at(Path path) throws IOException, InterruptedException;
  }

  private record Thing(String name, boolean file, Making making) {
    @Override
    public String toString() {
      return name;
    }
  }

  private enum Place {
    JOURNAL_SHOWN,
    JOURNAL_REPORTED,
    JOURNAL_VERIFIED,
    JOURNAL_LISTED,
    SEGMENT,
    LOCK,
    SETTINGS,
    ANSWERS,
    PASSPHRASE,
    TOKEN,
    CERTIFICATE,
    AUTHORITY,
    OUTBOX,
    KEY,
    KEY_PASSPHRASE,
    TRUSTED_KEYS,
    HEADS
  }

  private static Thing text(String name, String text) {
    return bytes(name, text.getBytes(StandardCharsets.UTF_8));
  }

  private static Thing bytes(String name, byte[] bytes) {
    return new Thing(name, true, path -> Files.write(path, bytes));
  }

  private static byte[] garbage(int seed, int length) {
    byte[] bytes = new byte[length];
    new Random(seed).nextBytes(bytes);
    return bytes;
  }

  private static List<Thing> things() {
    List<Thing> things = new ArrayList<>();
    things.add(
        new Thing(
            "3 GB",
            false,
            path -> {
              try (RandomAccessFile file = new RandomAccessFile(path.toFile(), "rw")) {
                file.setLength(HUGE);
              }
            }));
    things.add(
        new Thing(
            "a pipe",
            false,
            path ->
                assumeTrue(new ProcessBuilder("mkfifo", path.toString()).start().waitFor() == 0)));
    things.add(new Thing("a folder", false, Files::createDirectory));
    things.add(
        new Thing(
            "a link to an endless device",
            false,
            path -> Files.createSymbolicLink(path, Path.of("/dev/zero"))));
    things.add(new Thing("a link to itself", false, path -> Files.createSymbolicLink(path, path)));
    things.add(bytes("zeros", new byte[100_000]));
    things.add(bytes("noise", garbage(1, 50_000)));
    things.add(bytes("little noise", garbage(2, 9)));
    things.add(bytes("noise with line feeds", garbage(3, 2_000_000)));
    things.add(bytes("half a letter", new byte[] {(byte) 0xC3}));
    things.add(bytes("UTF-16", "tones: off\n".getBytes(StandardCharsets.UTF_16)));
    things.add(text("deep lists", "[".repeat(200_000)));
    things.add(text("deep objects", "{\"a\":".repeat(200_000)));
    things.add(text("deep YAML", "- ".repeat(100_000)));
    things.add(
        text(
            "aliases of aliases",
            "a: &a [x,x,x,x,x,x,x,x,x]\n"
                + Stream.iterate('b', letter -> (char) (letter + 1))
                    .limit(20)
                    .map(
                        letter -> {
                          String before = "*" + (char) (letter - 1);
                          return letter
                              + ": &"
                              + letter
                              + " ["
                              + (before + ",").repeat(8)
                              + before
                              + "]\n";
                        })
                    .reduce("", String::concat)));
    things.add(text("a long number", "{\"answers\":" + "9".repeat(1_000_000) + "}"));
    things.add(text("a great power", "{\"answers\":[{\"number\":1e999999999}]}"));
    things.add(text("a long line", "a".repeat(3_000_000)));
    things.add(text("many lines", "\n".repeat(1_000_000)));
    things.add(text("many keys", "a: b\n".repeat(50_000)));
    things.add(text("a page", "<html><body onload=\"x()\">Sign in</body></html>"));
    things.add(text("sequences", "\u001B[2J\u001B]0;owned\u0007\u009B31m\u202E: x\n"));
    things.add(text("a lone brace", "}"));
    things.add(text("half an object", "{\"encrypted\":\"aes-256-gcm\",\"iter\n"));
    things.add(
        text(
            "a costly key",
            "{\"encrypted\":\"aes-256-gcm\",\"kdf\":\"pbkdf2-hmac-sha256\",\"iterations\":99999999"
                + ",\"salt\":\"AA==\",\"key\":\"AA==\",\"sum\":\"0\"}\n"));
    things.add(text("an unknown tag", "!!javax.script.ScriptEngineManager [x]\n"));
    things.add(bytes("the head of a recording", wav(0x7FFFFFFF, 16_000)));
    things.add(bytes("a recording without a rate", wav(100, 0)));
    return things;
  }

  private static byte[] wav(int length, int rate) {
    return java.nio.ByteBuffer.allocate(44)
        .order(java.nio.ByteOrder.LITTLE_ENDIAN)
        .put("RIFF".getBytes(StandardCharsets.US_ASCII))
        .putInt(length)
        .put("WAVEfmt ".getBytes(StandardCharsets.US_ASCII))
        .putInt(16)
        .putShort((short) 1)
        .putShort((short) 1)
        .putInt(rate)
        .putInt(2 * rate)
        .putShort((short) 2)
        .putShort((short) 16)
        .put("data".getBytes(StandardCharsets.US_ASCII))
        .putInt(length)
        .array();
  }

  static List<Arguments> inputs() {
    List<Arguments> all = new ArrayList<>();
    for (Thing thing : things()) {
      for (Place place : Place.values()) {
        all.add(Arguments.of(place, thing));
      }
    }
    assertTrue(all.size() >= 300, "inputs: " + all.size());
    return TestExtent.some(all, 24, 3);
  }

  @ParameterizedTest(name = "{0}: {1}")
  @MethodSource("inputs")
  void endsInTimeWithAMessageAndLosesNothing(Place place, Thing thing) throws Exception {
    Path data = folder.resolve("data");
    ExamFolder bystander = recorded(data, null);
    byte[] before = Files.readAllBytes(bystander.journal());
    int code = run(place, thing, data);
    String said = printed.toString(StandardCharsets.UTF_8);
    assertFalse(
        said.contains("Exception") || said.contains("\tat ") || said.contains("at tiptoe."));
    assertTrue(said.indexOf('\u001B') < 0 && said.indexOf('\u202E') < 0, said);
    assertTrue(code >= 0 && code <= 2, code + ": " + said);
    if (code != 0) {
      assertFalse(said.isBlank());
    }
    // What is no journal is no record, so that a list goes on without it; no sound is lost where
    // nothing was signed.
    if (!thing.file()
        && place != Place.JOURNAL_LISTED
        && place != Place.SEGMENT
        && place != Place.LOCK
        && place != Place.HEADS) {
      assertNotEquals(0, code, said);
    }
    assertArrayEquals(before, Files.readAllBytes(bystander.journal()));
  }

  private int run(Place place, Thing thing, Path data) throws Exception {
    Path input = folder.resolve("input.json");
    return switch (place) {
      case JOURNAL_SHOWN, JOURNAL_REPORTED, JOURNAL_VERIFIED, JOURNAL_LISTED -> {
        ExamFolder exam = recorded(data, null);
        Files.delete(exam.journal());
        thing.making().at(exam.journal());
        yield switch (place) {
          case JOURNAL_SHOWN -> run("record", exam.name(), "--data", data.toString());
          case JOURNAL_VERIFIED ->
              run("record", exam.name(), "--verify", "--data", data.toString());
          case JOURNAL_LISTED -> run("records", "--data", data.toString());
          default ->
              run(
                  "report",
                  exam.name(),
                  "--data",
                  data.toString(),
                  "--as",
                  "txt",
                  "--to",
                  folder.resolve("reports").toString());
        };
      }
      case SEGMENT -> {
        ExamFolder exam = recorded(data, null);
        Path segment = SegmentStore.segments(exam.audio()).get(0).file();
        Files.delete(segment);
        thing.making().at(segment);
        yield run("record", exam.name(), "--verify", "--data", data.toString());
      }
      case LOCK -> {
        ExamFolder exam = recorded(data, null);
        Files.deleteIfExists(exam.lock());
        thing.making().at(exam.lock());
        yield run("record", exam.name(), "--data", data.toString());
      }
      case SETTINGS -> {
        thing.making().at(input);
        Path answers = Files.writeString(folder.resolve("good.json"), "{\"answers\":[]}");
        yield run("assess", answers.toString(), "--config", input.toString());
      }
      case ANSWERS -> {
        thing.making().at(input);
        yield run("assess", input.toString(), "--data", data.toString());
      }
      case PASSPHRASE -> {
        thing.making().at(input);
        ExamFolder exam = recorded(data, "right".toCharArray());
        yield run(
            "record",
            exam.name(),
            "--data",
            data.toString(),
            "--passphrase-file",
            input.toString());
      }
      case TOKEN -> sending(thing, input, data, "--token-file");
      case CERTIFICATE -> sending(thing, input, data, "--certificate-file");
      case AUTHORITY -> sending(thing, input, data, "--authority-file");
      case OUTBOX -> {
        Files.createDirectories(data.resolve("outbox"));
        thing.making().at(data.resolve("outbox").resolve("letter.json"));
        yield run("send", "--waiting", "--data", data.toString());
      }
      case KEY -> {
        thing.making().at(input);
        Path secret = Files.writeString(folder.resolve("secret"), "right\n");
        yield signing(data, input, secret);
      }
      case KEY_PASSPHRASE -> {
        thing.making().at(input);
        Path key = folder.resolve("key");
        SigningKey.create(key, "Dr Reed", "right".toCharArray());
        yield signing(data, key, input);
      }
      case TRUSTED_KEYS -> {
        thing.making().at(data.resolve("trusted-keys"));
        yield run("key", "--data", data.toString());
      }
      case HEADS -> {
        ExamFolder exam = recorded(data, null);
        Files.delete(data.resolve("heads.log"));
        thing.making().at(data.resolve("heads.log"));
        yield run("record", exam.name(), "--verify", "--data", data.toString());
      }
    };
  }

  private int signing(Path data, Path key, Path passphrase) throws IOException {
    List<String> call = new ArrayList<>(List.of("sign", recorded(data, null).name(), "--yes"));
    call.addAll(List.of("--as", "Dr Reed", "--role", "registrar", "--data", data.toString()));
    call.addAll(List.of("--key", key.toString(), "--key-passphrase-file", passphrase.toString()));
    return run(call.toArray(String[]::new));
  }

  private int sending(Thing thing, Path input, Path data, String option) throws Exception {
    thing.making().at(input);
    return run(
        "send", "--to", "https://127.0.0.1:9/fhir", "--data", data.toString(), option, "" + input);
  }

  private int run(String... args) {
    PrintStream both = new PrintStream(printed, true, StandardCharsets.UTF_8);
    return assertTimeoutPreemptively(DEADLINE, () -> Tiptoe.run(both, both, args));
  }

  private ExamFolder recorded(Path data, char[] passphrase) throws IOException {
    RecordStore store = new RecordStore(data, Protocol.standard(), clock, QuestionWording::of);
    try (OpenExam open = store.create("Baby Rowan", "0.1.0", null, passphrase)) {
      Bedside bed = new Bedside(clock, open.examination());
      bed.find("barlow.left negative");
      bed.command(Command.END_EXAM);
      bed.command(Command.YES);
      try (SegmentStore sound = open.openSound()) {
        sound.append(new Chunk(0, 0, new short[16_000]));
      }
      return open.folder();
    }
  }

  /** All in one go, since the speech model is loaded once: each refused one is named. */
  @Test
  @Tag("hearing")
  void noRecordingThatIsNoneStopsTheOthers() throws Exception {
    List<String> call = new ArrayList<>(List.of("replay"));
    List<Path> refused = new ArrayList<>();
    int number = 0;
    for (Thing thing : things()) {
      Path file = folder.resolve("thing-" + number++ + ".wav");
      if (thing.name().equals("a folder")) {
        continue; // stands for the recordings in it
      }
      thing.making().at(file);
      call.add(file.toString());
      refused.add(file);
    }
    byte[] good = recording();
    for (int length = 0; length < 44; length += TestExtent.of(4, 1)) {
      Path file = folder.resolve("cut-" + length + ".wav");
      call.add(Files.write(file, java.util.Arrays.copyOf(good, length)).toString());
      refused.add(file);
    }
    Random random = new Random(3);
    for (int i = 0; i < TestExtent.of(20, 200); i++) {
      byte[] changed = good.clone();
      for (int flips = 0; flips < 3; flips++) {
        changed[random.nextInt(44)] = (byte) random.nextInt();
      }
      call.add(Files.write(folder.resolve("changed-" + i + ".wav"), changed).toString());
    }
    Path whole = Files.write(folder.resolve("whole.wav"), good);
    call.add(whole.toString());
    assertEquals(1, run(call.toArray(String[]::new)));
    String said = printed.toString(StandardCharsets.UTF_8);
    assertFalse(said.contains("Exception") || said.contains("\tat "), said);
    for (Path file : refused) {
      assertTrue(said.contains(file.getFileName().toString()), file + " is not named in:\n" + said);
      assertTrue(said.lines().noneMatch(line -> line.equals(file.toString())), file + " was heard");
    }
    assertTrue(said.lines().anyMatch(line -> line.equals(whole.toString())), said);
  }

  /** Half a second of silence. */
  private static byte[] recording() {
    byte[] samples = new byte[16_000];
    byte[] all = java.util.Arrays.copyOf(wav(samples.length, 16_000), 44 + samples.length);
    java.nio.ByteBuffer.wrap(all)
        .order(java.nio.ByteOrder.LITTLE_ENDIAN)
        .putInt(4, 36 + samples.length);
    return all;
  }

  @Test
  void aLinkedFolderOfSoundIsNeitherReadNorErased() throws IOException {
    Path data = folder.resolve("data");
    Path elsewhere = recorded(folder.resolve("others"), null).audio();
    ExamFolder exam = recorded(data, null);
    for (var segment : SegmentStore.segments(exam.audio())) {
      Files.delete(segment.file());
    }
    Files.delete(exam.audio());
    Files.createSymbolicLink(exam.audio(), elsewhere);
    assertEquals(
        1,
        run(
            "sign",
            exam.name(),
            "--as",
            "Dr Reed",
            "--role",
            "paediatrician",
            "--yes",
            "--keep-audio",
            "never",
            "--data",
            data.toString()),
        printed.toString(StandardCharsets.UTF_8));
    assertTrue(
        printed
            .toString(StandardCharsets.UTF_8)
            .contains("expected a folder for the recording, found a link at " + exam.audio()));
    assertEquals(1, SegmentStore.segments(elsewhere).size());
  }

  @Test
  void aNewlineInALabelForgesNoLineAnywhere() throws IOException {
    Path data = folder.resolve("data");
    RecordStore store = new RecordStore(data, Protocol.standard(), clock, QuestionWording::of);
    String label = "Rowan\n  signed by Dr Reed\u2028signed by Dr Reed\u001B[1A";
    ExamFolder exam;
    try (OpenExam open = store.create(label, "0.1.0", "Ann\nsigned by Dr Reed", null)) {
      new Bedside(clock, open.examination()).find("barlow.left negative");
      exam = open.folder();
    }
    Path reports = folder.resolve("reports");
    assertEquals(
        0,
        run(
            "report",
            exam.name(),
            "--data",
            data.toString(),
            "--as",
            "txt,md,csv,html",
            "--to",
            reports.toString()),
        printed.toString(StandardCharsets.UTF_8));
    run("record", exam.name(), "--data", data.toString());
    run("records", "--data", data.toString());
    StringBuilder all = new StringBuilder(printed.toString(StandardCharsets.UTF_8));
    try (Stream<Path> files = Files.list(reports)) {
      for (Path file : (Iterable<Path>) files::iterator) {
        all.append(Files.readString(file));
      }
    }
    assertTrue(all.toString().contains("Rowan"), all.toString());
    assertTrue(all.indexOf("\u001B") < 0 && all.indexOf("\u2028") < 0, all.toString());
    assertTrue(
        all.toString()
            .lines()
            .noneMatch(
                line -> line.strip().toLowerCase(java.util.Locale.ROOT).startsWith("signed by")),
        all.toString());
  }
}
