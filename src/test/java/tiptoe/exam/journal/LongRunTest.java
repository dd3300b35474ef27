package tiptoe.exam.journal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tiptoe.MemoryDisk;
import tiptoe.TestExtent;
import tiptoe.exam.Bedside;
import tiptoe.exam.Changes;
import tiptoe.exam.Event;
import tiptoe.exam.ExamRecord;
import tiptoe.exam.Heard;
import tiptoe.finding.Outcome;
import tiptoe.language.Dialogue;
import tiptoe.language.Interpretation;
import tiptoe.protocol.Protocol;
import tiptoe.speech.Word;
import tiptoe.wording.QuestionWording;

/**
 * Eight hours of an utterance every five seconds, or two in a sample, as fast as they can be
 * recorded. Times and memory are printed, not judged: they depend on the machine.
 */
class LongRunTest {
  private static final int HOURS = TestExtent.of(2, 8);
  private static final int UTTERANCES = HOURS * 3600 / 5;
  private static final List<String> FINDINGS =
      List.of(
          "barlow.left negative",
          "barlow.right negative",
          "clavicle.left intact",
          "murmur none",
          "weight 3420 g",
          "skin milia");

  @TempDir(factory = MemoryDisk.class)
  Path data;

  private final Bedside.SetClock clock = new Bedside.SetClock();

  @Test
  void hoursGrowTheJournalEvenlyAndOpenAgain() throws IOException {
    RecordStore store = new RecordStore(data, Protocol.standard(), clock, QuestionWording::of);
    ExamRecord before;
    ExamFolder folder;
    long[] bytes = new long[3];
    long[] heap = new long[3];
    long start = System.nanoTime();
    try (OpenExam open = store.create("Demo", "0.1.0", null, null)) {
      folder = open.folder();
      for (int half = 1; half <= 2; half++) {
        for (int i = 0; i < UTTERANCES / 2; i++) {
          hear(open, (half - 1) * UTTERANCES / 2 + i);
        }
        bytes[half] = Files.size(folder.journal());
        heap[half] = usedHeap();
      }
      before = open.examination().record();
    }
    double recorded = seconds(start);
    start = System.nanoTime();
    StoredExam stored = store.read(folder, null);
    double opened = seconds(start);

    assertEquals(before, stored.record());
    assertEquals(List.of(), stored.breaks());
    assertTrue(stored.record().entries().size() > 1.74 * UTTERANCES);
    double growth = (double) (bytes[2] - bytes[1]) / bytes[1];
    assertTrue(growth > 0.95 && growth < 1.05, "the second half took " + growth + " of the first");
    System.out.printf(
        "%d h: %d events, %.1f MB; recorded in %.1f s (%.1f ms an utterance); heap %d MB half-way,"
            + " %d MB at the end; opened in %.2f s%n",
        HOURS,
        stored.record().entries().size(),
        bytes[2] / 1e6,
        recorded,
        1000 * recorded / UTTERANCES,
        heap[1] >> 20,
        heap[2] >> 20,
        opened);
  }

  /** One in four is a finding, one in four unsure, the others are talk. */
  private void hear(OpenExam open, int number) {
    clock.now = Bedside.START.plus(Duration.ofSeconds(5L * number));
    String text = FINDINGS.get(number % FINDINGS.size());
    Outcome outcome =
        number % 4 == 0 ? Outcome.ACCEPTED : number % 4 == 1 ? Outcome.UNSURE : Outcome.IGNORED;
    double at = 5.0 * number;
    List<Word> words =
        List.of(text.split(" ")).stream().map(word -> new Word(word, at, at + 1, 1)).toList();
    Changes changes =
        open.examination()
            .hear(
                new Heard(at, at + 2, text, words, outcome, null),
                new Interpretation(
                    List.of(Bedside.finding(text, number % 24 == 0)), List.of(), Dialogue.START));
    assertTrue(!changes.isEmpty());
    if (number % 2 == 0) {
      open.examination().note(new Event.AudioGap(at, 1, "the microphone is gone"));
    }
    open.examination().flags(List.of());
  }

  private static double seconds(long start) {
    return (System.nanoTime() - start) / 1e9;
  }

  private static long usedHeap() {
    System.gc();
    return Runtime.getRuntime().totalMemory() - Runtime.getRuntime().freeMemory();
  }
}
