package tiptoe.exam;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import tiptoe.finding.Command;
import tiptoe.finding.FindingNotation;
import tiptoe.finding.Outcome;
import tiptoe.finding.Question;
import tiptoe.language.Meaning;
import tiptoe.protocol.Side;
import tiptoe.wording.QuestionWording;

class ExaminationTest {
  private final Bedside bed = new Bedside();

  @Test
  void keepsAFindingAsAnAnswer() {
    Changes changes = bed.find("clavicle.left crepitus");
    assertEquals("clavicle.left crepitus", bed.answers());
    assertEquals(1, changes.statements().get(0).number());
    assertEquals("left clavicle crepitus", changes.statements().get(0).words());
    assertEquals(1.0, changes.statements().get(0).start());
  }

  @Test
  void anUnsureUtteranceStatesNothingAndWaitsForTheReviewer() {
    bed.hear(
        "barlow.left positive", Outcome.UNSURE, Bedside.finding("barlow.left positive", false));
    assertEquals("", bed.answers());
    assertEquals(1, bed.record().unsure().size());
    bed.exam
        .review("Dr Reed")
        .acceptOffered(1, List.of(Bedside.finding("barlow.left positive", false)));
    assertEquals("barlow.left positive", bed.answers());
    assertTrue(bed.record().unsure().isEmpty());
    assertEquals("Dr Reed", bed.record().statements().get(0).author());
  }

  @Test
  void whatWasDismissedStaysVisibleAndStatesNothing() {
    bed.hear(
        "barlow.left positive", Outcome.UNSURE, Bedside.finding("barlow.left positive", false));
    bed.exam.review("Dr Reed").dismiss(1);
    assertEquals("", bed.answers());
    assertEquals(false, bed.record().utterances().get(0).reviewed());
  }

  @Test
  void anIgnoredUtteranceIsKeptAsHeardAndNoMore() {
    bed.hear("nice weather", Outcome.IGNORED, Bedside.finding("barlow.left positive", false));
    assertEquals("", bed.answers());
    assertTrue(bed.record().unsure().isEmpty());
    assertEquals("nice weather", bed.record().utterances().get(0).heard().text());
  }

  @Test
  void theSameValueAgainConfirmsAndAddsItsDetails() {
    bed.find("murmur present grade=2");
    bed.find("murmur present place=apex,axilla");
    assertEquals("murmur present grade=2 place=apex,axilla", bed.answers());
    assertEquals("1 stands, 2 confirms", bed.statuses());
  }

  @Test
  void detailsThatCanBeManyAreJoined() {
    bed.find("breathing retractions site=subcostal");
    bed.find("breathing retractions site=intercostal,subcostal");
    assertEquals("breathing retractions site=subcostal,intercostal", bed.answers());
  }

  @Test
  void asksWhenTheSameDetailIsSaidToBeSomethingElse() {
    bed.find("murmur present grade=2 place=apex");
    bed.find("murmur present grade=3");
    assertEquals("murmur present grade=2 place=apex", bed.answers());
    assertEquals(
        "murmur: first present (grade 2, place apex), then present (grade 3); keep the first or the"
            + " second?",
        bed.question());
    bed.command(Command.YES);
    assertEquals("murmur present grade=3 place=apex", bed.answers());
    assertEquals("", bed.question());
  }

  @Test
  void asksWhichSideOfASidedFindingWhoseSideWasNotSaid() {
    bed.find("clavicle crepitus");
    assertEquals("clavicle: crepitus — left, right or both?", bed.question());
    assertEquals("", bed.answers());
  }

  @Test
  void aQuestionAboutTheSideIsClosedByTheAnswer() {
    bed.say("clavicle crepitus", Bedside.asks(Question.Kind.SIDE, null, "clavicle crepitus"));
    Question open = bed.exam.dialogue().open();
    bed.say("left", new Meaning.Answers(open), Bedside.finding("clavicle.left crepitus", false));
    assertEquals("clavicle.left crepitus", bed.answers());
    assertEquals("left", bed.record().questions().get(0).outcome());
    assertTrue(bed.record().openQuestions().isEmpty());
  }

