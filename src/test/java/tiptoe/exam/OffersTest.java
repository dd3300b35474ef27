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
import tiptoe.language.Meaning;
import tiptoe.protocol.Protocol;
import tiptoe.protocol.Side;
import tiptoe.wording.CommandReply;
import tiptoe.wording.OutcomeWording;
import tiptoe.wording.SpokenWording;
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
    return bed.say("picks", new Meaning.Picks(only, place, List.of(steps), null));
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
    bed.say("only the left", new Meaning.Picks(true, null, List.of(), Side.LEFT));
    assertEquals("clavicle.left intact, moro symmetric", answers());
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
        new Heard(
            99,
            100,
            "yes",
            List.of(new tiptoe.speech.Word("yes", 99, 100, 1)),
            Outcome.COMMAND,
            null);
    bed.exam.hear(
        late,
        new tiptoe.language.Interpretation(
            List.of(new Meaning.Instruction(Command.YES)), List.of(), bed.exam.dialogue()));
    assertEquals("barlow.left negative", answers());
    assertEquals(1, bed.record().openQuestions().size());
  }

  @Test
  void whatIsUnsureIsGoneThroughOneByOne() {
    offer("moro symmetric");
    bed.find("clavicle.left intact");
    offer("suck strong", "tone low");
    bed.find("clavicle.right intact");
    Changes asked = bed.command(Command.SAY_UNSURE);
    assertEquals("UNSURE, NOT RECORDED: (Moro: symmetric) yes or no?", lines(asked));
    assertEquals(
        List.of("not recorded, Moro, symmetric yes or no?"), SpokenWording.of(asked, WORDS, false));
    Changes next = bed.command(Command.YES);
    assertTrue(lines(next).startsWith("RECORDED Moro: symmetric\nUNSURE, NOT RECORDED: (suck"));
    pick(true, 1);
    assertTrue(bed.record().toConfirm().isEmpty());
    assertEquals(
        List.of("nothing is unsure"),
        CommandReply.of(Command.SAY_UNSURE, bed.command(Command.SAY_UNSURE).record(), WORDS));
    assertTrue(answers().contains("suck strong") && !answers().contains("tone"));
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
        "not recorded: left Barlow: negative; \"what is unsure\" goes through them", lines.get(0));
    assertTrue(
        lines.contains("  hips: right Barlow, right Ortolani, left Ortolani"), lines.toString());
    bed.command(Command.SAY_UNSURE);
    Changes answered = bed.command(Command.YES);
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
