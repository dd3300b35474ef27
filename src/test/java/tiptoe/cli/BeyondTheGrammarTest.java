package tiptoe.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import tiptoe.exam.Utterance;
import tiptoe.finding.Outcome;
import tiptoe.finding.Source;
import tiptoe.session.ExamSession;
import tiptoe.session.Hearing;
import tiptoe.session.Sessions;
import tiptoe.session.Understanding;
import tiptoe.settings.Settings;

/** Sentences that no grammar covers, in an examination. The wordings are common practice. */
class BeyondTheGrammarTest {
  private static final String UNLISTED = "the palate flobbery intact";
  private static final Understanding understanding = Hearing.understood();

  private final ExamSession session = Sessions.inMemory(understanding, Settings.DEFAULT);

  private Utterance say(String text) {
    session.dictate(text, understanding.typed().words(text), 0);
    List<Utterance> all = session.record().utterances();
    return all.get(all.size() - 1);
  }

  @Test
  void whatTheTaggerReadsIsOfferedAndNotRecorded() {
    Utterance heard = say(UNLISTED);
    assertEquals(Outcome.UNSURE, heard.heard().outcome());
    assertEquals("palate", heard.candidates().get(0).statement().step());
    assertEquals("intact", heard.candidates().get(0).statement().value());
    assertEquals(Source.TAGGER, heard.candidates().get(0).statement().source());
    assertEquals(0, session.record().answers().size());
  }

  @Test
  void aSpokenYesRecordsIt() {
    say(UNLISTED);
    assertEquals(Outcome.COMMAND, say("yes").heard().outcome());
    assertEquals(1, session.record().answers().size());
    assertEquals("intact", session.record().answers().get(0).value());
    assertTrue(session.record().unsure().isEmpty());
    assertTrue(session.record().toConfirm().isEmpty());
  }

  @Test
  void aSpokenNoDismissesIt() {
    say(UNLISTED);
    say("no");
    assertEquals(0, session.record().answers().size());
    assertTrue(session.record().unsure().isEmpty());
  }

  @Test
  void aYesAfterSomethingElseRecordsNothing() {
    say(UNLISTED);
    say("left clavicle intact");
    assertEquals(Outcome.IGNORED, say("yes").heard().outcome());
    assertEquals(1, session.record().answers().size());
    assertEquals(1, session.record().unsure().size());
  }

  @Test
  void whatIsDoubtedOrPlannedOrAboutSomeoneElseIsNoFinding() {
    for (String text :
        List.of(
            "I wonder if there is a murmur",
            "his brother had a cleft palate",
            "we will talk about the red reflex later",
            "call me if the cord gets red")) {
      assertTrue(say(text).candidates().isEmpty(), text);
    }
    assertEquals(0, session.record().answers().size());
  }

  @Test
  void aDenialTheGrammarsDoNotAllowDoesNotBecomeTheNormalValue() {
    Utterance heard = say("I honestly can't see any sort of hydrocele down here on the left");
    assertTrue(
        heard.candidates().stream()
            .noneMatch(candidate -> "descended".equals(candidate.statement().value())));
  }
}