  @Test
  void aQuestionAboutTheSideIsDroppedWhenTheFindingIsStatedInFull() {
    bed.find("clavicle crepitus");
    bed.find("clavicle.left intact");
    assertEquals(1, bed.record().openQuestions().size(), "which side crepitates is still open");
    bed.find("clavicle.right crepitus");
    assertTrue(bed.record().openQuestions().isEmpty());
  }

  @Test
  void theAnswerTakesOverThatItsFindingWasACorrection() {
    bed.find("clavicle.left intact");
    Meaning.Asks asks =
        new Meaning.Asks(Question.side(FindingNotation.parse("clavicle crepitus")), true);
    bed.say("correction clavicle crepitus", asks);
    bed.say(
        "left",
        new Meaning.Answers(asks.question()),
        Bedside.finding("clavicle.left crepitus", false));
    assertEquals("clavicle.left crepitus", bed.answers());
  }

  @Test
  void aMissingDetailIsAskedOnceAndClosedByStatingIt() {
    bed.say(
        "palate intact",
        Bedside.finding("palate intact", false),
        Bedside.asks(Question.Kind.DETAIL, "palpated", "palate intact"));
    assertEquals("palate intact", bed.answers());
    assertEquals("palpated", bed.record().missingDetails().get(0).detail());
    bed.find("palate intact palpated=yes");
    assertTrue(bed.record().openQuestions().isEmpty());
    assertTrue(bed.record().missingDetails().isEmpty());
    bed.say(
        "palate intact",
        Bedside.finding("palate intact", false),
        Bedside.asks(Question.Kind.DETAIL, "palpated", "palate intact"));
    assertTrue(bed.record().openQuestions().isEmpty(), "it is known");
  }

  @Test
  void anImpossibleNumberIsAskedAboutAndLetGoOrSaidAgain() {
    bed.say("weight 34 g", Bedside.asks(Question.Kind.NUMBER, null, "weight 34 g"));
    assertEquals("", bed.answers());
    bed.command(Command.NO);
    assertTrue(bed.record().openQuestions().isEmpty());
    bed.say(
        "saturation foot 104", Bedside.asks(Question.Kind.NUMBER, null, "saturation-foot 104 %"));
    bed.find("saturation-foot 98 %");
    assertTrue(bed.record().openQuestions().isEmpty());
    assertEquals("saturation-foot 98 %", bed.answers());
  }

  @Test
  void aFactOutOfRangeIsAskedAboutUntilItIsStatedOrLetGo() {
    bed.fact("age", "2000");
    assertEquals("expected hours from 0 to 672 for age, found 2000 — say it again", bed.question());
    assertTrue(bed.record().baby().fact("age").isEmpty());
    bed.find("clavicle.left crepitus");
    assertEquals(1, bed.record().openQuestions().size(), "it is not passed over");
    bed.fact("age", "20");
    assertTrue(bed.record().openQuestions().isEmpty());
    bed.fact("age", "673");
    bed.fact("age", "20");
    assertTrue(bed.record().openQuestions().isEmpty(), "what was known is said again");
    bed.fact("age", "673");
    bed.command(Command.NO);
    assertTrue(bed.record().openQuestions().isEmpty());
    assertEquals("20", bed.record().baby().fact("age").orElseThrow());
  }

  @Test
  void showsTheFirstQuestionOfTheNewestUtteranceAndOlderOnesLater() {
    bed.find("clavicle crepitus");
    bed.find("femoral-pulse weak", "brachial-pulse weak");
    assertEquals("femoral pulse: weak — left, right or both?", bed.question());
    bed.find("femoral-pulse.left weak");
    assertEquals("brachial pulse: weak — left, right or both?", bed.question());
    bed.find("brachial-pulse.left weak");
    assertEquals("clavicle: crepitus — left, right or both?", bed.question());
  }

