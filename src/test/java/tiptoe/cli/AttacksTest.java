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
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.function.Function;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import tiptoe.TestExtent;
import tiptoe.audio.Chunk;
import tiptoe.audio.SegmentStore;
import tiptoe.exam.Bedside;
import tiptoe.exam.Entry;
import tiptoe.exam.Event;
import tiptoe.exam.journal.Chain;
import tiptoe.exam.journal.EventLines;
import tiptoe.exam.journal.ExamFolder;
import tiptoe.exam.journal.KeepAudio;
import tiptoe.exam.journal.OpenExam;
import tiptoe.exam.journal.RecordStore;
import tiptoe.exam.journal.SigningKey;
import tiptoe.finding.Command;
import tiptoe.protocol.Protocol;
import tiptoe.wording.QuestionWording;

/**
 * A signed record is altered by somebody who knows the format, keeps the chain where that can be
 * kept, and has no key: no command takes it for what it was.
 */
@Tag("process")
class AttacksTest {
  @TempDir static Path folder;
  private static SigningKey key;
  private static int made;

  private final ByteArrayOutputStream out = new ByteArrayOutputStream();
  private final ByteArrayOutputStream err = new ByteArrayOutputStream();

  /** What is altered. */
  private interface Alteration {
    void alter(ExamFolder exam) throws IOException;
  }

  private record Attack(String name, Alteration alteration) {
    @Override
    public String toString() {
      return name;
    }
  }

  static List<Attack> someAttacks() {
    return TestExtent.some(attacks().toList(), 5);
  }

  static Stream<Attack> attacks() {
    List<Attack> all = new ArrayList<>();
    for (String[] swap :
        new String[][] {
          {"\"positive\"", "\"negative\""},
          {"Dr Reed", "Dr Rood"},
          {"paediatrician", "paediatricians"},
          {"Baby Rowan", "Baby Robin"},
          {"\"correction\":false", "\"correction\":true"},
          {"\"prev\":\"0", "\"prev\":\"1"},
        }) {
      all.add(new Attack("text " + swap[0], exam -> swap(exam, swap[0], swap[1])));
    }
    all.add(new Attack("first line removed", exam -> lines(exam, list -> list.remove(0))));
    all.add(new Attack("fifth line removed", exam -> lines(exam, list -> list.remove(4))));
    all.add(new Attack("signature removed", exam -> lines(exam, list -> last(list))));
    all.add(new Attack("line doubled", exam -> lines(exam, list -> list.add(3, list.get(2)))));
    all.add(new Attack("lines swapped", exam -> lines(exam, AttacksTest::swapTwo)));
    all.add(new Attack("signature doubled", exam -> lines(exam, AttacksTest::lastAgain)));
    all.add(new Attack("emptied", exam -> Files.writeString(exam.journal(), "")));
    all.add(new Attack("cut in its last line", exam -> cut(exam, 30)));
    all.add(new Attack("last line feed removed", exam -> cut(exam, 1)));
    all.add(new Attack("journal of another", AttacksTest::another));
    List<Event> behind =
        List.of(
            new Event.StatementRejected(1, "wrong", "Dr Reed"),
            new Event.Signed("Dr Rood", "registrar", Map.of(), Bedside.START, null, null),
            new Event.Signed("Dr Rood", "registrar", Map.of(), null, null, null),
            new Event.ContextStated("age", "2", null, "Dr Reed"),
            new Event.ExaminationOpened("other", null, "1", "1", null, null),
            new Event.ExaminationContinued("1", null),
            new Event.Paused(null),
            new Event.Resumed(null),
            new Event.EndRefused(null),
            new Event.Ended(List.of(), null),
            new Event.AudioGap(1, 2, "none"),
            new Event.RemarkStarted(1, null),
            new Event.RemarkMade(9, "all well", 0, 0, "Dr Reed"),
            new Event.UtteranceReviewed(1, false, "Dr Reed"),
            new Event.Undone(List.of(3L), "Dr Reed"),
            new Event.Redone(List.of(3L), "Dr Reed"),
            new Event.AudioRemoved(List.of(), "none"),
            new Event.AudioRemoved(List.of("segment-000001-0000000000.wav"), "half of it"),
            new Event.SegmentKept("segment-000009-0000000000.wav", 1, "00", null),
            new Event.KeepAudioChosen("never"),
            new Event.TailSetAside(3, "signed by Dr Rood"),
            new Event.ItemTicked("hip-unstable", "refer", true, null, "Dr Reed"),
            new Event.QuestionDropped(1, "none", "Dr Reed"));
    behind.forEach(
        event ->
            all.add(
                new Attack(
                    "appended " + event.getClass().getSimpleName() + " " + all.size(),
                    exam -> append(exam, List.of(event)))));
    all.add(
        new Attack(
            "in an addendum, the examination goes on",
            exam ->
                append(
                    exam,
                    List.of(
                        new Event.AddendumStarted("more", "Dr Reed"),
                        new Event.ExaminationContinued("1", null)))));
    all.add(
        new Attack(
            "in an addendum, the signature is undone",
            exam ->
                append(
                    exam,
                    List.of(
                        new Event.AddendumStarted("more", "Dr Reed"),
                        new Event.Undone(List.of(1L, 2L, 3L), "Dr Reed")))));
    all.add(new Attack("chained anew: age", exam -> anew(exam, AttacksTest::younger)));
    all.add(
        new Attack(
            "chained anew: name",
            exam -> anew(exam, signed(old -> signed("Dr Rood", old.role(), old)))));
    all.add(
        new Attack(
            "chained anew: role",
            exam -> anew(exam, signed(old -> signed(old.name(), "chief", old)))));
    all.add(
        new Attack(
            "chained anew: time",
            exam ->
                anew(
                    exam,
                    signed(
                        old ->
                            new Event.Signed(
                                old.name(),
                                old.role(),
                                old.audio(),
                                old.time().plusSeconds(60),
                                old.key(),
                                old.signature())))));
    all.add(
        new Attack(
            "chained anew: key taken off",
            exam ->
                anew(
                    exam,
                    signed(
                        old ->
                            new Event.Signed(
                                old.name(), old.role(), old.audio(), old.time(), null, null)))));
    all.add(
        new Attack(
            "chained anew: sound taken off",
            exam ->
                anew(
                    exam,
                    signed(
                        old ->
                            new Event.Signed(
                                old.name(),
                                old.role(),
                                Map.of(),
                                old.time(),
                                old.key(),
                                old.signature())))));
    all.add(new Attack("sound deleted", exam -> Files.delete(segment(exam, 0))));
    all.add(new Attack("sound changed", exam -> flip(segment(exam, 1), 100)));
    all.add(new Attack("sound swapped", exam -> Files.write(segment(exam, 0), new byte[320_044])));
    all.add(
        new Attack(
            "sound added",
            exam ->
                Files.copy(
                    segment(exam, 0), exam.audio().resolve("segment-000007-0009000000.wav"))));
    all.add(new Attack("sound behind a link", AttacksTest::linked));
    return all.stream();
  }

