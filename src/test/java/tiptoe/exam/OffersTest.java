package tiptoe.exam;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import tiptoe.finding.Command;
import tiptoe.finding.FindingNotation;
import tiptoe.finding.Outcome;
import tiptoe.finding.Source;
import tiptoe.language.Interpretation;
import tiptoe.language.Meaning;
import tiptoe.protocol.Protocol;
import tiptoe.protocol.Side;
import tiptoe.speech.Word;
import tiptoe.wording.CommandReply;
import tiptoe.wording.OutcomeWording;
import tiptoe.wording.SpokenWording;
import tiptoe.wording.UtteranceWording;
import tiptoe.wording.Words;

/** What is offered is confirmed whole or in part, and gone through again by voice. */
class OffersTest {
  private static final Words WORDS = Words.asKept(Protocol.standard());
  private final Bedside bed = new Bedside();

  private Changes offer(String... findings) {
    return bed.hear(
        String.join(" and ", findings),
        Outcome.UNSURE,
        Arrays.stream(findings)
            .map(text -> FindingNotation.parse(text).withSource(Source.TAGGER))
            .map(said -> new Meaning.States(said, false))
            .toArray(Meaning[]::new));
  }

  private String answers() {
    return bed.answers().replace(" [tagger]", "");
  }

  private Changes pick(boolean only, Integer place, String... steps) {
    return bed.say(
        "picks",
        new Meaning.Picks(only, place == null ? List.of() : List.of(place), List.of(steps), null));
  }

  private static String lines(Changes changes) {
    return OutcomeWording.of(changes, WORDS).lines().stream()
        .map(OutcomeWording.Line::shown)
        .collect(Collectors.joining("\n"));
  }

  @Test
  void oneOfTwoIsKeptByItsPlace() {
    offer("moro symmetric", "murmur present");
    Changes changes = pick(true, 1);
    assertEquals("moro symmetric", answers());
    assertEquals("RECORDED Moro: symmetric\nLEFT OUT murmur: present", lines(changes));
    assertTrue(bed.record().unsure().isEmpty());
  }

  @Test
  void oneOfTwoIsLeftOutByItsName() {
    offer("moro symmetric", "abdominal-mass present");
    pick(false, null, "abdominal-mass", "neck", "spine");
    assertEquals("moro symmetric", answers());
    offer("clavicle.left intact", "clavicle.right intact");
    bed.say("only the left", new Meaning.Picks(true, List.of(), List.of(), Side.LEFT));
    assertEquals("clavicle.left intact, moro symmetric", answers());
  }

  @Test
  void whatIsTheSameOnBothSidesIsOfferedAsOneAndTakenBySide() {
    Changes changes = offer("clavicle.right intact", "clavicle.left intact", "moro symmetric");
    assertEquals(
        "UNSURE, NOT RECORDED (clavicle (both sides): intact; Moro: symmetric) yes, no, or only"
            + " which?",
        lines(changes).replace("RECORDED: ", "RECORDED "));
    bed.say("only the left", new Meaning.Picks(true, List.of(), List.of(), Side.LEFT));
    assertEquals("clavicle.left intact", answers());
    offer("barlow.right negative", "barlow.left negative", "suck strong");
    pick(true, 2);
    assertEquals("suck strong, clavicle.left intact", answers());
  }

  @Test
  void aPickThatNamesNoneOfThemSettlesNothing() {
    offer("moro symmetric", "suck strong");
    pick(true, 3);
    pick(false, null, "liver");
    assertEquals("", answers());
    assertEquals(1, bed.record().unsure().size());
  }

  @Test
  void yesRecordsAllAndNoNone() {
    offer("moro symmetric", "suck strong");
    bed.command(Command.YES);
    assertEquals("suck strong, moro symmetric", answers());
    offer("tone low");
    bed.command(Command.NO);
    assertEquals("suck strong, moro symmetric", answers());
    assertTrue(bed.record().offers().isEmpty());
  }

  @Test
  void anOpenQuestionDoesNotBlockTheNextOfferNorIsItAnsweredByItsYes() {
    bed.find("barlow.left negative");
    bed.find("barlow.left positive");
    assertEquals(1, bed.record().openQuestions().size());
    offer("moro symmetric");
    bed.command(Command.YES);
    assertEquals("barlow.left negative, moro symmetric", answers());
    assertEquals(1, bed.record().openQuestions().size());
    bed.command(Command.YES);
    assertEquals("barlow.left positive, moro symmetric", answers());
  }

