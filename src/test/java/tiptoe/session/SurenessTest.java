package tiptoe.session;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import org.junit.jupiter.api.Test;
import tiptoe.finding.Finding;
import tiptoe.finding.Question;
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
          0.3,
          new Sureness.Phrases(0.5, 0.7, 0.75, -1, 2, 0, -4, -1, -1.5),
          new Sureness.Freely(0.5, 0.7, 0.2, 0, 1, -1, 2, 0, 0, 0));

  private static final Meaning MURMUR = states("murmur", null, "present");
  private static final Meaning NEXT = new Meaning.Heading("hips");
  private static final Meaning HIPS = states("barlow", Side.LEFT, "negative");

  private static final Meaning CLUNK = states("barlow", Side.LEFT, "positive");
  private static final Meaning FIRST = new Meaning.Fact("first-born", "yes");
  private static final Meaning FIFTY = new Meaning.Fact("age", "50");

  private static final Map<String, List<Meaning>> MEANINGS = new HashMap<>();

  static {
    MEANINGS.putAll(
        Map.of("clunk", List.of(CLUNK), "first", List.of(FIRST), "fifty", List.of(FIFTY)));
    Finding loud = Finding.of("murmur", null, "present").withDetails(Map.of("grade", "3"));
    MEANINGS.put("loud murmur", List.of(new Meaning.States(loud, false)));
    Question side = Question.side(Finding.of("barlow", null, "positive"));
    MEANINGS.put("the left", List.of(new Meaning.Answers(side), CLUNK));
    MEANINGS.put("fifteen", List.of(new Meaning.Fact("age", "15")));
    MEANINGS.putAll(
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
            "talk", List.of()));
  }

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
    Rival talk = new Rival("talk", 0.5);
    Hypothesis murmur = heard("murmur", talk).freely(heard("murmur", talk));
    Hypothesis hips = heard("hips", talk).freely(heard("hips", talk));
    assertTrue(inPhrases(MURMUR, murmur));
    assertFalse(inPhrases(HIPS, hips));
    // A share of 1 has log odds 1, probability 0.73.
    assertTrue(inPhrases(HIPS, heard("hips").freely(heard("hips"))));
  }

  @Test
  void whatNearlyAllFreeWordingsStateIsSureWhateverOtherPhrasesAreNear() {
    Rival talk = new Rival("talk", 0.1);
    Hypothesis near = heard("murmur", talk, new Rival("next", 0.1));
    assertFalse(inPhrases(MURMUR, near.freely(heard("murmur", talk))));
    assertTrue(inPhrases(MURMUR, near.freely(heard("murmur"))));
  }

  @Test
  void otherPhrasesCountForNothingWhereFreeWordingsSayTheSameAndNothingElse() {
    Rival talk = new Rival("talk", 0.1);
    assertTrue(settled("talk", heard("murmur", talk).freely(heard("murmur"))));
    assertFalse(settled("talk", heard("murmur", talk)));
    assertFalse(settled("talk", heard("murmur", talk).freely(heard("murmur", talk))));
    assertFalse(settled("talk", heard("murmur", talk).freely(heard("murmur hips"))));
    assertFalse(settled("murmur", heard("talk", new Rival("murmur", 0.1)).freely(heard("talk"))));
  }

  /** "Symmetrical" where "asymmetrical" was said: nobody would look again. */
  @Test
  void thatAKeyStepIsNormalIsSettledByNothingElse() {
    Rival clunk = new Rival("clunk", 0.1);
    assertFalse(settled("clunk", heard("hips", clunk).freely(heard("hips"))));
    assertFalse(inPhrases(HIPS, heard("hips", clunk).freely(heard("hips"))));
  }

  /** A grade of two heard as three would be a false entry however sure the murmur is. */
  @Test
  void otherDetailsOfTheSameFindingAlwaysCount() {
    Hypothesis murmur = heard("murmur", new Rival("loud murmur", 0.1)).freely(heard("murmur"));
    assertFalse(settled("loud murmur", murmur));
    assertTrue(settled("talk", murmur));
  }

  private static boolean settled(String other, Hypothesis heard) {
    return SURENESS.settled(heard, SurenessTest::interpret).test(other);
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

  /** "Right" to "left, right or both?": by itself it would state nothing in free wordings. */
  @Test
  void anAnswerToWhatWasAskedNeedsNoFreeWordings() {
    assertFalse(inPhrases(CLUNK, heard("clunk")));
    assertTrue(inPhrases(CLUNK, heard("the left")));
    assertTrue(inPhrases(CLUNK, heard("the left").freely(heard("talk"))));
    assertFalse(inPhrases(CLUNK, heard("the left").freely(heard("hips"))));
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

  @Test
  void theOtherWaysToHearTalkAreNotRead() {
    Hypothesis free = heard("talk", new Rival("hips", 1));
    Hypothesis heard = heard("talk", new Rival("murmur", 1)).freely(free);
    List<String> read = new ArrayList<>();
    Function<List<String>, Interpretation> interpret =
        words -> {
          read.add(String.join(" ", words));
          return interpret(words);
        };
    assertEquals(Map.of(), SURENESS.inFreeWordings(heard, free, false, interpret));
    assertEquals(List.of(), SURENESS.ofPhrases(heard, interpret));
    assertEquals(Set.of("talk"), Set.copyOf(read));
  }

  private static boolean freely(Meaning meaning, Hypothesis heard, Hypothesis free) {
    return freely(meaning, heard, free, false);
  }

  private static boolean freely(Meaning meaning, Hypothesis heard, Hypothesis free, boolean fits) {
    return SURENESS.inFreeWordings(heard, free, fits, SurenessTest::interpret).get(meaning)
        == Sureness.Rating.SURE;
  }

  /** Phrases that fit: other ways to hear them may mean something else. */
  @Test
  void freeWordingsDecideNothingThatPhrasesLeaveOpen() {
    Hypothesis open = heard("hips", new Rival("talk", 0));
    assertTrue(freely(HIPS, open, heard("hips"), false));
    assertFalse(freely(HIPS, open, heard("hips"), true));
  }

  @Test
  void whatIsShippedAsksForMoreWhereNobodyLooksAgain() {
    Sureness shipped = Sureness.shipped();
    assertTrue(shipped.phrases().keyNormalFrom() > shipped.phrases().recordFrom());
    assertTrue(shipped.freely().keyNormalFrom() > shipped.freely().recordFrom());
    assertEquals(0.95, shipped.phrases().keyNormalFrom());
    assertEquals(0.95, shipped.freely().keyNormalFrom());
  }

  /** Log odds are 9 whatever the share: 0.56 and 0.44 by exp(−0.5 · 0.5). */
  @Test
  void whatMostWaysToHearFreeWordingsDoNotStateIsNeverSure() {
    Sureness strict = freely(new Sureness.Freely(0.5, 0.7, 0.2, 0.5, 1, 9, 0, 0, 0, 0));
    Hypothesis most = heard("murmur", new Rival("talk", 0.5));
    Hypothesis few = heard("murmur", new Rival("talk", 0), new Rival("talk", 0.5));
    assertEquals(Map.of(MURMUR, Sureness.Rating.SURE), free(strict, heard("talk"), most));
    assertEquals(Map.of(MURMUR, Sureness.Rating.OPEN), free(strict, heard("talk"), few));
  }

  private static Sureness freely(Sureness.Freely weights) {
    return new Sureness(0.05, 0.5, 0.3, SURENESS.phrases(), weights);
  }

  private static Map<Meaning, Sureness.Rating> free(
      Sureness by, Hypothesis heard, Hypothesis free) {
    return by.inFreeWordings(heard, free, false, SurenessTest::interpret);
  }

  /** Log odds 1 where all ways say it, probability 0.73; 0 where half of them do. */
  @Test
  void aFactIsOfferedAsAFindingIsButLeftOutWhereMostWaysDoNotStateIt() {
    Sureness asks = freely(new Sureness.Freely(0.7, 0.7, 0.6, 0.55, 1, -1, 2, 0, 0, 0));
    assertEquals(Map.of(FIRST, Sureness.Rating.SURE), free(asks, heard("talk"), heard("first")));
    Hypothesis likely = heard("first", new Rival("talk", 3));
    assertEquals(Map.of(FIRST, Sureness.Rating.LIKELY), free(asks, heard("talk"), likely));
    Hypothesis most = heard("first", new Rival("talk", 1));
    assertEquals(Map.of(FIRST, Sureness.Rating.OPEN), free(asks, heard("talk"), most));
    assertEquals(Map.of(), free(asks, heard("talk"), heard("first", new Rival("talk", 0))));
  }

  @Test
  void aFactThatPhrasesLeaveOpenIsNotSure() {
    Hypothesis open = heard("first", new Rival("talk", 0));
    assertEquals(
        Map.of(FIRST, Sureness.Rating.OPEN),
        SURENESS.inFreeWordings(open, heard("first"), true, SurenessTest::interpret));
    assertEquals(
        Map.of(FIRST, Sureness.Rating.SURE),
        SURENESS.inFreeWordings(heard("first"), heard("first"), true, SurenessTest::interpret));
  }

  /** Phrases at equal cost: fifty and fifteen. */
  @Test
  void aNumberIsNotSureWherePhrasesMayGiveAnother() {
    Sureness by = freely(new Sureness.Freely(0.5, 0.7, 0.2, 0, 0.25, 9, 0, 0, 0, 0));
    Hypothesis either = heard("fifty", new Rival("fifteen", 0));
    assertEquals(Map.of(FIFTY, Sureness.Rating.SURE), free(by, heard("fifty"), heard("fifty")));
    assertEquals(Map.of(FIFTY, Sureness.Rating.OPEN), free(by, either, heard("fifty")));
  }

  @Test
  void nothingIsSureBesideSoundThatNoWordAccountsFor() {
    Hypothesis free = heard("murmur");
    Hypothesis both = free.freely(free);
    assertTrue(inPhrases(MURMUR, both.leftOver(0.29)));
    assertFalse(inPhrases(MURMUR, both.leftOver(0.3)));
    assertEquals(
        Map.of(MURMUR, Sureness.Rating.SURE),
        SURENESS.inFreeWordings(both, free, true, SurenessTest::interpret));
    assertEquals(
        Map.of(MURMUR, Sureness.Rating.LIKELY),
        SURENESS.inFreeWordings(both.leftOver(0.3), free, true, SurenessTest::interpret));
  }

  /** Log odds of the hips: 1, and 5 less for each time that nothing bears them out. */
  @Test
  void phrasesInWhosePlaceFreeWordingsStateSomethingElseAreLessSureThanAlone() {
    Sureness by =
        new Sureness(
            0.05,
            0.5,
            0.3,
            new Sureness.Phrases(0.01, 0.01, 0.01, -1, 2, 0, 0, 0, -5),
            SURENESS.freely());
    Hypothesis alone = heard("hips").freely(heard("talk"));
    Hypothesis otherwise = heard("hips").freely(heard("clunk"));
    assertTrue(by.inPhrases(alone, SurenessTest::interpret).test(HIPS));
    assertFalse(by.inPhrases(otherwise, SurenessTest::interpret).test(HIPS));
  }
}