  private static void swap(ExamFolder exam, String from, String to) throws IOException {
    String text = Files.readString(exam.journal());
    assertTrue(text.contains(from), from);
    Files.writeString(exam.journal(), text.replaceFirst(from, to));
  }

  private static void lines(ExamFolder exam, java.util.function.Consumer<List<String>> change)
      throws IOException {
    List<String> lines = new ArrayList<>(Files.readAllLines(exam.journal()));
    change.accept(lines);
    Files.writeString(exam.journal(), String.join("\n", lines) + "\n");
  }

  private static void last(List<String> lines) {
    lines.remove(lines.size() - 1);
  }

  private static void lastAgain(List<String> lines) {
    lines.add(lines.get(lines.size() - 1));
  }

  private static void swapTwo(List<String> lines) {
    Collections.swap(lines, 3, 4);
  }

  private static void cut(ExamFolder exam, int bytes) throws IOException {
    byte[] all = Files.readAllBytes(exam.journal());
    Files.write(exam.journal(), java.util.Arrays.copyOf(all, all.length - bytes));
  }

  private static void another(ExamFolder exam) throws IOException {
    Files.copy(
        recorded().journal(), exam.journal(), java.nio.file.StandardCopyOption.REPLACE_EXISTING);
  }

  private static void append(ExamFolder exam, List<Event> events) throws IOException {
    List<String> lines = Files.readAllLines(exam.journal());
    byte[] last = lines.get(lines.size() - 1).getBytes(StandardCharsets.UTF_8);
    Chain chain = Chain.after(lines.size(), last);
    StringBuilder more = new StringBuilder();
    for (Event event : events) {
      Chain.Line line = chain.next(EventLines.read(last).at(), event);
      chain.accept(line);
      more.append(new String(line.bytes(), StandardCharsets.UTF_8)).append('\n');
    }
    Files.writeString(exam.journal(), Files.readString(exam.journal()) + more);
  }

  private static void anew(ExamFolder exam, Function<Event, Event> change) throws IOException {
    Chain chain = Chain.start();
    StringBuilder all = new StringBuilder();
    for (String text : Files.readAllLines(exam.journal())) {
      Entry entry = EventLines.read(text.getBytes(StandardCharsets.UTF_8));
      Chain.Line line = chain.next(entry.at(), change.apply(entry.event()));
      chain.accept(line);
      all.append(new String(line.bytes(), StandardCharsets.UTF_8)).append('\n');
    }
    Files.writeString(exam.journal(), all.toString());
  }

  private static Event younger(Event event) {
    return event instanceof Event.ContextStated stated
        ? new Event.ContextStated(stated.fact(), "2", stated.utterance(), stated.author())
        : event;
  }