  @Test
  void aCorrectionReplacesWhateverStandsForThatStepAndSide() {
    bed.find("clavicle.left swelling", "clavicle.left crepitus", "clavicle.right swelling");
    bed.correct("clavicle.left step-off", "clavicle.left fracture");
    assertEquals(
        "clavicle.right swelling, clavicle.left step-off, clavicle.left fracture", bed.answers());
    assertEquals("1 replaced, 2 replaced, 3 stands, 4 stands, 5 stands", bed.statuses());
  }

  @Test
  void aCorrectionOfOneDetailKeepsTheOthers() {
    bed.find("murmur present grade=2 place=apex");
    bed.correct("murmur present grade=3");
    assertEquals("murmur present grade=3 place=apex", bed.answers());
  }

  @Test
  void strikeTakesBackAllOfTheLastUtteranceAndErasesNothing() {
    bed.find("barlow.left negative");
    bed.find("ortolani.left negative", "ortolani.right negative");
    bed.command(Command.STRIKE);
    assertEquals("barlow.left negative", bed.answers());
    assertEquals("1 stands, 2 struck, 3 struck", bed.statuses());
    bed.command(Command.STRIKE);
    assertEquals("", bed.answers());
    assertTrue(bed.command(Command.STRIKE).of(Event.Struck.class).findAny().isEmpty());
  }

  @Test
  void strikeTakesBackAQuestionBeforeOlderStatements() {
    bed.find("barlow.left negative");
    bed.find("clavicle crepitus");
    bed.command(Command.STRIKE);
    assertEquals("barlow.left negative", bed.answers());
    assertTrue(bed.record().openQuestions().isEmpty());
  }

  @Test
  void strikeTakesBackAFact() {
    bed.fact("sex", "boy");
    bed.fact("presentation", "breech");
    bed.command(Command.STRIKE);
    assertEquals("{sex=boy}", bed.record().baby().facts().toString());
    bed.command(Command.STRIKE);
    assertEquals(Baby.UNKNOWN, bed.record().baby());
  }

  @Test
  void whatAStruckCorrectionHadReplacedIsMissingAgain() {
    bed.find("barlow.left negative");
    bed.correct("barlow.left positive");
    bed.command(Command.STRIKE);
    assertEquals("", bed.answers());
    assertTrue(bed.record().missing().contains(new Slot("barlow", tiptoe.protocol.Side.LEFT)));
  }

  private Changes couldBeTalk(Command command) {
    return bed.say(command.id(), new Meaning.Instruction(command, true));
  }

  @Test
  void aCommandThatCouldBeTalkIsCarriedOutByYesAlone() {
    bed.find("barlow.left negative");
    couldBeTalk(Command.STRIKE);
    assertEquals("barlow.left negative", bed.answers());
    assertEquals("cross out what was said last — yes or no?", bed.question());
    assertTrue(bed.exam.awaitsYesOrNo());
    assertEquals(List.of(Command.YES, Command.STRIKE), bed.command(Command.YES).commands());
    assertEquals("", bed.answers());
    assertEquals("", bed.question());
    assertTrue(couldBeTalk(Command.STRIKE).questions().isEmpty(), "nothing is left to cross out");
  }

  @Test
  void aCommandThatCouldBeTalkIsLetGoByNoAndByWhateverElseIsHeard() {
    bed.find("barlow.left negative");
    for (Runnable answer :
        List.<Runnable>of(
            () -> bed.command(Command.NO),
            () -> bed.find("ortolani.left negative"),
            () -> bed.hear("he is lovely", Outcome.IGNORED))) {
      couldBeTalk(Command.PAUSE);
      assertEquals("pause the recording — yes or no?", bed.question());
      answer.run();
      assertEquals("", bed.question());
      assertEquals(Phase.LISTENING, bed.record().phase());
    }
    couldBeTalk(Command.PAUSE);
    bed.clock.now = bed.clock.now.plusSeconds(1);
    bed.command(Command.YES);
    assertEquals(Phase.PAUSED, bed.record().phase());
  }

