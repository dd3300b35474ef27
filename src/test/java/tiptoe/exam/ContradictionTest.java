package tiptoe.exam;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tiptoe.finding.Command;
import tiptoe.finding.FindingNotation;
import tiptoe.language.Meaning;

/** What contradicts what is common practice, no source. */
class ContradictionTest {
  private final Bedside bed = new Bedside();

  @ParameterizedTest
  @CsvSource(
      textBlock =
          """
          barlow.left positive,  barlow.left negative
          clavicle.left intact,  clavicle.left crepitus
          clavicle.left crepitus,  clavicle.left intact !crepitus
          clavicle.left intact !crepitus,  clavicle.left crepitus
          head-shape normal,  head-shape moulding
          umbilical-hernia none,  umbilical-hernia present
          posterior-fontanelle open,  posterior-fontanelle closed
          weight 3400 g,  weight 4300 g
          face symmetric,  face.left facial-palsy
          moro.left asymmetric,  moro.right asymmetric
          murmur none !present,  murmur present
          lumbosacral dimple base-visible=yes,  lumbosacral dimple base-visible=no
          murmur present radiation=none,  murmur present radiation=axilla
          red-reflex.left absent,  red-reflex.right present symmetric=yes
          red-reflex.right present symmetric=yes,  red-reflex.left white
          meconium passed,  meconium not-yet
          """)
  void asksAndLetsTheOlderStandUntilItIsAnswered(String older, String newer) {
    bed.find(older);
    String before = bed.answers();
    bed.find(newer);
    assertEquals(before, bed.answers());
    Contradiction found = bed.record().contradictions().get(0);
    assertEquals(FindingNotation.parse(older), found.older().statement());
    assertEquals(FindingNotation.parse(newer), found.newer().statement());
    assertTrue(found.older().at().isBefore(found.newer().at()));
    assertEquals(bed.question(), found.text());

    bed.command(Command.NO);
    assertEquals(before, bed.answers());
    assertTrue(bed.record().contradictions().isEmpty());
  }

  @ParameterizedTest
  @CsvSource(
      textBlock =
          """
          clavicle.left crepitus,  clavicle.left swelling
          clavicle.left intact,  clavicle.right crepitus
          skin clear,  skin milia
          colour pink,  colour acrocyanosis
          testis.left descended,  testis.left hydrocele
          scalp clear !caput,  scalp bruising
          scalp.left cephalohaematoma,  scalp.right cephalohaematoma
          skin bruising place=face,  skin bruising place=back
          red-reflex.left present symmetric=yes,  red-reflex.right present symmetric=yes
          """)
  void standsBesideWhatItDoesNotContradict(String older, String newer) {
    bed.find(older);
    bed.find(newer);
    assertTrue(bed.record().contradictions().isEmpty());
    assertTrue(bed.record().statements().stream().noneMatch(said -> said.status() == Status.WAITS));
  }

  @Test
  void aDenialBesideAFindingIsShownWithTheFinding() {
    bed.find("scalp clear !caput");
    assertEquals("scalp clear !caput", bed.answers());
    bed.find("scalp bruising");
    assertEquals("scalp bruising !caput", bed.answers());
    bed.command(Command.STRIKE);
    assertEquals("scalp clear !caput", bed.answers());
  }

  @Test
  void yesLetsTheNewerStand() {
    bed.find("barlow.left negative");
    bed.find("barlow.left positive");
    bed.command(Command.YES);
    assertEquals("barlow.left positive", bed.answers());
    assertEquals("1 replaced, 2 stands", bed.statuses());
  }

  @Test
  void sayingItAgainAsTheAnswerSettlesIt() {
    bed.find("barlow.left negative");
    bed.find("barlow.left positive");
    bed.say(
        "negative",
        new Meaning.Answers(bed.exam.dialogue().open()),
        Bedside.finding("barlow.left negative", false));
    assertEquals("barlow.left negative", bed.answers());
    assertTrue(bed.record().openQuestions().isEmpty());
    assertEquals("1 replaced, 2 replaced, 3 stands", bed.statuses());
  }

