package tiptoe.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tiptoe.exam.Answer;
import tiptoe.exam.Phase;
import tiptoe.language.TypedText;
import tiptoe.session.ExamSession;
import tiptoe.session.Hearing;
import tiptoe.session.Sessions;
import tiptoe.session.Understanding;
import tiptoe.settings.Settings;

/** Whole dialogues, in the words of the grammars: what is asked, and what an answer does. */
class DialogueTest {
  private static final Understanding understanding = Hearing.understood();

  private static ExamSession say(String dialogue) {
    ExamSession session = Sessions.inMemory(understanding, Settings.DEFAULT);
    int at = 0;
    for (String sentence : TypedText.sentences(dialogue)) {
      session.type(sentence, understanding.typed().words(sentence), at++);
    }
    return session;
  }

  private static String answers(ExamSession session) {
    return session.record().answers().stream()
        .map(DialogueTest::text)
        .collect(Collectors.joining(", "));
  }

  private static String text(Answer answer) {
    String side = answer.side() == null ? "" : answer.side().id() + " ";
    String what = answer.value() == null ? answer.quantity().text() : answer.value();
    return side + answer.step() + " " + what;
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          left barlow negative. left barlow positive.                    | left barlow negative | 1
          left barlow negative. left barlow positive. yes.               | left barlow positive | 0
          left barlow negative. left barlow positive. no.                | left barlow negative | 0
          left barlow negative. left barlow positive. keep the first.    | left barlow negative | 0
          left barlow negative. left barlow positive. keep the second.   | left barlow positive | 0
          left barlow negative. correction left barlow positive.         | left barlow positive | 0
          left barlow negative. left barlow positive. cross that out.    | left barlow negative | 0
          left barlow negative. left clavicle crepitus. cross that out.  | left barlow negative | 0
          clavicle crepitus. left.                                       | left clavicle crepitus | 0
          clavicle crepitus. no.                                         | '' | 1
          weight thirty four grams. no. weight 3400 grams.               | weight 3400 | 0
          """)
  void whatStandsAfterItAndIsStillAsked(String dialogue, String expected, int questions) {
    ExamSession session = say(dialogue);
    assertEquals(expected, answers(session));
    assertEquals(questions, session.record().openQuestions().size());
  }

  @Test
  void aGirlsTestesAreAskedAboutAndTheSexCanBeSaidAgain() {
    ExamSession session = say("baby girl. left testis descended.");
    assertEquals("", answers(session));
    session = say("baby girl. left testis descended. baby boy. yes.");
    assertEquals("left testis descended", answers(session));
    assertEquals("boy", session.record().baby().sex().orElseThrow());
  }

  @Test
  void aYesEndsTheExaminationWhileKeyStepsAreMissing() {
    assertEquals(Phase.ENDING, say("end of examination.").record().phase());
    assertEquals(Phase.ENDED, say("end of examination. yes.").record().phase());
    assertEquals(Phase.LISTENING, say("end of examination. no.").record().phase());
    assertEquals(Phase.LISTENING, say("yes.").record().phase());
  }
}
