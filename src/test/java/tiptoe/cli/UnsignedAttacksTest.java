package tiptoe.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import tiptoe.TestExtent;
import tiptoe.audio.Chunk;
import tiptoe.audio.Segment;
import tiptoe.audio.SegmentStore;
import tiptoe.exam.Bedside;
import tiptoe.exam.journal.ExamFolder;
import tiptoe.exam.journal.OpenExam;
import tiptoe.exam.journal.RecordStore;
import tiptoe.finding.Command;
import tiptoe.protocol.Protocol;
import tiptoe.wording.QuestionWording;

/**
 * The sound of a record that nobody has signed yet is altered: no command takes the record for what
 * was recorded, and nobody signs it without having been told and having said why.
 */
@Tag("process")
class UnsignedAttacksTest {
  private static final int RATE = 16_000;

  @TempDir static Path folder;
  private static Path secret;
  private static final Map<Boolean, ExamFolder> ORIGINALS = new HashMap<>();
  private static int made;

  private final ByteArrayOutputStream out = new ByteArrayOutputStream();
  private final ByteArrayOutputStream err = new ByteArrayOutputStream();

  private interface Alteration {
    void alter(ExamFolder exam) throws IOException;
  }

  private record Attack(String name, Alteration alteration) {
    @Override
    public String toString() {
      return name;
    }
  }

  private static List<Attack> onSound() {
    return List.of(
        new Attack("the first segment deleted", exam -> Files.delete(segment(exam, 0))),
        new Attack("the last segment deleted", exam -> Files.delete(segment(exam, 2))),
        new Attack("all segments deleted", UnsignedAttacksTest::deleteAll),
        new Attack("a bit of the first changed", exam -> flip(segment(exam, 0), 5000)),
        new Attack("a bit of the last changed", exam -> flip(segment(exam, 2), 60)),
        new Attack("the end of the last cut off", exam -> cut(segment(exam, 2), 9000)),
        new Attack("two swapped", UnsignedAttacksTest::swapTwo),
        new Attack("one added at the end", exam -> copy(exam, "segment-000004-0000400000")),
        new Attack("one added between", exam -> copy(exam, "segment-000002-0000170000")),
        new Attack("one renamed to another place", UnsignedAttacksTest::rename),
        new Attack("one of another record", UnsignedAttacksTest::ofAnother),
        new Attack("one behind a link", UnsignedAttacksTest::linked),
        new Attack("one of the other kind added", UnsignedAttacksTest::otherKind));
  }

  private static List<Attack> onEncrypted() {
    return List.of(
        new Attack("two pieces swapped", UnsignedAttacksTest::swapPieces),
        new Attack("a piece doubled", UnsignedAttacksTest::doublePiece),
        new Attack("a piece of another segment", UnsignedAttacksTest::foreignPiece),
        new Attack("the count of a piece changed", exam -> flip(segment(exam, 1), 0)));
  }

  static Stream<Arguments> attacks() {
    List<Arguments> all = new ArrayList<>();
    onSound().forEach(attack -> all.add(Arguments.of(false, attack)));
    onSound().forEach(attack -> all.add(Arguments.of(true, attack)));
    onEncrypted().forEach(attack -> all.add(Arguments.of(true, attack)));
    return TestExtent.some(all, 15, 2).stream();
  }

  private static Path segment(ExamFolder exam, int number) throws IOException {
    return SegmentStore.segments(exam.audio()).get(number).file();
  }

  private static void deleteAll(ExamFolder exam) throws IOException {
    SegmentStore.erase(exam.audio());
  }

  private static void flip(Path file, int at) throws IOException {
    byte[] bytes = Files.readAllBytes(file);
    bytes[at] ^= 1;
    Files.write(file, bytes);
  }

  private static void cut(Path file, int bytes) throws IOException {
    byte[] all = Files.readAllBytes(file);
    Files.write(file, Arrays.copyOf(all, all.length - bytes));
  }

  private static void swapTwo(ExamFolder exam) throws IOException {
    byte[] first = Files.readAllBytes(segment(exam, 0));
    byte[] second = Files.readAllBytes(segment(exam, 1));
    Files.write(segment(exam, 0), second);
    Files.write(segment(exam, 1), first);
  }

  private static String kind(ExamFolder exam) throws IOException {
    String name = segment(exam, 0).getFileName().toString();
    return name.substring(name.lastIndexOf('.'));
  }

  private static void copy(ExamFolder exam, String name) throws IOException {
    Files.copy(segment(exam, 0), exam.audio().resolve(name + kind(exam)));
  }