  @Test
  void aCorrectionSettlesIt() {
    bed.find("barlow.left negative");
    bed.find("barlow.left positive");
    bed.correct("barlow.left positive");
    assertEquals("barlow.left positive", bed.answers());
    assertTrue(bed.record().openQuestions().isEmpty());
  }

  @Test
  void barlowNegativeOnBothSidesAfterPositiveOnTheLeftAsksAboutTheLeft() {
    bed.find("barlow.left positive");
    bed.find("barlow.right negative", "barlow.left negative");
    assertEquals("barlow.right negative, barlow.left positive", bed.answers());
    assertEquals(
        "left Barlow: first positive, then negative; keep the first or the second?",
        bed.question());
  }

  @Test
  void oneAnswerSettlesBothSidesOfARedReflexThatIsSymmetricAfterAll() {
    bed.find("red-reflex.left absent");
    bed.find("red-reflex.left present symmetric=yes", "red-reflex.right present symmetric=yes");
    assertEquals(2, bed.record().contradictions().size());
    bed.command(Command.YES);
    assertEquals(
        "red-reflex.right present symmetric=yes, red-reflex.left present symmetric=yes",
        bed.answers());
    assertTrue(bed.record().contradictions().isEmpty());
  }

  @Test
  void symmetricFallsWhenACorrectionMakesTheOtherSideAbsent() {
    bed.find("red-reflex.left present symmetric=yes", "red-reflex.right present symmetric=yes");
    bed.correct("red-reflex.left absent");
    assertEquals("red-reflex.right present, red-reflex.left absent", bed.answers());
  }

  @Test
  void testesInAGirlAreAskedAbout() {
    bed.fact("sex", "girl");
    bed.find("testis.left descended");
    assertEquals("", bed.answers());
    assertEquals(
        "testis was stated, but this baby is a girl; is that right, yes or no?", bed.question());
    bed.command(Command.YES);
    assertEquals("testis.left descended", bed.answers());
  }

  @Test
  void labiaOfABabyThatTurnsOutToBeABoyAreAskedAbout() {
    bed.find("labia normal");
    bed.fact("sex", "boy");
    assertEquals("", bed.answers());
    assertEquals(
        "labia was stated, but this baby is a boy; is that right, yes or no?", bed.question());
    bed.command(Command.NO);
    assertEquals("1 withdrawn", bed.statuses());
  }

  @Test
  void anotherSexThanStatedBeforeIsAskedAboutAndThenSettlesTheFindings() {
    bed.fact("sex", "girl");
    bed.find("testis.left descended");
    bed.fact("sex", "boy");
    assertTrue(bed.record().baby().is("sex", "girl"));
    assertEquals("sex: first girl, then boy; is it boy, yes or no?", bed.question());
    assertEquals(null, bed.exam.dialogue().open(), "it is about no step");
    bed.command(Command.YES);
    assertTrue(bed.record().baby().is("sex", "boy"));
    assertEquals("testis.left descended", bed.answers());
    assertTrue(bed.record().openQuestions().isEmpty());
  }

  @Test
  void whatWaitsStandsOnceNothingIsAgainstIt() {
    bed.find("barlow.left negative");
    bed.find("barlow.left positive");
    bed.exam.review("Dr Reed").reject(1, "mis-heard");
    assertEquals("barlow.left positive", bed.answers());
    assertEquals("1 rejected, 2 stands", bed.statuses());
  }

  @Test
  void keepTheFirstWithdrawsTheSecond() {
    bed.find("barlow.left negative");
    bed.find("barlow.left positive");
    bed.say("keep the first", new Meaning.Answers(bed.exam.dialogue().open()));
    assertEquals("barlow.left negative", bed.answers());
    assertEquals("1 stands, 2 withdrawn", bed.statuses());
    assertTrue(bed.record().openQuestions().isEmpty());
  }