  @Test
  void aYesLongAfterAnOfferAnswersNothing() {
    bed.find("barlow.left negative");
    bed.find("barlow.left positive");
    offer("moro symmetric");
    bed.hear("he is a lovely boy", Outcome.IGNORED);
    Heard late =
        new Heard(99, 100, "yes", List.of(new Word("yes", 99, 100, 1)), Outcome.COMMAND, null);
    bed.exam.hear(
        late,
        new Interpretation(
            List.of(new Meaning.Instruction(Command.YES)), List.of(), bed.exam.dialogue()));
    assertEquals("barlow.left negative", answers());
    assertEquals(1, bed.record().openQuestions().size());
  }

  /** Nobody can answer while a voice reads the offer out. */
  @Test
  void aYesIsWaitedForFromTheEndOfTheVoiceOn() {
    offer("moro symmetric");
    yes(15);
    assertEquals("", answers());
    offer("suck strong");
    bed.exam.spokeUntil(13);
    yes(22);
    assertEquals("suck strong", answers());
  }

  private void yes(double at) {
    bed.exam.hear(
        new Heard(
            at, at + 1, "yes", List.of(new Word("yes", at, at + 1, 1)), Outcome.COMMAND, null),
        new Interpretation(
            List.of(new Meaning.Instruction(Command.YES)), List.of(), bed.exam.dialogue()));
  }

  /** Aloud, at this second. */
  private Changes yesToAll(double at) {
    return bed.exam.hear(
        new Heard(
            at,
            at + 1,
            "yes to all",
            List.of(new Word("yes", at, at + 1, 1)),
            Outcome.COMMAND,
            null),
        new Interpretation(
            List.of(new Meaning.Picks(true, List.of(), List.of(), null)),
            List.of(),
            bed.exam.dialogue()));
  }

  @Test
  void whatSaysItselfThatItTakesAnOfferMayComeAfterALongSilence() {
    offer("moro symmetric");
    yesToAll(90);
    assertEquals("moro symmetric", answers());
    offer("suck strong");
    offer("tone low");
    bed.command(Command.SAY_UNSURE);
    yesToAll(190);
    assertEquals("suck strong, tone low, moro symmetric", answers());
  }

  private Changes yesToAll() {
    return bed.say("yes to all", new Meaning.Picks(true, List.of(), List.of(), null));
  }

  @Test
  void whatIsUnsureIsReadOutTogetherAndTakenByYesToAllAlone() {
    offer("moro symmetric");
    bed.find("clavicle.left intact");
    offer("suck strong", "tone low");
    bed.find("clavicle.right intact");
    Changes asked = bed.command(Command.SAY_UNSURE);
    String list = "1 Moro: symmetric\n2 suck: strong\n3 tone: low";
    assertEquals(
        "UNSURE, NOT RECORDED: \"yes to all\", \"not the second\", or no?\n" + list, lines(asked));
    assertEquals(
        List.of("not recorded, 1 Moro, symmetric; 2 suck, strong; 3 tone, low; yes to all?"),
        SpokenWording.of(asked, WORDS, false));
    Changes bare = bed.command(Command.YES);
    assertTrue(lines(bare).endsWith(list), "a bare yes is said to parents too");
    assertEquals("clavicle.right intact, clavicle.left intact", answers());
    bed.say("not the second", new Meaning.Picks(false, List.of(2), List.of(), null));
    assertEquals(
        "clavicle.right intact, clavicle.left intact, tone low, moro symmetric", answers());
    assertTrue(bed.record().toConfirm().isEmpty());
    assertEquals(
        List.of("nothing is unsure"),
        CommandReply.of(Command.SAY_UNSURE, bed.command(Command.SAY_UNSURE).record(), WORDS));
  }

  @Test
  void fiveThatWaitAreReadOutUnaskedOnce() {
    offer("moro symmetric");
    offer("suck strong", "tone low");
    bed.find("clavicle.left intact");
    assertTrue(offer("murmur none").of(Event.OfferAsked.class).findAny().isEmpty());
    Changes fifth = offer("palate intact");
    assertEquals(5, bed.record().toConfirm().orElseThrow().parts().size());
    assertTrue(lines(fifth).endsWith("5 palate: intact"), lines(fifth));
    bed.find("clavicle.right intact");
    assertTrue(bed.record().toConfirm().isEmpty(), "it waits on, and is asked about no more");
    assertEquals(5, bed.record().offers().size());
    yesToAll();
    assertEquals("clavicle.right intact, clavicle.left intact", answers());
    bed.command(Command.SAY_UNSURE);
    yesToAll();
    assertEquals(7, bed.record().answers().size());
    assertTrue(bed.record().unsure().isEmpty());
  }