  private static void rename(ExamFolder exam) throws IOException {
    Files.move(segment(exam, 2), exam.audio().resolve("segment-000003-0000500000" + kind(exam)));
  }

  private static void ofAnother(ExamFolder exam) throws IOException {
    Path other = segment(recordedAnew(kind(exam).equals(".sealed")), 1);
    Files.copy(other, segment(exam, 1), StandardCopyOption.REPLACE_EXISTING);
  }

  private static void linked(ExamFolder exam) throws IOException {
    Path file = segment(exam, 0);
    Path away = Files.move(file, exam.path().resolve("away"));
    Files.createSymbolicLink(file, away);
  }

  private static void otherKind(ExamFolder exam) throws IOException {
    String other = kind(exam).equals(".wav") ? ".sealed" : ".wav";
    Files.write(exam.audio().resolve("segment-000004-0000400000" + other), new byte[5000]);
  }

  /** A whole piece of a sealed segment: 8 bytes, nonce, 4,000 samples and a tag. */
  private static final int PIECE = 8 + 12 + 8000 + 16;

  private static void swapPieces(ExamFolder exam) throws IOException {
    byte[] bytes = Files.readAllBytes(segment(exam, 0));
    byte[] first = Arrays.copyOf(bytes, PIECE);
    System.arraycopy(bytes, PIECE, bytes, 0, PIECE);
    System.arraycopy(first, 0, bytes, PIECE, PIECE);
    Files.write(segment(exam, 0), bytes);
  }

  private static void doublePiece(ExamFolder exam) throws IOException {
    byte[] bytes = Files.readAllBytes(segment(exam, 0));
    System.arraycopy(bytes, 0, bytes, PIECE, PIECE);
    Files.write(segment(exam, 0), bytes);
  }

  private static void foreignPiece(ExamFolder exam) throws IOException {
    byte[] bytes = Files.readAllBytes(segment(exam, 0));
    System.arraycopy(Files.readAllBytes(segment(exam, 1)), 0, bytes, 0, PIECE);
    Files.write(segment(exam, 0), bytes);
  }

  /** A copy of a record that was made once. */
  private static ExamFolder recorded(boolean encrypted) throws IOException {
    ExamFolder original = ORIGINALS.get(encrypted);
    if (original == null) {
      original = recordedAnew(encrypted);
      ORIGINALS.put(encrypted, original);
    }
    Path from = original.path().getParent().getParent();
    Path to = folder.resolve("data" + made++);
    try (Stream<Path> all = Files.walk(from)) {
      for (Path path : (Iterable<Path>) all::iterator) {
        Files.copy(path, to.resolve(from.relativize(path).toString()));
      }
    }
    return new ExamFolder(to.resolve("examinations").resolve(original.name()));
  }

  private static ExamFolder recordedAnew(boolean encrypted) throws IOException {
    Path data = folder.resolve("data" + made++);
    secret = Files.writeString(folder.resolve("secret"), "four quiet boats\n");
    Bedside.SetClock clock = new Bedside.SetClock();
    RecordStore store = new RecordStore(data, Protocol.standard(), clock, QuestionWording::of);
    char[] passphrase = encrypted ? "four quiet boats".toCharArray() : null;
    try (OpenExam open = store.create("Baby Rowan", "0.1.0", null, passphrase)) {
      Bedside bed = new Bedside(clock, open.examination());
      try (SegmentStore sound = open.openSound()) {
        short[] noise = new short[24 * RATE];
        Random random = new Random(made);
        for (int i = 0; i < noise.length; i++) {
          noise[i] = (short) random.nextInt();
        }
        sound.append(new Chunk(0, 0, noise));
        bed.fact("age", "18");
        bed.find("barlow.left negative");
      }
      bed.command(Command.END_EXAM);
      bed.command(Command.YES);
      return open.folder();
    }
  }

  private int run(ExamFolder exam, String... args) {
    out.reset();
    err.reset();
    List<String> all = new ArrayList<>(List.of(args));
    all.addAll(List.of(exam.name(), "--passphrase-file", secret.toString()));
    all.addAll(List.of("--data", exam.path().getParent().getParent().toString()));
    return Tiptoe.run(
        new PrintStream(out, true, StandardCharsets.UTF_8),
        new PrintStream(err, true, StandardCharsets.UTF_8),
        all.toArray(String[]::new));
  }

  private int sign(ExamFolder exam, String... more) {
    List<String> args = new ArrayList<>(List.of("sign", "--as", "Dr Reed", "--role", "registrar"));
    args.addAll(List.of("--yes", "--keep-audio", "always"));
    args.addAll(List.of(more));
    return run(exam, args.toArray(String[]::new));
  }

