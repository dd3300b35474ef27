package tiptoe.exam.journal;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Base64;
import java.util.HexFormat;
import java.util.List;
import java.util.zip.CRC32;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tiptoe.audio.Chunk;
import tiptoe.audio.Segment;
import tiptoe.audio.SegmentStore;
import tiptoe.exam.Bedside;
import tiptoe.exam.Event;
import tiptoe.files.Sha256;
import tiptoe.protocol.Protocol;
import tiptoe.wording.QuestionWording;

class EncryptionTest {
  private static final char[] PASSPHRASE = "four quiet yellow boats".toCharArray();

  @TempDir Path data;
  private final Bedside.SetClock clock = new Bedside.SetClock();

  /** With little work for a passphrase, which is as much for each test. */
  private RecordStore store() {
    return new RecordStore(data, Protocol.standard(), clock, QuestionWording::of, 10);
  }

  private ExamFolder recorded() throws IOException {
    try (OpenExam open = store().create("Demo", "0.1.0", "Dr Reed", PASSPHRASE)) {
      new Bedside(clock, open.examination()).find("barlow.left positive");
      return open.folder();
    }
  }

  @Test
  void theJournalShowsNothingOfTheBabyAndReadsBackWithThePassphrase() throws IOException {
    ExamFolder folder = recorded();
    String text = Files.readString(folder.journal());
    assertFalse(text.contains("barlow") || text.contains("Demo") || text.contains("Reed"));
    assertTrue(store().isEncrypted(folder));
    StoredExam stored = store().read(folder, PASSPHRASE);
    assertEquals("positive", stored.record().answers("barlow").get(0).value());
    assertEquals(List.of(), stored.breaks());
    try (OpenExam open = store().open(folder, PASSPHRASE)) {
      new Bedside(clock, open.examination()).find("weight 3420 g");
    }
    assertEquals(2, store().read(folder, PASSPHRASE).record().answers().size());
  }

  @Test
  void theWorkFactorIsThatOfTheOwaspPasswordStorageCheatSheetOf2023() throws IOException {
    RecordStore usual = new RecordStore(data, Protocol.standard(), clock, QuestionWording::of);
    ExamFolder folder;
    try (OpenExam open = usual.create("Demo", "0.1.0", "Dr Reed", PASSPHRASE)) {
      new Bedside(clock, open.examination()).find("barlow.left positive");
      folder = open.folder();
    }
    String first = Files.readAllLines(folder.journal()).get(0);
    assertTrue(first.contains("\"kdf\":\"pbkdf2-hmac-sha256\",\"iterations\":600000"), first);
    assertEquals(
        "positive", usual.read(folder, PASSPHRASE).record().answers("barlow").get(0).value());
  }

  @Test
  void aMissingOrWrongPassphraseIsSaidToBeSo() throws IOException {
    ExamFolder folder = recorded();
    assertEquals(
        "the record is encrypted: its passphrase is needed",
        assertThrows(RecordProblem.class, () -> store().read(folder, null)).getMessage());
    assertEquals(
        "the passphrase is wrong",
        assertThrows(RecordProblem.class, () -> store().read(folder, "boats".toCharArray()))
            .getMessage());
  }

  @Test
  void damageTamperingAndAWrongPassphraseAreToldApart() {
    List<String> lines = encryptedLines();
    byte[] damaged = bytes(lines);
    damaged[damaged.length - 30] ^= 4;
    assertEquals(
        "entry 3: the line cannot be read: it was damaged: its check digits do not match",
        firstBreak(damaged));

    List<String> tampered = new ArrayList<>(lines);
    tampered.set(2, changed(lines.get(2)));
    assertEquals(
        "entry 2: the line cannot be read: it was changed by someone who does not have the key",
        firstBreak(bytes(tampered)));

    List<String> swapped = List.of(lines.get(0), lines.get(2), lines.get(1), lines.get(3));
    assertEquals("entry 1: expected entry 1, found 2", firstBreak(bytes(swapped)));

    byte[] header = bytes(lines);
    header[60] ^= 1;
    assertEquals(
        "the first line of the journal, which holds the key, was damaged",
        assertThrows(RecordProblem.class, () -> JournalReader.read(header, PASSPHRASE))
            .getMessage());
  }

  @Test
  void anyByteThatIsChangedIsFound() {
    List<String> lines = encryptedLines();
    byte[] whole = bytes(lines);
    int body = lines.get(0).length() + 1;
    for (int at = body; at < whole.length; at += 3) {
      byte[] changed = whole.clone();
      changed[at] ^= 1;
      byte[] rest = Arrays.copyOfRange(changed, 0, changed.length);
      assertTrue(isNoticed(rest), "byte " + at);
    }
  }

  private static boolean isNoticed(byte[] journal) {
    try {
      JournalReading reading = JournalReader.read(journal, PASSPHRASE);
      return !reading.breaks().isEmpty() || reading.torn().length > 0;
    } catch (RecordProblem e) {
      return true;
    }
  }

  @Test
  void aTornEndLosesOnlyTheUnfinishedLine() throws IOException {
    byte[] whole = bytes(encryptedLines());
    for (int cut = 1; cut < 60; cut++) {
      JournalReading reading =
          JournalReader.read(Arrays.copyOf(whole, whole.length - cut), PASSPHRASE);
      assertEquals(2, reading.entries().size());
      assertEquals(List.of(), reading.breaks());
      assertTrue(reading.torn().length > 0);
    }
  }

