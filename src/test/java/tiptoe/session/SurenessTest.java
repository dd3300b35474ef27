package tiptoe.session;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import tiptoe.finding.Finding;
import tiptoe.language.Dialogue;
import tiptoe.language.Interpretation;
import tiptoe.language.Meaning;
import tiptoe.protocol.Side;
import tiptoe.speech.Hypothesis;
import tiptoe.speech.Hypothesis.Rival;
import tiptoe.speech.Word;

/** Numbers worked out by hand from weights typed in here; those in use are others. */
class SurenessTest {
  /** Log odds: twice the share of the ways less 1, and 4 less for what is added. */
  private static final Sureness SURENESS =
      new Sureness(
          0.05,
          0.5,
          new Sureness.Phrases(0.5, 0.7, 0.75, -1, 2, 0, -4, -1, 0),
          new Sureness.Freely(0.5, 0.7, 0, -1, 2, 0));

  private static final Meaning MURMUR = states("murmur", null, "present");
  private static final Meaning NEXT = new Meaning.Heading("hips");
  private static final Meaning HIPS = states("barlow", Side.LEFT, "negative");

  private static final Map<String, List<Meaning>> MEANINGS =
      Map.of(
          "murmur", List.of(MURMUR),
          "murmur hips", List.of(MURMUR, HIPS),
          "hips", List.of(HIPS),
          "next", List.of(NEXT),
          "next hips", List.of(NEXT, HIPS),
          "can hips", List.of(HIPS),
          "can't hips", List.of(),
          "can next hips", List.of(NEXT, HIPS),
          "can't next hips", List.of(HIPS),
          "talk", List.of());

  private static Meaning states(String step, Side side, String value) {
    return new Meaning.States(Finding.of(step, side, value), false);
  }

  private static Interpretation interpret(List<String> words) {
    return new Interpretation(
        MEANINGS.get(String.join(" ", words)), List.of(), List.of(), false, Dialogue.START);
  }

  private static Hypothesis heard(String text, Rival... rivals) {
    List<Word> words = Arrays.stream(text.split(" ")).map(word -> new Word(word, 0, 1, 1)).toList();
    return new Hypothesis(0, 1, words).weighed(0, List.of(rivals));
  }

  private static boolean inPhrases(Meaning meaning, Hypothesis heard) {
    return SURENESS.inPhrases(heard, SurenessTest::interpret).test(meaning);
  }

  @Test
  void aStatementOfEveryWayIsSure() {
    assertTrue(inPhrases(MURMUR, heard("murmur").freely(heard("murmur"))));
  }

  /** Shares 0.56 and 0.44 by exp(−0.5 · 0.5): log odds 0.12 and, of the hips, −0.12. */
  @Test
  void aKeyStepIsCalledNormalOnlyWhereThatIsSurerThanAMurmurMustBe() {
    Hypothesis murmur = heard("murmur", new Rival("talk", 0.5)).freely(heard("murmur"));
    Hypothesis hips = heard("hips", new Rival("talk", 0.5)).freely(heard("hips"));
    assertTrue(inPhrases(MURMUR, murmur));
    assertFalse(inPhrases(HIPS, hips));
    // A share of 1 has log odds 1, probability 0.73.
    assertTrue(inPhrases(HIPS, heard("hips").freely(heard("hips"))));
  }

  /** A share of 1 has log odds 1, probability 0.73; beside a finding a heading decides nothing. */
  @Test
  void aHeadingAloneMustBeSurerThanAFinding() {
    assertFalse(inPhrases(NEXT, heard("next").freely(heard("next"))));
    assertTrue(inPhrases(NEXT, heard("next hips").freely(heard("next hips"))));
    assertTrue(inPhrases(HIPS, heard("next hips").freely(heard("next hips"))));
  }

  @Test
  void aStatementThatPhrasesAddOverFreeWordingsWhichHearTheRestIsNotSure() {
    Hypothesis added = heard("murmur hips").freely(heard("murmur"));
    assertTrue(inPhrases(MURMUR, added));
    assertFalse(inPhrases(HIPS, added));
  }

  @Test
  void nothingIsSaidOfAnUtteranceThatWasHeardOnce() {
    List<Word> words = List.of(new Word("hips", 0, 1, 1));
    assertTrue(inPhrases(HIPS, new Hypothesis(0, 1, words)));
  }

  /** Free wordings that all say it, and phrases that say it or not: log odds 2 and 1. */
  @Test
  void freeWordingsStateSurelyWhatAllWaysSay() {
    assertTrue(freely(HIPS, heard("talk"), heard("hips")));
    assertTrue(freely(HIPS, heard("hips"), heard("hips")));
    assertFalse(freely(HIPS, heard("talk"), heard("hips", new Rival("talk", 0))));
    assertFalse(freely(MURMUR, heard("murmur"), heard("hips")));
  }

  /** "I can feel" may have been "I can't feel", whatever else was heard. */
  @Test
  void whatDiffersByCanAndCannotAloneIsNeverSure() {
    assertFalse(freely(HIPS, heard("talk"), heard("can hips")));
    assertFalse(inPhrases(HIPS, heard("can hips").freely(heard("can hips"))));
    assertTrue(freely(HIPS, heard("talk"), heard("can next hips")));
  }

  private static boolean freely(Meaning meaning, Hypothesis heard, Hypothesis free) {
    return SURENESS.freely(heard, free, false, SurenessTest::interpret).test(meaning);
  }

  /** Phrases that fit: other ways to hear them may mean something else. */
  @Test
  void freeWordingsDecideNothingThatPhrasesLeaveOpen() {
    Hypothesis open = heard("hips", new Rival("talk", 0));
    assertTrue(SURENESS.freely(open, heard("hips"), false, SurenessTest::interpret).test(HIPS));
    assertFalse(SURENESS.freely(open, heard("hips"), true, SurenessTest::interpret).test(HIPS));
  }

  @Test
  void whatIsShippedAsksForMoreWhereNobodyLooksAgain() {
    Sureness shipped = Sureness.shipped();
    assertTrue(shipped.phrases().keyNormalFrom() > shipped.phrases().recordFrom());
    assertTrue(shipped.freely().keyNormalFrom() > shipped.freely().recordFrom());
    assertEquals(0.95, shipped.phrases().keyNormalFrom());
    assertTrue(shipped.freely().keyNormalFrom() > 0.95);
  }

  /** Log odds are 9 whatever the share. */
  @Test
  void whatMostWaysToHearFreeWordingsDoNotStateIsNeverSure() {
    Sureness.Freely strict = new Sureness.Freely(0.5, 0.7, 0.5, 9, 0, 0);
    for (double share : new double[] {0.44, 0.56}) {
      double[] features = {share, 0};
      assertEquals(share > 0.5, strict.isSure(new Sureness.Case(MURMUR, features)));
      assertTrue(
          new Sureness.Freely(0.5, 0.7, 0, 9, 0, 0).isSure(new Sureness.Case(MURMUR, features)));
    }
  }
}
