package tiptoe.session;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneOffset;
import java.time.ZonedDateTime;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tiptoe.FullOnly;
import tiptoe.clinical.Assessor;
import tiptoe.exam.ExamRecord;
import tiptoe.exam.Slot;
import tiptoe.exam.journal.OpenExam;
import tiptoe.exam.journal.RecordStore;
import tiptoe.language.TypedText;
import tiptoe.protocol.LocalProtocol;
import tiptoe.protocol.Protocol;
import tiptoe.report.Format;
import tiptoe.report.Reports;
import tiptoe.settings.Settings;
import tiptoe.wording.QuestionWording;
import tiptoe.wording.RecordWording;

/** What a ward adds is understood, asked about, missed and flagged, and stays in the record. */
class WardProtocolTest {
  private static final Protocol WARD =
      ward(
          """
          name: Ward 7
          version: 3
          steps:
          - step: ear-lobe
            region: ears
            sided: yes
            key: yes
            called: [ear lobe, lobe]
            normal: [whole]
            abnormal: {cleft: {level: arrange, action: show it to the senior doctor}}
            words: {cleft: [cleft, split]}
          - step: cord-clamp
            region: umbilicus
            normal: [secure]
            abnormal: {loose: {level: urgent, action: change the clamp}}
          wordings:
          - {step: clavicle, value: crepitus, say: [grating collar bone]}
          key-steps: [skin]
          """);

  @TempDir Path data;

  private static Protocol ward(String text) {
    return Protocol.with(LocalProtocol.parse("ward.yaml", text, Protocol.standard()));
  }

  private RecordStore store(Protocol protocol) {
    return new RecordStore(data, protocol, Clock.systemUTC(), QuestionWording::of);
  }

  @Test
  @FullOnly("LocalProtocolTest puts a ward's steps among ours")
  void isPartOfTheExaminationAndStaysInItsRecord() throws IOException {
    Understanding understanding = Understanding.load(Home.of(WARD));
    OpenExam open = store(WARD).create(null, "1", null, null);
    try (open) {
      ExamSession session =
          new ExamSession(
              understanding::interpreter,
              open.examination(),
              Settings.DEFAULT,
              ZonedDateTime.now(Clock.systemUTC()));
      double at = 0;
      for (String said :
          List.of(
              "left ear lobe cleft",
              "right lobe not cleft",
              "okay now her left ear lobe there is split",
              "oh and i can feel a grating collar bone on the left",
              "cord clamp loose",
              "ears normal",
              "lobe whole")) {
        session.dictate(
            said, understanding.typed().utterance(TypedText.sentences(said).get(0)), at++);
      }
      assertTrue(
          session.record().openQuestions().get(0).question().text().contains("lobe"),
          "asks which side");
    }
    // The ward's file is gone, or says something else by now.
    ExamRecord record =
        store(Protocol.standard()).read(store(Protocol.standard()).find("last"), null).record();
    assertEquals(WARD.local(), record.protocol().local());
    assertEquals(
        List.of(
            "clavicle.left crepitus",
            "cord-clamp loose",
            "ear-lobe.left cleft",
            "ear-lobe.right whole !cleft"),
        record.answers().stream()
            .filter(answer -> !answer.group())
            .map(answer -> answer.finding().toString())
            .sorted()
            .toList());
    List<String> key = record.missingKeySteps().stream().map(Slot::step).toList();
    assertTrue(key.contains("skin") && !key.contains("ear-lobe"), key.toString());
    RecordWording wording =
        new RecordWording(
            record,
            Assessor.of(record.protocol()).assess(record, Settings.DEFAULT, ZoneOffset.UTC),
            Settings.DEFAULT);
    List<String> flags =
        wording.assessment().flags().stream()
            .map(flag -> flag.level().id() + " " + flag.rule() + ": " + flag.advice())
            .toList();
    assertTrue(flags.contains("urgent local-cord-clamp-loose: change the clamp"), flags.toString());
    assertTrue(
        flags.contains("arrange local-ear-lobe-cleft: show it to the senior doctor"),
        flags.toString());
    String title = WARD.local().orElseThrow().title();
    for (Format format : Format.values()) {
      String report = new String(Reports.render(wording, format), StandardCharsets.UTF_8);
      boolean forFamilies = format.compareTo(Format.LETTER) >= 0;
      assertTrue(forFamilies || format == Format.PDF || report.contains(title), format.toString());
    }
  }

  @Test
  void wordsThatMeanSomethingElseAreRefused() {
    Protocol clash =
        ward(
            """
            name: Ward 7
            version: 3
            wordings: [{step: clavicle, value: crepitus, say: [clavicle intact]}]
            """);
    Exception told = assertThrows(IOException.class, () -> Home.of(clash));
    assertEquals(
        "local protocol Ward 7 line 3: expected words that mean nothing else, found \"clavicle"
            + " intact\"",
        told.getMessage());
  }
}
