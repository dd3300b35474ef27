package tiptoe.report;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tiptoe.Golden;
import tiptoe.exam.Entry;
import tiptoe.exam.journal.ExamFolder;
import tiptoe.exam.journal.MemorySink;
import tiptoe.exam.journal.OpenExam;
import tiptoe.exam.journal.RecordStore;
import tiptoe.exam.journal.StoredExam;
import tiptoe.protocol.Protocol;
import tiptoe.wording.QuestionWording;

/**
 * Journals of an earlier version, with what that version said of them: a signed one with an
 * addendum, an open one and an encrypted one. The journals are never written anew. What is said of
 * them may be, where its wording changed on purpose: delete that file, run once, and read it.
 */
class GoldenJournalTest {
  private static final Path GOLDEN = Path.of("src/test/resources/tiptoe/exam/journal/golden");
  private static final String PASSPHRASE = "correct horse battery";
  private static final Clock NEXT_DAY =
      Clock.fixed(Records.NOON.plus(Duration.ofDays(1)), ZoneOffset.UTC);

  @TempDir Path data;
  private RecordStore store;
  private ExamFolder folder;

  private void copy(String name) throws IOException {
    store = new RecordStore(data, Protocol.standard(), NEXT_DAY, QuestionWording::of);
    Path path = Files.createDirectories(data.resolve("examinations").resolve(name));
    Files.copy(GOLDEN.resolve(name).resolve("journal.jsonl"), path.resolve("journal.jsonl"));
    folder = new ExamFolder(path);
  }

  private StoredExam read() throws IOException {
    return store.read(folder, passphrase());
  }

  private char[] passphrase() {
    return folder.name().equals("encrypted") ? PASSPHRASE.toCharArray() : null;
  }

  @ParameterizedTest
  @ValueSource(strings = {"signed", "open", "encrypted"})
  void opensAndReadsTheSame(String name) throws IOException {
    copy(name);
    StoredExam stored = read();
    assertEquals(List.of(), stored.breaks());
    FhirDocumentTest.assertSame(stored.record());
    for (Format format : List.of(Format.JSON, Format.TXT)) {
      byte[] now = Reports.render(Records.wording(stored.record()), format);
      Golden.check(
          GOLDEN.resolve(name).resolve("record." + format.ending()),
          new String(now, StandardCharsets.UTF_8));
    }
  }

  /** Each entry holds the hash of the line before it, so equal entries are equal bytes. */
  @ParameterizedTest
  @ValueSource(strings = {"signed", "open", "encrypted"})
  void writesTheSameBytes(String name) throws IOException {
    copy(name);
    MemorySink sink = new MemorySink();
    List<Entry> entries = read().record().entries();
    entries.forEach(entry -> sink.append(entry.at(), List.of(entry.event())));
    assertEquals(entries, sink.entries());
  }

  @ParameterizedTest
  @ValueSource(strings = {"signed", "open", "encrypted"})
  void goingOnLeavesWhatThereIsUntouched(String name) throws IOException {
    copy(name);
    byte[] before = Files.readAllBytes(folder.journal());
    try (OpenExam open = store.open(folder, passphrase())) {
      if (name.equals("open")) {
        open.examination().goOn("0.2.0", null);
      } else {
        open.examination().review("Dr Ada Quill").startAddendum("seen again");
      }
      open.examination().review("Dr Ada Quill").remark("feeds well");
    }
    byte[] after = Files.readAllBytes(folder.journal());
    assertTrue(after.length > before.length);
    assertArrayEquals(before, Arrays.copyOf(after, before.length));
    StoredExam stored = read();
    assertEquals(List.of(), stored.breaks());
    assertTrue(
        stored.record().remarks().stream().anyMatch(remark -> remark.text().equals("feeds well")));
  }

  /** All that there were then; a new kind of event is none of an old journal. */
  @Test
  void theSignedOneHoldsEveryKindOfEvent() throws IOException {
    copy("signed");
    Set<Class<?>> kinds = new HashSet<>();
    read().record().entries().forEach(entry -> kinds.add(entry.event().getClass()));
    assertEquals(30, kinds.size());
  }
}