  private String reports(ExamFolder exam) {
    return exam.path().getParent().getParent().resolve("reports").toString();
  }

  @ParameterizedTest(name = "encrypted {0}: {1}")
  @MethodSource("attacks")
  void noCommandTakesItForWhatWasRecorded(boolean encrypted, Attack attack) throws IOException {
    ExamFolder exam = recorded(encrypted);
    attack.alteration().alter(exam);
    if (encrypted) {
      // Each command would derive the key anew, and all pass the same gate.
      assertEquals(1, run(exam, "record"), out.toString());
      assertTrue(err.toString().contains(" is not as it was written: sound"), err.toString());
      return;
    }
    List<String[]> calls =
        List.of(
            new String[] {"report", "--as", "txt", "--to", reports(exam)},
            new String[] {"send", "--draft", "--to", "http://127.0.0.1:9/"},
            new String[] {"review", "--plain"},
            new String[] {"record"},
            new String[] {"assess"});
    for (String[] call : calls) {
      assertEquals(1, run(exam, call), call[0] + out + err);
      assertTrue(err.toString().contains(" is not as it was written: sound"), call[0] + err);
    }
    assertEquals(1, run(exam, "record", "--verify"));
    assertFalse(out.toString().contains("each as it was written"), out.toString());
    assertTrue(out.toString().startsWith("sound "), out.toString());
    assertEquals(1, sign(exam));
    assertTrue(err.toString().startsWith("not as it was recorded: sound "), err.toString());
    assertEquals(
        0, run(exam, "report", "--altered", "--as", "txt", "--to", reports(exam)), err.toString());
    String report = Files.readString(Path.of(reports(exam), exam.name() + ".txt"));
    assertTrue(report.startsWith("NOT VALID"), report);
  }

  @Test
  void withoutThemItIsWhole() throws IOException {
    for (boolean encrypted : List.of(false, true)) {
      ExamFolder exam = recorded(encrypted);
      assertEquals(0, run(exam, "record", "--verify"), out.toString());
      assertEquals(0, run(exam, "report", "--as", "txt", "--to", reports(exam)), err.toString());
      assertEquals(0, sign(exam), err.toString());
      assertEquals(0, run(exam, "record", "--verify"), out.toString());
    }
  }

  /** Sound that a disk lost does not keep anybody from signing, but it stays told. */
  @Test
  void whoSignsInSpiteOfItSaysWhyAndTheLossIsToldForGood() throws IOException {
    ExamFolder exam = recorded(false);
    String lost = segment(exam, 1).getFileName().toString();
    Files.delete(segment(exam, 1));
    assertEquals(0, sign(exam, "--despite", "the disk failed"), err.toString());
    assertEquals(0, run(exam, "report", "--as", "txt", "--to", reports(exam)), err.toString());
    String report =
        Files.readString(Path.of(reports(exam), exam.name() + ".txt")).replaceAll("\\s+", " ");
    assertTrue(report.contains("signed while not settled: the disk failed (sound " + lost), report);
    assertEquals(1, run(exam, "record", "--verify"));
    assertTrue(
        out.toString().contains("sound " + lost + " was lost before it was signed"),
        out.toString());
  }

  /** A segment that a crash left is noted when the record is opened again, and then held. */
  @Test
  void whatACrashLeftIsNotedWhenTheRecordIsOpenedAgainAndHeldFromThenOn() throws IOException {
    ExamFolder exam = recorded(false);
    Path data = exam.path().getParent().getParent();
    Files.delete(data.resolve("heads.log"));
    copy(exam, "segment-000004-0000400000");
    assertEquals(1, run(exam, "record", "--verify"));
    assertEquals(
        "sound segment-000004-0000400000.wav was unfinished, and may be changed\n", out.toString());
    assertEquals(0, run(exam, "report", "--as", "txt", "--to", reports(exam)), err.toString());
    RecordStore store =
        new RecordStore(data, Protocol.standard(), new Bedside.SetClock(), QuestionWording::of);
    store.open(exam, null).close();
    assertEquals(0, run(exam, "record", "--verify"), out.toString());
    assertEquals(0, run(exam, "record"), err.toString());
    assertTrue(
        out.toString()
            .contains("segment-000004-0000400000.wav was unfinished when the examination was"),
        out.toString());
    flip(segment(exam, 3), 1000);
    assertEquals(1, run(exam, "record"));
    assertNotEquals("", err.toString());
    for (Segment segment : SegmentStore.segments(exam.audio())) {
      assertTrue(
          Files.readString(exam.journal()).contains(segment.file().getFileName().toString()));
    }
  }
}
