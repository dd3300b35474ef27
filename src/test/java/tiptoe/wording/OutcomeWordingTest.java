package tiptoe.wording;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tiptoe.exam.Changes;
import tiptoe.language.TypedText;
import tiptoe.session.ExamSession;
import tiptoe.session.Hearing;
import tiptoe.session.Sessions;
import tiptoe.session.Understanding;
import tiptoe.settings.Settings;

class OutcomeWordingTest {
  private static final Understanding understanding = Hearing.understood();

  private final ExamSession session = Sessions.inMemory(understanding, Settings.DEFAULT);

  /** Dictates sentences; gives what the last one did. */
  private Changes say(String dialogue) {
    Changes last = null;
    int at = 0;
    for (String sentence : TypedText.sentences(dialogue)) {
      last = session.dictate(sentence, understanding.typed().words(sentence), at++);
    }
    return last;
  }

  private static String shown(OutcomeWording outcome) {
    return outcome.lines().stream()
        .map(OutcomeWording.Line::shown)
        .collect(Collectors.joining("; "));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          left clavicle crepitus.                                   | RECORDED | RECORDED left clavicle: crepitus
          left clavicle crepitus. left clavicle crepitus.           | RECORDED | AGAIN left clavicle: crepitus
          clavicle crepitus.                                        | ASKED | NOT RECORDED YET
          clavicle crepitus. left.                                  | RECORDED | RECORDED left clavicle: crepitus
          left barlow negative. left barlow positive.               | ASKED | NOT RECORDED YET left Barlow: positive
          left barlow negative. left barlow positive. yes.          | RECORDED | RECORDED left Barlow: positive
          left barlow negative. left barlow positive. no.           | DONE | LEFT OUT left Barlow: positive
          left barlow negative. left clavicle crepitus. cross that out. | DONE | CROSSED OUT left clavicle: crepitus
          barlow negative both hips. cross that out.                | DONE | CROSSED OUT Barlow (both sides): negative
          clavicle crepitus. cross that out.                        | DONE | CROSSED OUT clavicle: crepitus
          cross that out.                                           | DONE | NOTHING CHANGED
          baby girl.                                                | RECORDED | NOTED sex: girl
          now the hips.                                             | RECORDED | NOTED
          pause the recording.                                      | DONE | PAUSED
          pause the recording. carry on recording.                  | DONE | LISTENING again
          end of examination.                                       | ASKED | NOT ENDED YET
          end of examination. no.                                   | DONE | GOING ON
          start remark.                                             | DONE | REMARK begins
          yes.                                                      | TALK | ''
          """)
  void eachThingThatIsSaidComesToSomethingOfItsOwn(
      String dialogue, OutcomeWording.Kind kind, String lines) {
    Changes changes = say(dialogue);
    OutcomeWording outcome = OutcomeWording.of(changes, session.wording().words());
    assertEquals(lines, shown(outcome));
    assertEquals(kind, outcome.kind());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          next region.                  | DONE
          left clavicle wibble.         | NOT_UNDERSTOOD
          the left clavicle wibble wobble. | NOT_UNDERSTOOD
          """)
  void whatIsNotRecordedIsTold(String dialogue, OutcomeWording.Kind kind) {
    OutcomeWording outcome = OutcomeWording.of(say(dialogue), session.wording().words());
    assertEquals(kind, outcome.kind(), outcome::toString);
    assertEquals(outcome.lines(), last());
    assertTrue(outcome.lines().size() == 1, outcome::toString);
  }

  /** A word to the mother does not stand above what was said to the record. */
  @Test
  void talkBehindAFindingIsNotShownAsWhatWasRecorded() {
    say("left clavicle crepitus. yes.");
    OutcomeWording shown =
        OutcomeWording.last(session.record(), session.wording().words()).orElseThrow();
    assertEquals("left clavicle crepitus", shown.heard());
    assertEquals("RECORDED left clavicle: crepitus", shown(shown));
  }

  private List<OutcomeWording.Line> last() {
    return OutcomeWording.last(session.record(), session.wording().words())
        .map(OutcomeWording::lines)
        .orElse(List.of());
  }
}
