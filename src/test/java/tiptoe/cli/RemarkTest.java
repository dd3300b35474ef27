package tiptoe.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import tiptoe.audio.AudioFile;
import tiptoe.audio.SampleSource;
import tiptoe.exam.Changes;
import tiptoe.exam.Event;
import tiptoe.exam.Remark;
import tiptoe.session.Dictation;
import tiptoe.session.ExamSession;
import tiptoe.session.Hearing;
import tiptoe.session.Sessions;
import tiptoe.settings.Settings;

/** A remark in free words: a synthetic voice (flite, slt) says what {@code remark.txt} holds. */
class RemarkTest {
  private static final Path RECORDING = Path.of("src/test/resources/tiptoe/cli/remark.wav");

  @Test
  void aRemarkIsHeardInFreeWordsAndWhatIsSaidBehindItIsRecorded() throws IOException {
    Hearing hearing = Hearing.loaded();
    ExamSession session = Sessions.inMemory(hearing.understanding(), Settings.DEFAULT);
    List<Changes> changes = new ArrayList<>();
    try (SampleSource sound = AudioFile.open(RECORDING)) {
      new Dictation(hearing.engine(), session).listen(sound, 0, changes::add);
    }
    assertEquals(1, session.record().remarks().size());
    Remark remark = session.record().remarks().get(0);
    // "mother" is in no phrase that the rest of the sentence would fit
    assertTrue(remark.text().contains("the mother asked"), remark::text);
    assertFalse(remark.text().contains("remark"), remark::text);
    assertTrue(remark.end() > remark.start());
    assertEquals(1, changes.stream().flatMap(one -> one.of(Event.RemarkReworded.class)).count());
    assertEquals("clavicle", session.record().answers().get(0).step());
  }

  @Test
  void aRepairedWordIsMarkedInTheText() {
    Remark remark =
        new Remark(
            1,
            java.time.Instant.EPOCH,
            "the fontanelle was pulsating",
            "",
            1,
            2,
            List.of(new tiptoe.exam.Repair("font an el", "fontanelle")),
            null);
    assertEquals("the fontanelle [heard: font an el] was pulsating", remark.marked());
  }
}