  private static Function<Event, Event> signed(Function<Event.Signed, Event> change) {
    return event -> event instanceof Event.Signed old ? change.apply(old) : event;
  }

  private static Event signed(String name, String role, Event.Signed old) {
    return new Event.Signed(name, role, old.audio(), old.time(), old.key(), old.signature());
  }

  private static Path segment(ExamFolder exam, int number) throws IOException {
    return SegmentStore.segments(exam.audio()).get(number).file();
  }

  private static void flip(Path file, int at) throws IOException {
    byte[] bytes = Files.readAllBytes(file);
    bytes[at] ^= 1;
    Files.write(file, bytes);
  }

  private static void linked(ExamFolder exam) throws IOException {
    Path away = Files.move(segment(exam, 0), exam.path().resolve("away"));
    Files.createSymbolicLink(exam.audio().resolve("segment-000001-0000000000.wav"), away);
  }

  private static ExamFolder recorded() throws IOException {
    Path data = folder.resolve("data" + made++);
    if (key == null) {
      key = SigningKey.create(folder.resolve("key"), "Dr Reed", "quiet boats".toCharArray());
    }
    Bedside.SetClock clock = new Bedside.SetClock();
    RecordStore store = new RecordStore(data, Protocol.standard(), clock, QuestionWording::of);
    try (OpenExam open = store.create("Baby Rowan", "0.1.0", null, null)) {
      Bedside bed = new Bedside(clock, open.examination());
      bed.fact("age", "18");
      bed.find("barlow.left positive");
      bed.command(Command.END_EXAM);
      bed.command(Command.YES);
      try (SegmentStore sound = open.openSound()) {
        sound.append(new Chunk(0, 0, new short[16 * 16_000]));
      }
      open.sign("Dr Reed", "paediatrician", key, KeepAudio.ALWAYS);
      return open.folder();
    }
  }

  private int run(ExamFolder exam, String... args) {
    out.reset();
    err.reset();
    List<String> all = new ArrayList<>(List.of(args));
    all.add(exam.name());
    all.addAll(List.of("--data", exam.path().getParent().getParent().toString()));
    return Tiptoe.run(
        new PrintStream(out, true, StandardCharsets.UTF_8),
        new PrintStream(err, true, StandardCharsets.UTF_8),
        all.toArray(String[]::new));
  }

  private void assertRefusedByAll(ExamFolder exam) throws IOException {
    String to = exam.path().getParent().getParent().resolve("reports").toString();
    List<String[]> calls =
        List.of(
            new String[] {"report", "--as", "txt", "--to", to},
            new String[] {"send", "--draft", "--to", "http://127.0.0.1:9/"},
            new String[] {"review", "--plain"},
            new String[] {"record"},
            new String[] {"assess"});
    for (String[] call : calls) {
      assertEquals(1, run(exam, call), call[0] + out + err);
      assertTrue(err.toString().contains(" is not as it was "), call[0] + err);
    }
    assertEquals(1, run(exam, "record", "--verify"));
    assertFalse(out.toString().contains("each as it was written"), out.toString());
    assertEquals(0, run(exam, "report", "--altered", "--as", "txt", "--to", to), err.toString());
    String report = Files.readString(Path.of(to, exam.name() + ".txt"));
    assertTrue(report.startsWith("NOT VALID"), report);
    assertFalse(report.contains("seal "), report);
  }

  @ParameterizedTest
  @MethodSource("someAttacks")
  void noCommandTakesItForWhatWasSigned(Attack attack) throws IOException {
    ExamFolder exam = recorded();
    attack.alteration().alter(exam);
    assertRefusedByAll(exam);
  }

  @Test
  void thereAreAtLeastFortyAndWithoutThemTheRecordIsWhole() throws IOException {
    assertTrue(attacks().count() >= 40, "" + attacks().count());
    ExamFolder exam = recorded();
    assertEquals(0, run(exam, "record", "--verify"), out.toString());
    assertTrue(out.toString().contains("signed by “Dr Reed”, “paediatrician”"), out.toString());
  }

  /** A bit of the journal or its sound is flipped; no report comes of it without a word. */
  @Test
  void noFlippedBitGoesUnmarked() throws IOException {
    ExamFolder exam = recorded();
    byte[] whole = Files.readAllBytes(exam.journal());
    Random random = new Random(7);
    String to = folder.resolve("flips").toString();
    for (int flip = 0; flip < TestExtent.of(40, 1000); flip++) {
      byte[] changed = whole.clone();
      int at = random.nextInt(whole.length);
      changed[at] ^= (byte) (1 << random.nextInt(8));
      Files.write(exam.journal(), changed);
      assertEquals(1, run(exam, "report", "--as", "txt", "--to", to), "byte " + at);
      assertTrue(err.toString().contains(" is not as it was "), "byte " + at + err);
    }
  }
}