  @Test
  void whatIsTheSameOnBothSidesIsReadOutAndPickedAsOne() {
    offer("barlow.right negative", "moro symmetric");
    offer("barlow.left negative", "ear-form.left pit", "ear-form.right tag");
    Changes asked = bed.command(Command.SAY_UNSURE);
    assertTrue(
        lines(asked)
            .endsWith(
                "1 Barlow (both sides): negative\n2 Moro: symmetric\n3 left ear form: pit\n"
                    + "4 right ear form: tag"),
        lines(asked));
    bed.say("not the second", new Meaning.Picks(false, List.of(2), List.of(), null));
    assertEquals(
        "ear-form.right tag, ear-form.left pit, barlow.right negative, barlow.left negative",
        answers());
    offer("ortolani.right negative", "ortolani.left negative", "tone low");
    bed.command(Command.SAY_UNSURE);
    bed.say("not the right", new Meaning.Picks(false, List.of(), List.of(), Side.RIGHT));
    assertTrue(answers().contains("ortolani.left negative, tone low"), answers());
    assertFalse(answers().contains("ortolani.right"), answers());
  }

  /** The grammar alone was not sure: it is taken by a yes as what was read word by word is. */
  @Test
  void aPhraseThatWasHeardUnsurelyIsTakenByYes() {
    bed.hear(
        "moro symmetric",
        Outcome.UNSURE,
        new Meaning.States(FindingNotation.parse("moro symmetric"), false));
    bed.command(Command.YES);
    assertEquals("moro symmetric", bed.answers());
  }

  @Test
  void noToSeveralLeavesAllOutAndTalkBetweenTakesTheAnswerAway() {
    offer("moro symmetric");
    offer("suck strong");
    bed.command(Command.SAY_UNSURE);
    bed.hear("what a lovely boy", Outcome.IGNORED);
    Changes again = yesToAll(30);
    assertEquals("", answers());
    assertTrue(lines(again).endsWith("1 Moro: symmetric\n2 suck: strong"), lines(again));
    bed.command(Command.NO);
    assertEquals("", answers());
    assertTrue(bed.record().offers().isEmpty());
  }

  @Test
  void whatWasSaidAnewIsOfferedOnceAsItWasSaidLast() {
    offer("heart-rate 104");
    offer("heart-rate 140");
    offer("liver not-enlarged");
    offer("liver not-enlarged");
    assertEquals(
        "heart-rate 140, liver not-enlarged",
        bed.record().offers().stream()
            .map(part -> part.meaning().findings().get(0).toString().replace(" [tagger]", ""))
            .collect(Collectors.joining(", ")));
    bed.find("heart-rate 141");
    assertEquals(1, bed.record().offers().size(), "what was surely said since stands for it");
    offer("clavicle.left crepitus");
    bed.find("clavicle.left intact");
    assertEquals(2, bed.record().offers().size(), "but what is abnormal is asked about");
  }

  private Changes offerFacts(Meaning... facts) {
    return bed.hear("facts", Outcome.UNSURE, facts);
  }

  private String fact(String id) {
    return bed.record().baby().fact(id).orElse("");
  }

  @Test
  void aFactIsOfferedAndTakenByYesAsAFindingIs() {
    Changes asked = offerFacts(new Meaning.Fact("feeding", "breast"));
    assertEquals("UNSURE, NOT RECORDED: (feeding: breast) yes or no?", lines(asked));
    assertEquals(
        "\"facts\"  unsure\n  feeding: breast\n  ? record that — yes or no?\n",
        UtteranceWording.of(bed.record(), WORDS));
    assertEquals("", fact("feeding"));
    assertEquals("NOTED feeding: breast", lines(bed.command(Command.YES)));
    assertEquals("breast", fact("feeding"));
    assertTrue(bed.record().unsure().isEmpty());
    offerFacts(new Meaning.Fact("birth-weight", "3540"));
    assertEquals("LEFT OUT birth weight: 3540 g", lines(bed.command(Command.NO)));
    assertEquals("", fact("birth-weight"));
  }

