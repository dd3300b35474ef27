package tiptoe.exam;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

/** Saturations that are measured again after an hour (the screen's own rule: Pediatrics 155). */
class RepeatedMeasurementTest {
  private final Bedside bed = new Bedside();

  private void first() {
    bed.find("saturation-right-hand 93 %", "saturation-foot 92 %");
  }

  @Test
  void aRepeatStandsBesideTheFirstMeasurement() {
    first();
    bed.find("saturation-right-hand 96 % repeat=first", "saturation-foot 95 % repeat=first");
    assertEquals("", bed.question());
    assertEquals(
        "saturation-right-hand 93 %, saturation-right-hand 96 % repeat=first, saturation-foot 92 %,"
            + " saturation-foot 95 % repeat=first",
        bed.answers());
  }

  @Test
  void aRepeatOfTheSameNumberIsAMeasurementOfItsOwn() {
    first();
    bed.find("saturation-foot 92 % repeat=first");
    bed.find("saturation-foot 92 % repeat=first");
    assertEquals("1 stands, 2 stands, 3 stands, 4 confirms", bed.statuses());
  }

  @Test
  void twoNumbersForTheSameRepeatAreAskedAbout() {
    first();
    bed.find("saturation-foot 94 % repeat=first");
    bed.find("saturation-foot 97 % repeat=first");
    assertEquals("1 stands, 2 stands, 3 stands, 4 waits", bed.statuses());
  }

  @Test
  void aNumberThatIsNotSaidToBeARepeatIsOneAllTheSame() {
    first();
    bed.find("saturation-right-hand 80 %", "saturation-foot 79 %");
    assertEquals("", bed.question());
    assertEquals(
        "saturation-right-hand 93 %, saturation-right-hand 80 % repeat=first, saturation-foot 92 %,"
            + " saturation-foot 79 % repeat=first",
        bed.answers());
    bed.find("saturation-foot 85 %");
    assertEquals("1 stands, 2 stands, 3 stands, 4 stands, 5 stands", bed.statuses());
  }

  @Test
  void aFourthScreenIsAskedAboutSinceTheScreenHasNoName() {
    first();
    bed.find("saturation-foot 93 %");
    bed.find("saturation-foot 94 %");
    bed.find("saturation-foot 95 %");
    assertEquals("1 stands, 2 stands, 3 stands, 4 stands, 5 waits", bed.statuses());
  }

  @Test
  void theSameNumbersOnceMoreInOneUtteranceAreOnlySaidAgain() {
    first();
    bed.find("saturation-right-hand 93 %", "saturation-foot 92 %");
    assertEquals("1 stands, 2 stands, 3 confirms, 4 confirms", bed.statuses());
    bed.find("saturation-right-hand 93 %", "saturation-foot 95 %");
    assertEquals(
        "saturation-right-hand 93 %, saturation-right-hand 93 % repeat=first, saturation-foot 92 %,"
            + " saturation-foot 95 % repeat=first",
        bed.answers());
  }

  @Test
  void twoScreensInOneUtteranceAreTwo() {
    bed.find(
        "saturation-right-hand 98 %",
        "saturation-foot 97 %", "saturation-right-hand 80 %", "saturation-foot 79 %");
    assertEquals(
        "saturation-right-hand 98 %, saturation-right-hand 80 % repeat=first, saturation-foot 97 %,"
            + " saturation-foot 79 % repeat=first",
        bed.answers());
  }

  @Test
  void aCorrectionBehindARepeatCorrectsTheRepeat() {
    first();
    bed.find("saturation-foot 90 % repeat=first");
    bed.correct("saturation-foot 96 %");
    assertEquals(
        "saturation-right-hand 93 %, saturation-foot 92 %, saturation-foot 96 % repeat=first",
        bed.answers());
  }

  @Test
  void aFirstMeasurementIsCorrectedWhileThereIsNoRepeat() {
    first();
    bed.correct("saturation-foot 94 %");
    assertEquals("saturation-right-hand 93 %, saturation-foot 94 %", bed.answers());
  }

  @Test
  void aCorrectedFactReplacesTheOlderOneWithoutAQuestion() {
    bed.fact("sex", "girl");
    bed.correctFact("sex", "boy");
    assertEquals("boy", bed.record().baby().sex().orElseThrow());
    assertEquals("", bed.question());
  }

  @Test
  void aCorrectedFactClosesTheQuestionAboutIt() {
    bed.fact("gestation", "39+4");
    bed.fact("gestation", "38+4");
    bed.correctFact("gestation", "37+4");
    assertEquals("37+4", bed.record().baby().fact("gestation").orElseThrow());
    assertEquals("", bed.question());
  }
}