  @Test
  void carryingOnIsAskedInAPauseAndMeansNoBeforeTheEnd() {
    assertEquals("nothing that is recorded", reason(couldBeTalk(Command.RESUME)));
    bed.command(Command.PAUSE);
    couldBeTalk(Command.RESUME);
    assertEquals(Phase.PAUSED, bed.record().phase());
    assertEquals("carry on recording — yes or no?", bed.question());
    bed.command(Command.YES);
    assertEquals(Phase.LISTENING, bed.record().phase());
    bed.command(Command.END_EXAM);
    assertEquals(Phase.ENDING, bed.record().phase());
    couldBeTalk(Command.RESUME);
    assertEquals(Phase.LISTENING, bed.record().phase());
  }

  private static String reason(Changes changes) {
    return changes.of(Event.UtteranceHeard.class).findFirst().orElseThrow().heard().reason();
  }

  @Test
  void anEndThatCouldBeTalkIsAskedThoughNothingIsMissing() {
    couldBeTalk(Command.END_EXAM);
    assertEquals(Phase.ENDING, bed.record().phase());
    couldBeTalk(Command.END_EXAM);
    assertEquals(Phase.ENDING, bed.record().phase());
    bed.command(Command.YES);
    assertEquals(Phase.ENDED, bed.record().phase());
  }

  @Test
  void groupNormalFillsOnlyStepsThatAreNotKeyAndNotAnswered() {
    bed.find("eyes.left discharge");
    bed.find("eyes clear [region]", "red-reflex present [region]", "eye-spacing normal [region]");
    assertEquals(
        "eye-spacing normal [region], eyes.right clear [region], eyes.left discharge",
        bed.answers());
    assertTrue(bed.record().contradictions().isEmpty());
    assertTrue(bed.record().statements().stream().anyMatch(s -> s.status() == Status.UNUSED));
  }

  @Test
  void aFindingTakesThePlaceOfWhatWasOnlySaidForTheRegion() {
    bed.find("eyes clear [region]");
    bed.find("eyes.left discharge");
    assertEquals("eyes.right clear [region], eyes.left discharge", bed.answers());
    bed.find("eyes.right clear");
    assertEquals("eyes.right clear, eyes.left discharge", bed.answers());
  }

  @Test
  void groupNormalDoesNotFillAStepThatIsBeingAskedAbout() {
    bed.find("eyes discharge");
    bed.find("eyes clear [region]");
    assertEquals("", bed.answers());
  }

  @Test
  void notExaminedIsAnAnswerAndGivesWayToAFinding() {
    bed.find("barlow not-examined reason=cast");
    assertEquals(
        "barlow.right not-examined reason=cast, barlow.left not-examined reason=cast",
        bed.answers());
    assertEquals(
        Map.of(new Slot("barlow", Side.RIGHT), "cast", new Slot("barlow", Side.LEFT), "cast"),
        bed.record().deferred());
    assertTrue(
        bed.record().missingKeySteps().containsAll(bed.record().deferred().keySet()),
        "what was left out is owed");
    bed.find("barlow.left negative");
    assertEquals(Map.of(new Slot("barlow", Side.RIGHT), "cast"), bed.record().deferred());
    assertEquals("barlow.right not-examined reason=cast, barlow.left negative", bed.answers());
    bed.find("barlow.left not-examined reason=crying");
    assertEquals(1, bed.record().contradictions().size());
  }

  @Test
  void aHydroceleDoesNotSayWhereTheTestisIs() {
    bed.fact("sex", "boy");
    bed.find("testis.left hydrocele", "testis.right descended");
    assertTrue(bed.record().missingKeySteps().contains(new Slot("testis", Side.LEFT)));
    assertFalse(bed.record().missingKeySteps().contains(new Slot("testis", Side.RIGHT)));
    bed.find("testis.left descended");
    assertFalse(bed.record().missingKeySteps().contains(new Slot("testis", Side.LEFT)));
  }

