package tiptoe.exam.journal;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tiptoe.exam.Bedside;
import tiptoe.exam.Event;
import tiptoe.exam.ExamRecord;
import tiptoe.protocol.Protocol;
import tiptoe.wording.QuestionWording;

class JournalTest {
  @TempDir Path data;
  private final Bedside.SetClock clock = new Bedside.SetClock();

  private RecordStore store() {
    return new RecordStore(data, Protocol.standard(), clock, QuestionWording::of);
  }

  private ExamFolder recorded(String... findings) throws IOException {
    try (OpenExam open = store().create("Demo", "0.1.0", null, null)) {
      Bedside bed = new Bedside(clock, open.examination());
      for (String finding : findings) {
        bed.find(finding);
      }
      return open.folder();
    }
  }

  @Test
  void readsBackWhatWasRecorded() throws IOException {
    ExamRecord before;
    ExamFolder folder;
    try (OpenExam open = store().create("Demo", "0.1.0", "Dr Reed", null)) {
      Bedside bed = new Bedside(clock, open.examination());
      bed.fact("sex", "girl");
      bed.find("barlow.left positive", "barlow.right negative");
      bed.find("murmur present grade=2 place=apex");
      bed.find("weight 3420 g");
      bed.find("barlow.left negative");
      bed.find("clavicle crepitus");
      bed.exam.note(new Event.AudioGap(12.5, 1, "the microphone is gone"));
      before = open.examination().record();
      folder = open.folder();
    }
    StoredExam stored = store().read(folder, null);
    assertEquals(before, stored.record());
    assertEquals(List.of(), stored.breaks());
    assertEquals(0, stored.torn());
    assertFalse(stored.taken());
    assertEquals(List.of(folder), store().list());
    assertTrue(folder.name().startsWith("2026-03-01-0900-"), folder.name());
  }

  @Test
  void goesOnBehindWhatThereIs() throws IOException {
    ExamFolder folder = recorded("barlow.left negative");
    try (OpenExam open = store().open(folder, null)) {
      open.examination().goOn("0.1.0", null);
      new Bedside(clock, open.examination()).find("barlow.right negative");
    }
    StoredExam stored = store().read(folder, null);
    assertEquals(List.of(), stored.breaks());
    assertEquals(2, stored.record().answers().size());
    assertEquals("the examination was continued", stored.record().notes().get(0).text());
  }

  @Test
  void onlyTheOwnerCanReadIt() throws IOException {
    ExamFolder folder = recorded("barlow.left negative");
    assumeTrue(
        folder.path().getFileSystem().supportedFileAttributeViews().contains("posix"),
        "this file system knows no permissions");
    try (Stream<Path> all = Files.walk(data.resolve("examinations"))) {
      for (Path path : (Iterable<Path>) all::iterator) {
        String expected = Files.isDirectory(path) ? "rwx------" : "rw-------";
        assertEquals(
            expected,
            PosixFilePermissions.toString(Files.getPosixFilePermissions(path)),
            "" + path);
      }
    }
  }

  @Test
  void wherEverAPowerCutTearsTheTailNothingBeforeItIsLostAndTheTearIsReported() throws IOException {
    ExamFolder folder = recorded("barlow.left negative", "barlow.right negative", "weight 3420 g");
    byte[] whole = Files.readAllBytes(folder.journal());
    int lines = store().read(folder, null).record().entries().size();
    for (int length = whole.length - 1; length > 0; length--) {
      byte[] cut = Arrays.copyOf(whole, length);
      int finished =
          (int)
              new String(cut, java.nio.charset.StandardCharsets.UTF_8)
                  .chars()
                  .filter(c -> c == '\n')
                  .count();
      JournalReading reading = JournalReader.read(cut, null);
      assertEquals(List.of(), reading.breaks());
      assertEquals(finished, reading.entries().size());
      assertEquals(length, reading.whole() + reading.torn().length);
    }
    assertTrue(lines > 5);
  }

  @Test
  void setsATornLineAsideNotesItAndGoesOn() throws IOException {
    ExamFolder folder = recorded("barlow.left negative", "barlow.right negative");
    byte[] whole = Files.readAllBytes(folder.journal());
    for (int lost : List.of(1, 7, 150)) {
      Files.write(folder.journal(), Arrays.copyOf(whole, whole.length - lost));
      StoredExam torn = store().read(folder, null);
      assertTrue(torn.torn() > 0);
      Path aside;
      try (OpenExam open = store().open(folder, null)) {
        aside = folder.path().resolve(lastNoteFile(open));
        new Bedside(clock, open.examination()).find("weight 3420 g");
      }
      assertEquals(torn.torn(), Files.size(aside));
      byte[] kept = Files.readAllBytes(aside);
      assertArrayEquals(
          kept, Arrays.copyOfRange(whole, whole.length - lost - kept.length, whole.length - lost));
      StoredExam mended = store().read(folder, null);
      assertEquals(List.of(), mended.breaks());
      assertEquals(0, mended.torn());
      assertTrue(mended.record().answers("weight").size() == 1);
    }
  }

