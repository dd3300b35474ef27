package tiptoe.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import tiptoe.exam.Phase;
import tiptoe.finding.Command;
import tiptoe.session.ExamSession;
import tiptoe.session.Hearing;
import tiptoe.session.Sessions;
import tiptoe.session.Understanding;
import tiptoe.settings.Settings;
import tiptoe.speech.Hypothesis;
import tiptoe.speech.Word;

/** What is heard and what keys ask for, together. */
class SessionTest {
  private static final Understanding understanding = Hearing.understood();

  private final ExamSession session = Sessions.inMemory(understanding, Settings.DEFAULT);

  private void hear(String text, double start, double end) {
    session.hear(new Hypothesis(start, end, words(text, start, end)), 0);
  }

  private static List<Word> words(String text, double start, double end) {
    return Arrays.stream(text.split(" ")).map(word -> new Word(word, start, end, 1)).toList();
  }

  @Test
  void aPhraseThatBeganInAPauseDoesNotCountThoughAKeyEndedThePause() {
    session.command(Command.PAUSE, 10);
    session.command(Command.RESUME, 20);
    hear("left barlow positive", 19, 21);
    assertEquals(0, session.record().answers().size());
    hear("left barlow positive", 22, 24);
    assertEquals(1, session.record().answers().size());
  }

  @Test
  void recordsNothingWhereTheSoundMayAsWellHaveMeantSomethingElse() {
    hearOrElse("left barlow positive", "left barlow negative", 0.5);
    assertEquals(0, session.record().answers().size());
    assertEquals(
        "may also be: left barlow negative", session.record().utterances().get(0).heard().reason());
    hearOrElse("left barlow positive", "um left barlow positive", 0.5);
    assertEquals(1, session.record().answers().size());
  }

  private void hearOrElse(String text, String rival, double margin) {
    List<Hypothesis.Rival> rivals = List.of(new Hypothesis.Rival(rival, margin));
    session.hear(new Hypothesis(1, 2, words(text, 1, 2)).weighed(10, rivals), 0);
  }

  /** Support for each second of free wordings that do not surely say that a key step is normal. */
  private static final double SOMEWHAT = -3.6;

  private static final String UNLISTED = "his right arm hangs there and isn't moving";
  private static final String NORMAL = "his left femoral pulse is easy to feel";

  /** Talk of which the strict hearing made something, and free wordings the sentence. */
  private void hearFreely(String phrases, String free, double start, double support) {
    List<Word> words = words("[unk] " + phrases, start, start + 2);
    List<Word> other = words(free, start, start + 0.3);
    session.hear(
        new Hypothesis(start, start + 2, words)
            .weighed(5, List.of())
            .freely(
                new Hypothesis(start, start + 0.3, other)
                    .weighed(support * 0.3 * other.size(), List.of())),
        0);
  }

  @Test
  void whatFitsFreeWordingsWellIsRecordedAtOnce() {
    hearFreely("milia", UNLISTED, 1, 0);
    assertEquals("reduced", session.record().answers().get(0).value());
  }

  @Test
  void whatIsHeardInFreeWordingsIsUnsureUntilAYesRightBehindIt() {
    hearFreely("milia", NORMAL, 1, SOMEWHAT);
    assertEquals(0, session.record().answers().size());
    assertEquals("heard in free wordings", session.record().utterances().get(0).heard().reason());
    hear("yes", 4, 4.5);
    assertEquals("strong", session.record().answers().get(0).value());
  }

  @Test
  void phrasesInFreeWordingsAreUnsureToo() {
    hearFreely("milia", "left barlow negative", 1, SOMEWHAT);
    assertEquals(0, session.record().answers().size());
    assertEquals(1, session.record().unsure().get(0).candidates().size());
    hear("yes", 4, 4.5);
    assertEquals("negative", session.record().answers().get(0).value());
  }

  @Test
  void freeWordingsThatFitTheSoundBadlyMakePhrasesOfItOtherSpeech() {
    hearFreely("milia", UNLISTED, 1, -60);
    assertTrue(session.record().unsure().isEmpty());
  }

  @Test
  void aYesAfterTalkOrAfterALongWhileRecordsNothing() {
    hearFreely("milia", NORMAL, 1, SOMEWHAT);
    hear("yes", 14, 14.5);
    hearFreely("milia", NORMAL, 20, SOMEWHAT);
    hearFreely("milia", "did you watch the match", 23, -60);
    hear("yes", 25, 25.5);
    assertEquals(0, session.record().answers().size());
    assertEquals(2, session.record().unsure().size());
  }

  @Test
  void phrasesAreUnsureWhereFreeWordingsOfAnotherMeaningFitMuchBetter() {
    Hypothesis phrase = new Hypothesis(1, 3, words("toes normal", 1, 3)).weighed(1, List.of());
    session.hear(phrase.freely(freely("tone is normal")), 0);
    assertEquals(0, session.record().answers().size());
    assertEquals("may also be: toes normal", session.record().unsure().get(0).heard().reason());
    session.hear(phrase.freely(freely("toes normal")), 0);
    assertEquals(2, session.record().answers().size());
  }

  private static Hypothesis freely(String text) {
    return new Hypothesis(1, 1.5, words(text, 1, 1.5)).weighed(9, List.of());
  }

  @Test
  void aKeyStrikesWhatWasHeardAndItsFlag() {
    hear("left barlow positive", 1, 3);
    assertEquals(1, session.record().openFlags().size());
    session.command(Command.STRIKE, 4);
    assertEquals(0, session.record().answers().size());
    assertEquals(0, session.record().openFlags().size());
  }

  @Test
  void endingByKeysAsksOnceMoreWhileKeyStepsAreMissing() {
    session.command(Command.END_EXAM, 1);
    assertEquals(Phase.ENDING, session.record().phase());
    session.command(Command.NO, 2);
    assertEquals(Phase.LISTENING, session.record().phase());
    session.command(Command.END_EXAM, 3);
    session.command(Command.END_EXAM, 4);
    assertEquals(Phase.ENDED, session.record().phase());
  }
}
