package tiptoe.exam;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tiptoe.finding.Command;
import tiptoe.language.Meaning;

/** What contradicts what is common practice, no source. */
class ContradictionTest {
  private final Bedside bed = new Bedside();

  @ParameterizedTest
  @CsvSource(
      textBlock =
          """
          left barlow positive,          left barlow negative
          left clavicle intact,          left clavicle crepitus
          left clavicle crepitus,        left clavicle intact no:crepitus
          left clavicle intact no:crepitus, left clavicle crepitus
          head-shape normal,             head-shape moulding
          umbilical-hernia none,         umbilical-hernia present
          posterior-fontanelle open,     posterior-fontanelle closed
          weight 3400,                   weight 4300
          face symmetric,                left face facial-palsy
          left moro asymmetric,          right moro asymmetric
          murmur none no:present,        murmur present
          lumbosacral dimple base-visible=yes, lumbosacral dimple base-visible=no
          murmur present radiation=none, murmur present radiation=axilla
          left red-reflex absent,        right red-reflex present symmetric=yes
          right red-reflex present symmetric=yes, left red-reflex white
          meconium passed,               meconium not-yet
          """)
  void asksAndLetsTheOlderStandUntilItIsAnswered(String older, String newer) {
    bed.find(older);
    String before = bed.answers();
    bed.find(newer);
    assertEquals(before, bed.answers());
    Contradiction found = bed.record().contradictions().get(0);
    assertEquals(older, found.older().words());
    assertEquals(newer, found.newer().words());
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
          left clavicle crepitus,    left clavicle swelling
          left clavicle intact,      right clavicle crepitus
          skin clear,                skin milia
          colour pink,               colour acrocyanosis
          left testis descended,     left testis hydrocele
          scalp clear no:caput,      scalp bruising
          left scalp cephalohaematoma, right scalp cephalohaematoma
          skin bruising place=face,  skin bruising place=back
          left red-reflex present symmetric=yes, right red-reflex present symmetric=yes
          """)
  void standsBesideWhatItDoesNotContradict(String older, String newer) {
    bed.find(older);
    bed.find(newer);
    assertTrue(bed.record().contradictions().isEmpty());
    assertTrue(bed.record().statements().stream().noneMatch(said -> said.status() == Status.WAITS));
  }

  @Test
  void aDenialBesideAFindingIsShownWithTheFinding() {
    bed.find("scalp clear no:caput");
    assertEquals("scalp clear no:caput", bed.answers());
    bed.find("scalp bruising");
    assertEquals("scalp bruising no:caput", bed.answers());
    bed.command(Command.STRIKE);
    assertEquals("scalp clear no:caput", bed.answers());
  }

  @Test
  void yesLetsTheNewerStand() {
    bed.find("left barlow negative");
    bed.find("left barlow positive");
    bed.command(Command.YES);
    assertEquals("left barlow positive", bed.answers());
    assertEquals("1 replaced, 2 stands", bed.statuses());
  }

  @Test
  void sayingItAgainAsTheAnswerSettlesIt() {
    bed.find("left barlow negative");
    bed.find("left barlow positive");
    bed.say(
        "negative",
        new Meaning.Answers(bed.exam.dialogue().open()),
        Bedside.finding("left barlow negative", false));
    assertEquals("left barlow negative", bed.answers());
    assertTrue(bed.record().openQuestions().isEmpty());
    assertEquals("1 replaced, 2 replaced, 3 stands", bed.statuses());
  }

  @Test
  void aCorrectionSettlesIt() {
    bed.find("left barlow negative");
    bed.find("left barlow positive");
    bed.correct("left barlow positive");
    assertEquals("left barlow positive", bed.answers());
    assertTrue(bed.record().openQuestions().isEmpty());
  }

  @Test
  void barlowNegativeOnBothSidesAfterPositiveOnTheLeftAsksAboutTheLeft() {
    bed.find("left barlow positive");
    bed.find("right barlow negative", "left barlow negative");
    assertEquals("right barlow negative, left barlow positive", bed.answers());
    assertEquals(
        "left Barlow: first positive, then negative; keep the first or the second?",
        bed.question());
  }

  @Test
  void oneAnswerSettlesBothSidesOfARedReflexThatIsSymmetricAfterAll() {
    bed.find("left red-reflex absent");
    bed.find("left red-reflex present symmetric=yes", "right red-reflex present symmetric=yes");
    assertEquals(2, bed.record().contradictions().size());
    bed.command(Command.YES);
    assertEquals(
        "right red-reflex present symmetric=yes, left red-reflex present symmetric=yes",
        bed.answers());
    assertTrue(bed.record().contradictions().isEmpty());
  }

  @Test
  void symmetricFallsWhenACorrectionMakesTheOtherSideAbsent() {
    bed.find("left red-reflex present symmetric=yes", "right red-reflex present symmetric=yes");
    bed.correct("left red-reflex absent");
    assertEquals("right red-reflex present, left red-reflex absent", bed.answers());
  }

  @Test
  void testesInAGirlAreAskedAbout() {
    bed.fact("sex", "girl");
    bed.find("left testis descended");
    assertEquals("", bed.answers());
    assertEquals(
        "testis was stated, but this baby is a girl; is that right, yes or no?", bed.question());
    bed.command(Command.YES);
    assertEquals("left testis descended", bed.answers());
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
    bed.find("left testis descended");
    bed.fact("sex", "boy");
    assertTrue(bed.record().baby().is("sex", "girl"));
    assertEquals("sex: first girl, then boy; is it boy, yes or no?", bed.question());
    assertEquals(null, bed.exam.dialogue().open(), "it is about no step");
    bed.command(Command.YES);
    assertTrue(bed.record().baby().is("sex", "boy"));
    assertEquals("left testis descended", bed.answers());
    assertTrue(bed.record().openQuestions().isEmpty());
  }

  @Test
  void whatWaitsStandsOnceNothingIsAgainstIt() {
    bed.find("left barlow negative");
    bed.find("left barlow positive");
    bed.exam.review("Dr Reed").reject(1, "mis-heard");
    assertEquals("left barlow positive", bed.answers());
    assertEquals("1 rejected, 2 stands", bed.statuses());
  }

  @Test
  void keepTheFirstWithdrawsTheSecond() {
    bed.find("left barlow negative");
    bed.find("left barlow positive");
    bed.say("keep the first", new Meaning.Answers(bed.exam.dialogue().open()));
    assertEquals("left barlow negative", bed.answers());
    assertEquals("1 stands, 2 withdrawn", bed.statuses());
    assertTrue(bed.record().openQuestions().isEmpty());
  }

  @Test
  void keepTheSecondLetsItStand() {
    bed.find("right red-reflex present symmetric=yes");
    bed.find("left red-reflex absent");
    assertEquals(
        "red reflex: first right present (symmetric yes), then left absent; keep the first or the"
            + " second?",
        bed.question());
    bed.say(
        "keep the second",
        new Meaning.Answers(bed.exam.dialogue().open()),
        Bedside.finding("left red-reflex absent", true));
    assertEquals("right red-reflex present, left red-reflex absent", bed.answers());
    assertEquals("1 stands, 2 stands", bed.statuses());
  }

  @Test
  void genitaliaNormalSaysNothingOfWhatDependsOnASexThatIsNotKnown() {
    bed.find("labia normal group", "penis normal group", "genital-appearance typical group");
    assertEquals("genital-appearance typical group", bed.answers());
    bed.fact("sex", "girl");
    bed.find("labia normal group", "penis normal group");
    assertEquals("genital-appearance typical group, labia normal group", bed.answers());
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
    bed.find("left clavicle swelling");
    bed.find("left clavicle intact no:crepitus");
    bed.find("left clavicle intact");
    assertEquals("left clavicle swelling no:crepitus", bed.answers());
    assertEquals(
        "left clavicle: first swelling, then intact; keep the first or the second?",
        bed.question());
  }

  @Test
  void strikingTheSexLetsTheFindingStandThatItHadPutInDoubt() {
    bed.find("left testis descended");
    bed.fact("sex", "girl");
    assertEquals("1 waits", bed.statuses());
    bed.command(Command.STRIKE);
    assertEquals("1 stands", bed.statuses());
    assertTrue(bed.record().openQuestions().isEmpty());
  }

  @Test
  void whatWaitedAgainstTheOlderThenWaitsAgainstTheNewerOne() {
    bed.find("left barlow positive");
    bed.find("left barlow not-examined");
    bed.find("left barlow negative");
    bed.command(Command.YES);
    assertEquals("left barlow negative", bed.answers());
    assertEquals(
        "left Barlow: first negative, then not examined; keep the first or the second?",
        bed.question());
    bed.command(Command.YES);
    assertEquals("left barlow not-examined", bed.answers());
    assertTrue(bed.record().openQuestions().isEmpty());
  }
}