  private static String lastNoteFile(OpenExam open) {
    String text =
        open.examination().record().notes().stream()
            .map(note -> note.text())
            .filter(note -> note.contains("unfinished"))
            .findFirst()
            .orElseThrow();
    return text.substring(text.lastIndexOf(' ') + 1);
  }

  @Test
  void anyChangedByteIsFoundAndItsEntryNamed() throws IOException {
    ExamFolder folder = recorded("barlow.left negative", "weight 3420 g");
    byte[] whole = Files.readAllBytes(folder.journal());
    int entry = 1;
    for (int at = 0; at < whole.length; at++) {
      for (int bit : new int[] {0x01, 0x20, 0x80}) {
        byte[] changed = whole.clone();
        changed[at] ^= (byte) bit;
        JournalReading reading = JournalReader.read(changed, null);
        boolean lastFeed = at == whole.length - 1;
        if (lastFeed) {
          assertTrue(reading.torn().length > 0);
        } else {
          assertTrue(reading.breaks().get(0).startsWith("entry " + entry + ":"), "byte " + at);
        }
      }
      entry += whole[at] == '\n' ? 1 : 0;
    }
  }

  @Test
  void aLineThatWasTakenOutOrPutElsewhereIsNamed() throws IOException {
    ExamFolder folder = recorded("barlow.left negative", "weight 3420 g");
    List<String> lines = Files.readAllLines(folder.journal());
    String without = String.join("\n", lines.subList(0, 2)) + "\n" + lines.get(3) + "\n";
    assertEquals("entry 3: expected entry 3, found 4", firstBreak(without));
    String swapped =
        String.join("\n", lines.get(0), lines.get(2), lines.get(1), lines.get(3)) + "\n";
    assertEquals("entry 2: expected entry 2, found 3", firstBreak(swapped));
    ExamFolder other = recorded("barlow.left positive", "weight 3420 g");
    String foreign = lines.get(0) + "\n" + Files.readAllLines(other.journal()).get(1) + "\n";
    assertEquals("entry 2: it does not follow from the entry before it", firstBreak(foreign));
  }

  private static String firstBreak(String journal) throws IOException {
    byte[] bytes = journal.getBytes(java.nio.charset.StandardCharsets.UTF_8);
    return JournalReader.read(bytes, null).breaks().get(0);
  }

  @Test
  void aBrokenRecordIsReadInFullButNotWrittenTo() throws IOException {
    ExamFolder folder = recorded("barlow.left negative", "weight 3420 g", "length 50 cm");
    String text = Files.readString(folder.journal());
    Files.writeString(folder.journal(), text.replaceFirst("3420", "4320"));
    StoredExam stored = store().read(folder, null);
    assertEquals(1, stored.record().answers("length").size());
    assertEquals(
        "entry 4: the line cannot be read: its checksum does not match", stored.breaks().get(0));
    var refused = assertThrows(RecordProblem.class, () -> store().open(folder, null));
    assertEquals(
        "examination "
            + folder.name()
            + " can only be read: its journal is broken at entry 4: the line cannot be read: its"
            + " checksum does not match",
        refused.getMessage());
  }

  @Test
  void aSecondWriterIsRefusedAndAReaderIsNot() throws IOException {
    try (OpenExam open = store().create("Demo", "0.1.0", null, null)) {
      var refused = assertThrows(RecordProblem.class, () -> store().open(open.folder(), null));
      assertEquals(
          "examination " + open.folder().name() + " is open in another window",
          refused.getMessage());
      assertTrue(store().read(open.folder(), null).taken());
      assertThrows(RecordProblem.class, () -> store().remove(open.folder()));
    }
  }

  @Test
  void removalTakesJournalAndAudio() throws IOException {
    ExamFolder folder = recorded("barlow.left negative");
    Files.createDirectories(folder.audio());
    Files.writeString(folder.audio().resolve("segment-000001-0000000000.wav"), "x");
    store().remove(folder);
    assertFalse(Files.exists(folder.path()));
    assertEquals(List.of(), store().list());
    assertEquals(
        "expected an examination in " + folder.path() + ", found none",
        assertThrows(RecordProblem.class, () -> store().read(folder, null)).getMessage());
  }

  @Test
  void whatACrashLeftOfARemovalIsRemovedWhenListed() throws IOException {
    ExamFolder folder = recorded("barlow.left negative");
    Path left = folder.path().resolveSibling(".removing-" + folder.name());
    Files.move(folder.path(), left);
    assertEquals(List.of(), store().list());
    assertFalse(Files.exists(left));
  }

  @Test
  void findsAnExaminationByItsIdOrItsPath() throws IOException {
    ExamFolder folder = recorded("barlow.left negative");
    assertEquals(folder, store().find(folder.name()));
    assertEquals(folder, store().find(folder.path().toString()));
    assertEquals(
        "expected an examination, found none called nobody",
        assertThrows(RecordProblem.class, () -> store().find("nobody")).getMessage());
  }
}