  @Test
  void factsAreReadOutAndPickedWithFindings() {
    offerFacts(new Meaning.Fact("feeding", "breast"), new Meaning.Fact("first-born", "yes"));
    offer("moro symmetric");
    Changes asked = bed.command(Command.SAY_UNSURE);
    assertTrue(
        lines(asked).endsWith("1 feeding: breast\n2 first born: yes\n3 Moro: symmetric"),
        lines(asked));
    pick(false, 1);
    assertEquals("", fact("feeding"));
    assertEquals("yes", fact("first-born"));
    assertEquals("moro symmetric", answers());
    offerFacts(new Meaning.Fact("vitamin-k", "given"), new Meaning.Fact("hearing-screen", "due"));
    offer("suck strong", "tone low");
    pick(false, null, "tone");
    assertEquals("suck strong, moro symmetric", answers());
    bed.command(Command.SAY_UNSURE);
    yesToAll();
    assertEquals("given", fact("vitamin-k"));
    assertEquals("due", fact("hearing-screen"));
  }

  @Test
  void aFactThatWasSaidAnewIsOfferedOnceAndOneThatStandsIsNot() {
    offerFacts(new Meaning.Fact("age", "30"));
    offerFacts(new Meaning.Fact("age", "13"));
    assertEquals(1, bed.record().offers().size());
    bed.fact("age", "31");
    assertTrue(bed.record().offers().isEmpty(), "what was surely said since stands for it");
    offerFacts(new Meaning.Fact("age", "31"));
    assertTrue(bed.record().offers().isEmpty());
  }

  /** A yes says that it was heard right, not that what was stated before it was wrong. */
  @Test
  void aFactThatContradictsWhatStandsIsAskedAboutWhenAYesTakesIt() {
    bed.fact("sex", "girl");
    offerFacts(new Meaning.Fact("sex", "boy"));
    bed.command(Command.YES);
    assertEquals("girl", fact("sex"));
    assertEquals(1, bed.record().openQuestions().size());
  }

  /** It may have been misheard, and what is read out names the new value alone. */
  @Test
  void aCorrectionThatIsOnlyOfferedReplacesNothingUnasked() {
    bed.fact("sex", "girl");
    offerFacts(new Meaning.Fact("sex", "boy", true));
    bed.command(Command.YES);
    assertEquals("girl", fact("sex"));
    assertEquals(1, bed.record().openQuestions().size());
  }

  @Test
  void anImpossibleNumberThatAReviewerAcceptsIsAskedAboutAndNotKept() {
    offerFacts(new Meaning.Fact("birth-weight", "35400"));
    bed.exam.review("Dr Reed").acceptOffered(1, List.of(new Meaning.Fact("birth-weight", "35400")));
    assertTrue(bed.record().baby().fact("birth-weight").isEmpty());
    assertEquals(1, bed.record().openQuestions().size());
  }

  @Test
  void whatStandsAlreadyIsNotOfferedAgain() {
    offer("moro symmetric");
    bed.find("moro symmetric");
    assertTrue(bed.record().offers().isEmpty());
    assertEquals(1, bed.record().unsure().size(), "it waits for the reviewer");
  }

  @Test
  void theEndOffersThemInsteadOfCallingTheirStepsMissing() {
    offer("barlow.left negative");
    bed.find("clavicle.left intact");
    bed.command(Command.END_EXAM);
    assertEquals(Phase.ENDING, bed.record().phase());
    Slot barlow = new Slot("barlow", Side.LEFT);
    assertTrue(bed.record().missingKeySteps().contains(barlow));
    assertFalse(bed.record().missingKeyStepsBesideOffers().contains(barlow));
    List<String> lines = CommandReply.beforeEnd(bed.record(), WORDS);
    assertEquals(
        "not recorded: 1 left Barlow: negative; \"yes to all\" records them", lines.get(0));
    assertTrue(lines.contains("  hips: right Barlow, Ortolani (both sides)"), lines.toString());
    Changes answered = yesToAll();
    assertEquals("clavicle.left intact, barlow.left negative", answers());
    assertEquals(Phase.ENDING, bed.record().phase(), "the end is asked for again");
    assertTrue(answered.of(Event.EndAsked.class).findAny().isPresent());
    bed.command(Command.YES);
    assertEquals(Phase.ENDED, bed.record().phase());
  }

  @Test
  void keysAnswerOffersToo() {
    offer("moro symmetric");
    bed.exam.command(Command.YES, 9);
    assertEquals("moro symmetric", answers());
    offer("barlow.left negative");
    bed.exam.command(Command.END_EXAM, 19);
    bed.exam.command(Command.YES, 20);
    assertEquals(Phase.ENDED, bed.record().phase());
    assertEquals("moro symmetric", answers());
  }
}