  @Test
  void keepTheSecondLetsItStand() {
    bed.find("red-reflex.right present symmetric=yes");
    bed.find("red-reflex.left absent");
    assertEquals(
        "red reflex: first right present (symmetric yes), then left absent; keep the first or the"
            + " second?",
        bed.question());
    bed.say(
        "keep the second",
        new Meaning.Answers(bed.exam.dialogue().open()),
        Bedside.finding("red-reflex.left absent", true));
    assertEquals("red-reflex.right present, red-reflex.left absent", bed.answers());
    assertEquals("1 stands, 2 stands", bed.statuses());
  }

  @Test
  void genitaliaNormalSaysNothingOfWhatDependsOnASexThatIsNotKnown() {
    bed.find(
        "labia normal [region]", "penis normal [region]", "genital-appearance typical [region]");
    assertEquals("genital-appearance typical [region]", bed.answers());
    bed.fact("sex", "girl");
    bed.find("labia normal [region]", "penis normal [region]");
    assertEquals("genital-appearance typical [region], labia normal [region]", bed.answers());
  }

  @Test
  void whatWasNotExaminedOfTheOtherSexRaisesNoQuestion() {
    bed.find("testis not-examined", "labia not-examined");
    bed.fact("sex", "girl");
    assertEquals("labia not-examined", bed.answers());
    bed.find("penis not-examined");
    assertTrue(bed.record().openQuestions().isEmpty());
  }

  @Test
  void aDenialDoesNotLetThroughWhatContradictsOutright() {
    bed.find("clavicle.left swelling");
    bed.find("clavicle.left intact !crepitus");
    bed.find("clavicle.left intact");
    assertEquals("clavicle.left swelling !crepitus", bed.answers());
    assertEquals(
        "left clavicle: first swelling, then intact; keep the first or the second?",
        bed.question());
  }

  @Test
  void strikingTheSexLetsTheFindingStandThatItHadPutInDoubt() {
    bed.find("testis.left descended");
    bed.fact("sex", "girl");
    assertEquals("1 waits", bed.statuses());
    bed.command(Command.STRIKE);
    assertEquals("1 stands", bed.statuses());
    assertTrue(bed.record().openQuestions().isEmpty());
  }

  @Test
  void whatWaitedAgainstTheOlderThenWaitsAgainstTheNewerOne() {
    bed.find("barlow.left positive");
    bed.find("barlow.left not-examined");
    bed.find("barlow.left negative");
    bed.command(Command.YES);
    assertEquals("barlow.left negative", bed.answers());
    assertEquals(
        "left Barlow: first negative, then not examined; keep the first or the second?",
        bed.question());
    bed.command(Command.YES);
    assertEquals("barlow.left not-examined", bed.answers());
    assertTrue(bed.record().openQuestions().isEmpty());
  }

  /** Examined on 1 March 2026 at 9: born the day before at 3 the baby is 30 hours old. */
  @ParameterizedTest
  @CsvSource(
      textBlock =
          """
          2026-02-28T03:00, 30, false
          2026-02-28T03:00, 32, false
          2026-02-28T03:00, 33, true
          2026-02-28T03:00, 18, true
          2026-02-28T03:00, 48, false
          2026-02-28T03:00, 72, true
          2026-02-28T05:00:00+02:00, 30, false
          """)
  void anAgeThatDoesNotFitTheTimeOfBirthIsAskedAbout(String born, String age, boolean asked) {
    for (String[] facts :
        new String[][] {{"born-at", born, "age", age}, {"age", age, "born-at", born}}) {
      Bedside one = new Bedside();
      one.fact(facts[0], facts[1]);
      one.fact(facts[2], facts[3]);
      assertEquals(!asked, one.record().baby().is(facts[2], facts[3]), facts[2]);
      assertEquals(asked, one.record().openQuestion().isPresent());
      if (asked) {
        assertTrue(one.question().startsWith("age and time of birth do not fit: "), one.question());
        one.command(Command.YES);
        assertEquals(facts[3], one.record().baby().fact(facts[2]).orElseThrow());
        assertEquals(facts[1], one.record().baby().fact(facts[0]).orElseThrow());
      }
    }
  }
}