  @Test
  void whatWaitsOrLacksItsSideOrWasHeardUnsurelyIsNotSettled() {
    bed.find("red-reflex.left present");
    bed.find("red-reflex.left absent");
    bed.say("clavicle crepitus", Bedside.asks(Question.Kind.SIDE, null, "clavicle crepitus"));
    bed.hear(
        "barlow.left positive", Outcome.UNSURE, Bedside.finding("barlow.left positive", false));
    assertEquals(
        "red-reflex.left absent, clavicle crepitus, barlow.left positive",
        bed.record().unsettled().stream()
            .map(answer -> answer.finding().toString())
            .collect(Collectors.joining(", ")));
    bed.exam.review("Dr Reed").dismiss(4);
    bed.command(Command.STRIKE);
    bed.command(Command.STRIKE);
    assertEquals(List.of(), bed.record().unsettled());
  }

  @Test
  void pauseHearsNothingUntilItIsResumed() {
    bed.command(Command.PAUSE);
    assertTrue(bed.find("barlow.left positive").isEmpty());
    bed.command(Command.RESUME);
    bed.find("barlow.left negative");
    assertEquals("barlow.left negative", bed.answers());
  }

  @Test
  void whatIsSaidInARemarkIsKeptAsTextAndStatesNothing() {
    bed.command(Command.START_REMARK);
    bed.find("barlow.left positive");
    bed.say("ask the mother again");
    bed.command(Command.END_REMARK);
    bed.find("barlow.right negative");
    assertEquals("barlow.right negative", bed.answers());
    Remark remark = bed.record().remarks().get(0);
    assertEquals("left barlow positive ask the mother again", remark.text());
    assertEquals(3.0, remark.start());
    assertEquals(10.0, remark.end());
  }

  @Test
  void endingWithKeyStepsMissingTakesASecondWord() {
    bed.command(Command.END_EXAM);
    assertEquals(Phase.ENDING, bed.record().phase());
    bed.find("barlow.left negative");
    assertEquals(Phase.LISTENING, bed.record().phase());
    bed.command(Command.END_EXAM);
    bed.command(Command.NO);
    assertEquals(Phase.LISTENING, bed.record().phase());
    bed.command(Command.END_EXAM);
    Changes last = bed.command(Command.YES);
    assertEquals(Phase.ENDED, bed.record().phase());
    Event.Ended ended = last.of(Event.Ended.class).findFirst().orElseThrow();
    assertFalse(ended.missing().contains(new Slot("barlow", tiptoe.protocol.Side.LEFT)));
    assertTrue(ended.missing().contains(new Slot("barlow", tiptoe.protocol.Side.RIGHT)));
    assertTrue(bed.find("barlow.right negative").isEmpty());
  }

  @Test
  void keyStepsAreMissingFirstAndOnlyThoseOfThisBaby() {
    List<Slot> missing = bed.record().missing();
    assertEquals("anterior-fontanelle", missing.get(0).step());
    assertTrue(missing.contains(new Slot("testis", tiptoe.protocol.Side.LEFT)));
    assertFalse(missing.stream().anyMatch(slot -> slot.step().equals("maturity-score")));
    bed.fact("sex", "girl");
    List<String> girls = bed.record().missing().stream().map(Slot::step).toList();
    assertFalse(girls.contains("testis"));
    assertFalse(girls.contains("penis"));
    assertTrue(girls.contains("labia"));
  }

  @Test
  void progressCountsEachSide() {
    Progress before = progress("hips");
    assertEquals(new Progress("hips", 0, 9, 4), before);
    bed.find("barlow.left negative", "knee-height equal");
    assertEquals(new Progress("hips", 2, 9, 3), progress("hips"));
  }

  private Progress progress(String region) {
    return bed.record().progress().stream()
        .filter(progress -> progress.region().equals(region))
        .findFirst()
        .orElseThrow();
  }

  @Test
  void keepsThatAFlagWasRaisedAfterItWasCleared() {
    RecordedFlag flag = new RecordedFlag("urgent", "hips", "consider referral", List.of(1), null);
    bed.exam.flags(List.of(flag));
    bed.exam.flags(List.of(flag));
    assertEquals(List.of(flag), bed.record().openFlags());
    bed.exam.flags(List.of());
    assertTrue(bed.record().openFlags().isEmpty());
    assertEquals(1, bed.record().flags().size());
  }

