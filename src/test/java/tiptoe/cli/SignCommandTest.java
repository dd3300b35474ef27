package tiptoe.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tiptoe.audio.Chunk;
import tiptoe.audio.SegmentStore;
import tiptoe.exam.Bedside;
import tiptoe.exam.Event;
import tiptoe.exam.journal.ExamFolder;
import tiptoe.exam.journal.OpenExam;
import tiptoe.exam.journal.RecordStore;
import tiptoe.finding.Command;
import tiptoe.protocol.Protocol;
import tiptoe.wording.QuestionWording;

/** Signing without a screen: what is told before, and what becomes of the sound. */
@Tag("process")
class SignCommandTest {
  @TempDir Path folder;
  private final Bedside.SetClock clock = new Bedside.SetClock();
  private final ByteArrayOutputStream out = new ByteArrayOutputStream();
  private final ByteArrayOutputStream err = new ByteArrayOutputStream();

  private RecordStore store() {
    return new RecordStore(folder.resolve("data"), Protocol.standard(), clock, QuestionWording::of);
  }

  /**
   * @param keep what was chosen for it, as exam does by --keep-audio; null for nothing
   */
  private ExamFolder recorded(String keep, String... findings) throws IOException {
    try (OpenExam open = store().create("Baby Rowan", "0.1.0", null, null)) {
      if (keep != null) {
        open.examination().note(new Event.KeepAudioChosen(keep));
      }
      Bedside bed = new Bedside(clock, open.examination());
      try (SegmentStore sound = open.openSound()) {
        sound.append(new Chunk(0, 0, new short[12 * 16_000]));
        for (String finding : findings) {
          bed.find(finding);
        }
      }
      bed.command(Command.END_EXAM);
      bed.command(Command.YES);
      return open.folder();
    }
  }

  private int sign(ExamFolder exam, String typed, String... more) throws IOException {
    Path settings = Files.writeString(folder.resolve("tiptoe.yaml"), "keep-audio: until-signed\n");
    out.reset();
    err.reset();
    List<String> all = new ArrayList<>(List.of("sign", exam.name(), "--as", "Dr Reed"));
    all.addAll(List.of("--role", "registrar", "--data", folder.resolve("data").toString()));
    all.addAll(List.of("--config", settings.toString()));
    all.addAll(List.of(more));
    InputStream before = System.in;
    System.setIn(new ByteArrayInputStream(typed.getBytes(StandardCharsets.UTF_8)));
    try {
      return Tiptoe.run(
          new PrintStream(out, true, StandardCharsets.UTF_8),
          new PrintStream(err, true, StandardCharsets.UTF_8),
          all.toArray(String[]::new));
    } finally {
      System.setIn(before);
    }
  }

  @ParameterizedTest(name = "chosen for it {0}, now {1}")
  @CsvSource({
    "always,,its 2 segments of sound stay: kept always,2",
    "always,never,its 2 segments of sound are removed by signing: kept never,0",
    "until-signed,,its 2 segments of sound are removed by signing: kept until signed,0",
    "until-signed,always,its 2 segments of sound stay: kept always,2",
    ",,its 2 segments of sound are removed by signing: kept until signed,0"
  })
  void keepsTheSoundAsWasChosenAndSaysSoBefore(
      String recordedWith, String now, String told, int left) throws IOException {
    ExamFolder exam = recorded(recordedWith, "barlow.left negative");
    String[] more = now == null ? new String[0] : new String[] {"--keep-audio", now};
    assertEquals(1, sign(exam, "no\n", more));
    assertTrue(out.toString().contains(told + "\n"), out.toString());
    assertTrue(out.toString().endsWith("not signed\n"), out.toString());
    assertEquals(2, SegmentStore.segments(exam.audio()).size());
    assertEquals(0, sign(exam, "yes\n", more), err.toString());
    assertTrue(out.toString().indexOf(told) < out.toString().indexOf("seal "), out.toString());
    assertEquals(left, SegmentStore.segments(exam.audio()).size());
    assertTrue(store().read(exam, null).integrity().problems().isEmpty());
  }

  @Test
  void whatIsNotSettledIsSignedOnlyForAReasonThatStaysInTheRecord() throws IOException {
    ExamFolder exam = recorded("always", "barlow.left positive", "barlow.left negative");
    assertEquals(1, sign(exam, "yes\n"));
    assertTrue(err.toString().contains("named by --despite"), err.toString());
    assertEquals(1, sign(exam, "yes\n", "--despite", "  "));
    assertFalse(store().read(exam, null).record().signed());
    assertEquals(0, sign(exam, "yes\n", "--despite", "seen again tomorrow"), err.toString());
    var record = store().read(exam, null).record();
    assertTrue(record.signed());
    assertTrue(
        record.remarks().stream()
            .anyMatch(one -> one.text().equals("signed while not settled: seen again tomorrow")),
        record.remarks().toString());
  }
}