  @Test
  void soundIsEncryptedPieceByPieceAndReadsBack() throws IOException {
    short[] tone = new short[12 * 16_000];
    for (int i = 0; i < tone.length; i++) {
      tone[i] = (short) (8000 * Math.sin(i / 10.0));
    }
    ExamFolder folder;
    try (OpenExam open = store().create("Demo", "0.1.0", null, PASSPHRASE)) {
      folder = open.folder();
      try (SegmentStore sound = open.openSound()) {
        sound.append(new Chunk(0, 0, tone));
      }
      assertArrayEquals(tone, open.sound(0, 60).orElseThrow().samples());
    }
    List<Segment> segments = SegmentStore.segments(folder.audio());
    assertEquals(2, segments.size());
    assertTrue(segments.get(0).file().toString().endsWith("segment-000001-0000000000.sealed"));
    assertEquals(tone.length, segments.get(1).end());

    StoredExam stored = store().read(folder, PASSPHRASE);
    short[] middle = stored.sound(9.9, 10.1).orElseThrow().samples();
    assertArrayEquals(Arrays.copyOfRange(tone, 158_400, 161_600), middle);
    assertEquals(
        "the sound is encrypted: the passphrase of the record is needed",
        assertThrows(IOException.class, () -> SegmentStore.read(folder.audio(), 0, 1))
            .getMessage());
  }

  @Test
  void changedOrMovedSoundIsRefusedAndTornSoundLosesItsLastPieceOnly() throws IOException {
    ExamFolder folder;
    try (OpenExam open = store().create("Demo", "0.1.0", null, PASSPHRASE);
        SegmentStore sound = open.openSound()) {
      folder = open.folder();
      sound.append(new Chunk(0, 0, new short[20 * 16_000]));
    }
    Path first = SegmentStore.segments(folder.audio()).get(0).file();
    Path second = SegmentStore.segments(folder.audio()).get(1).file();
    byte[] whole = Files.readAllBytes(first);

    byte[] changed = whole.clone();
    changed[500] ^= 1;
    Files.write(first, changed);
    StoredExam stored = store().read(folder, PASSPHRASE);
    assertEquals(
        "sound segment-000001-0000000000.sealed 0 was damaged or changed",
        assertThrows(RecordProblem.class, () -> stored.sound(0, 1)).getMessage());
    assertTrue(stored.sound(1, 2).isPresent());

    Files.write(first, Files.readAllBytes(second));
    assertThrows(RecordProblem.class, () -> stored.sound(0, 1));

    Files.write(first, Arrays.copyOf(whole, whole.length - 1));
    Segment torn = SegmentStore.segments(folder.audio()).get(0);
    assertEquals(10 * 16_000 - 4_000, torn.length());
    assertTrue(stored.sound(0, 9.99).isPresent());
  }

  /** Three events in an encrypted journal, with few iterations so that tests are quick. */
  private List<String> encryptedLines() {
    DataKey key = DataKey.create(PASSPHRASE, 10);
    LineCodec codec = new EncryptedLines(key);
    List<String> lines = new ArrayList<>(List.of(text(key.header())));
    Chain chain = Chain.start();
    for (int pause = 0; pause < 3; pause++) {
      Chain.Line line = chain.next(Bedside.START, new Event.Paused(pause + 1));
      chain.accept(line);
      lines.add(text(codec.store(line.bytes())));
    }
    return lines;
  }

  /** Another ciphertext with the right check digits, as someone would write who knows the form. */
  private static String changed(String line) {
    byte[] sealed = Base64.getDecoder().decode(line.substring(9));
    sealed[20] ^= 1;
    String text = Base64.getEncoder().encodeToString(sealed);
    CRC32 crc = new CRC32();
    crc.update(text.getBytes(StandardCharsets.US_ASCII));
    return HexFormat.of().toHexDigits((int) crc.getValue()) + " " + text;
  }

  private static String firstBreak(byte[] journal) {
    try {
      return JournalReader.read(journal, PASSPHRASE).breaks().get(0);
    } catch (RecordProblem e) {
      throw new AssertionError(e);
    }
  }

  /** The same key under another passphrase: the head is whole by itself, and is not this one's. */
  @Test
  void noOtherHeadFitsTheLinesThatWereWritten() throws Exception {
    ExamFolder folder = recorded();
    List<String> lines = new ArrayList<>(Files.readAllLines(folder.journal()));
    ObjectNode head = (ObjectNode) EventLines.json().readTree(lines.get(0));
    byte[] form = head.get("encrypted").asText().getBytes(StandardCharsets.UTF_8);
    byte[] salt = head.get("salt").binaryValue();
    int iterations = head.get("iterations").asInt();
    byte[] secret =
        DataKey.decrypt(
            DataKey.derive(PASSPHRASE, salt, iterations), head.get("key").binaryValue(), form);
    char[] other = "loud boats".toCharArray();
    head.put("iterations", 1);
    head.put(
        "key",
        Base64.getEncoder()
            .encodeToString(DataKey.encrypt(DataKey.derive(other, salt, 1), secret, form)));
    head.remove("sum");
    head.put(
        "sum", Sha256.hexOf(head.toString().getBytes(StandardCharsets.UTF_8)).substring(0, 16));
    lines.set(0, head.toString());
    Files.write(folder.journal(), bytes(lines));
    StoredExam stored = store().read(folder, other);
    assertEquals(List.of(), stored.record().entries());
    assertEquals(lines.size() - 1, stored.breaks().size());
    assertTrue(stored.integrity().isAltered());
  }

  private static String text(byte[] bytes) {
    return new String(bytes, StandardCharsets.US_ASCII);
  }

  private static byte[] bytes(List<String> lines) {
    return (String.join("\n", lines) + "\n").getBytes(StandardCharsets.US_ASCII);
  }
}