  @Test
  void notesThatTheClockWentBack() {
    bed.find("barlow.left negative");
    bed.clock.now = Bedside.START.minusSeconds(3600);
    bed.exam.note(new Event.AudioGap(3, 1, "the microphone was gone"));
    assertEquals(
        "the clock went back: the event before was at 2026-03-01T09:00:03Z",
        bed.record().notes().get(0).text());
    assertEquals(1, bed.record().gaps().size());
  }

  @Test
  void theNextRegionFollowsInTheOrderOfTheBody() {
    bed.command(Command.NEXT_REGION);
    assertEquals("general", bed.record().region());
    bed.command(Command.NEXT_REGION);
    assertEquals("measurements", bed.record().region());
    bed.command(Command.PREVIOUS_REGION);
    assertEquals("general", bed.record().region());
  }

  @Test
  void aFactThatIsNotOneIsRefused() {
    var problem =
        assertThrows(
            IllegalArgumentException.class, () -> bed.exam.context("gestation", "39", "Dr Reed"));
    assertEquals(
        "expected weeks and days from 20+0 to 45+6 for gestation, found 39", problem.getMessage());
  }

  @Test
  void whatCouldNotBeKeptDoesNotCount() {
    EventSink full =
        new EventSink() {
          @Override
          public List<Entry> append(Instant at, List<Event> events) {
            throw new NotRecorded("expected room on the disk, found none", null);
          }

          @Override
          public String headAfter(Instant at, List<Event> events) {
            throw new NotRecorded("expected room on the disk, found none", null);
          }
        };
    Examination exam = Examination.of(bed.record(), bed.clock, full, QuestionWording::of);
    assertThrows(NotRecorded.class, () -> exam.context("sex", "girl", "Dr Reed"));
    assertEquals(bed.record(), exam.record());
  }

  @Test
  void aValueWithASideIsAskedForIt() {
    bed.say(
        "scalp cephalohaematoma",
        Bedside.finding("scalp cephalohaematoma", false),
        Bedside.asks(Question.Kind.DETAIL, "side", "scalp cephalohaematoma"));
    assertEquals("side", bed.record().missingDetails().get(0).detail());
    bed.say(
        "left",
        new Meaning.Answers(bed.exam.dialogue().open()),
        Bedside.finding("scalp.left cephalohaematoma", false));
    assertEquals("scalp.left cephalohaematoma", bed.answers());
    assertTrue(bed.record().openQuestions().isEmpty());
    assertTrue(bed.record().missingDetails().isEmpty());
  }

  @Test
  void aQuestionWhichStepIsMeantIsDroppedWhenSomethingElseIsStated() {
    Question which = Question.step(List.of("barlow", "ortolani"));
    bed.say("left negative", new Meaning.Asks(which, false));
    assertEquals("which is meant: Barlow or Ortolani?", bed.question());
    assertEquals(null, bed.exam.dialogue().open());
    bed.find("barlow.left negative");
    assertTrue(bed.record().openQuestions().isEmpty());
  }

  @Test
  void aFactSaidAsACorrectionReplacesWhatStood() {
    bed.fact("sex", "girl");
    bed.say("correction baby boy", new Meaning.Fact("sex", "boy", true));
    assertEquals("boy", bed.record().baby().sex().orElseThrow());
    assertEquals(List.of(), bed.record().openQuestions());
  }

  // AAP, Pediatrics 2025;155:e2024069667: the screen is repeated after an hour; both readings stay.
  @Test
  void aRepeatedSaturationStandsBesideTheFirst() {
    bed.find("saturation-foot 93 %");
    bed.find("saturation-foot 93 % repeat=first");
    bed.find("saturation-foot 96 % repeat=second");
    assertEquals(
        List.of(93.0, 93.0, 96.0),
        bed.record().answers("saturation-foot").stream().map(a -> a.quantity().number()).toList());
    assertEquals(List.of(), bed.record().openQuestions());
    bed.find("saturation-foot 98 % repeat=second");
    assertEquals(1, bed.record().openQuestions().size());
  }
}
