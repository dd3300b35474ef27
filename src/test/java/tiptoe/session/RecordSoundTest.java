package tiptoe.session;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tiptoe.audio.AudioFile;
import tiptoe.audio.Chunk;
import tiptoe.audio.Pcm;
import tiptoe.audio.Segment;
import tiptoe.audio.SegmentStore;
import tiptoe.exam.journal.ExamFolder;
import tiptoe.exam.journal.OpenExam;
import tiptoe.exam.journal.RecordStore;
import tiptoe.protocol.Protocol;
import tiptoe.wording.QuestionWording;

class RecordSoundTest {
  private static final int RATE = Pcm.RATE;

  @TempDir private Path folder;

  private static short[] rising(int samples) {
    short[] rising = new short[samples];
    for (int i = 0; i < samples; i++) {
      rising[i] = (short) (i % 30000);
    }
    return rising;
  }

  private RecordSound of(RecordSound.Kept kept) {
    return new RecordSound(kept, folder, "demo");
  }

  @Test
  void aStretchIsWrittenAsItWasHeardAndNeverOverAnEarlierOne() throws IOException {
    short[] sound = rising(3 * RATE);
    RecordSound.Kept kept =
        (from, to) ->
            Optional.of(
                new Pcm(Arrays.copyOfRange(sound, (int) (from * RATE), (int) (to * RATE)), RATE));
    try (RecordSound record = of(kept)) {
      assertEquals(folder.resolve("demo-1.0s.wav").toString(), record.export(1, 2));
      assertEquals(folder.resolve("demo-1.0s-2.wav").toString(), record.export(1, 1.5));
    }
    assertArrayEquals(
        Arrays.copyOfRange(sound, RATE, 2 * RATE), samples(folder.resolve("demo-1.0s.wav")));
    assertArrayEquals(
        Arrays.copyOfRange(sound, RATE, RATE + RATE / 2),
        samples(folder.resolve("demo-1.0s-2.wav")));
  }

  @Test
  void soundThatIsNotKeptIsSaidToBeSoAndNothingIsWritten() throws IOException {
    List<String> troubles = new ArrayList<>();
    try (RecordSound record = of((from, to) -> Optional.empty())) {
      record.play(1, 2, 1, troubles::add);
      assertEquals(List.of("no sound is kept of that time"), troubles);
      IOException problem = assertThrows(IOException.class, () -> record.export(1, 2));
      assertEquals("no sound is kept of that time", problem.getMessage());
    }
    assertEquals(0, folder.toFile().list().length);
  }

  @Test
  void soundThatCannotBeReadIsToldAndNotThrown() {
    List<String> troubles = new ArrayList<>();
    try (RecordSound record =
        of(
            (from, to) -> {
              throw new IOException("segment 1 is damaged");
            })) {
      record.play(1, 2, 1, troubles::add);
    }
    assertEquals(List.of("segment 1 is damaged"), troubles);
  }

  @Test
  void encryptedSoundIsWrittenReadableByWhoHasThePassphrase() throws IOException {
    RecordStore store =
        new RecordStore(
            folder.resolve("records"), Protocol.standard(), Clock.systemUTC(), QuestionWording::of);
    short[] sound = rising(4 * RATE);
    ExamFolder exam;
    try (OpenExam open = store.create("Baby Rowan", "0.1.0", null, "quiet boats".toCharArray())) {
      exam = open.folder();
      try (SegmentStore segments = open.openSound()) {
        segments.append(new Chunk(0, 0, sound));
      }
      try (RecordSound record = of(open::sound)) {
        Path written = Path.of(record.export(1, 2));
        assertArrayEquals(Arrays.copyOfRange(sound, RATE, 2 * RATE), samples(written));
      }
    }
    List<Segment> kept = SegmentStore.segments(exam.audio());
    assertEquals(1, kept.size());
    for (Segment one : kept) {
      String head = Files.readString(one.file(), StandardCharsets.ISO_8859_1).substring(0, 4);
      assertTrue(!head.equals("RIFF"), "kept in the clear: " + one.file());
    }
  }

  private static short[] samples(Path file) throws IOException {
    return AudioFile.read(file).samples();
  }
}
