package tiptoe.session;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.List;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tiptoe.clinical.Assessor;
import tiptoe.clinical.Flag;
import tiptoe.exam.Bedside;
import tiptoe.exam.ExamRecord;
import tiptoe.exam.Phase;
import tiptoe.exam.Utterance;
import tiptoe.finding.Command;
import tiptoe.language.TypedText;
import tiptoe.protocol.Protocol;
import tiptoe.protocol.Step;
import tiptoe.protocol.Value;
import tiptoe.settings.Settings;
import tiptoe.speech.Hypothesis;
import tiptoe.speech.Word;
import tiptoe.wording.CommandReply;
import tiptoe.wording.Words;

/** Nothing worse than what stands is silent, in whole dialogues. */
class UnsettledDialogueTest {
  private static final Understanding understanding = Hearing.understood();

  private final ExamSession session = Sessions.inMemory(understanding, Settings.DEFAULT);

  private void say(String dialogue) {
    int at = 0;
    for (String sentence : TypedText.sentences(dialogue)) {
      session.dictate(sentence, understanding.typed().words(sentence), at++);
    }
  }

  private void hearUnsurely(String text) {
    List<Word> words = Arrays.stream(text.split(" ")).map(word -> new Word(word, 1, 2, 1)).toList();
    List<Hypothesis.Rival> rivals = List.of(new Hypothesis.Rival("left barlow negative", 0.5));
    session.hear(new Hypothesis(1, 2, words).weighed(10, rivals), 0);
  }

  private String flags() {
    return session.assessment().flags().stream()
        .map(flag -> flag.level().id() + " " + flag.rule() + (flag.provisional() ? "?" : ""))
        .collect(Collectors.joining(", "));
  }

  private String answers() {
    return session.record().answers().stream()
        .map(answer -> answer.finding().toString())
        .collect(Collectors.joining(", "));
  }

  // The dialogue, the flags in their order (a question mark: not settled), contradictions left.
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          femoral pulses strong. right femoral pulse absent.  | urgent femoral-pulse-weak?        | 1
          baby is pink. baby is blue.                         | urgent central-cyanosis?          | 1
          red reflexes present. left red reflex absent.       | urgent red-reflex-abnormal?       | 1
          no murmur. systolic murmur.                         | arrange murmur?                   | 1
          sats ninety eight right hand, ninety seven foot. sats eighty right hand, seventy nine foot. | urgent saturation-screen-failed-2025 | 0
          """)
  void aWorseReadingRaisesItsFlagWhileItWaits(String dialogue, String expected, int open) {
    say(dialogue);
    assertTrue(flags().startsWith(expected), flags());
    assertEquals(open, session.record().contradictions().size());
    assertEquals(
        session.assessment().flags().stream().map(Flag::recorded).toList().size(),
        session.record().openFlags().size());
    assertEquals(
        expected.contains("?"),
        session.record().openFlags().stream().anyMatch(flag -> flag.provisional() != null));
  }

  // The dialogue, the flags, questions left. No answer is needed for the flag, and any lets it go.
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          sats eighty                              | urgent saturation-screen-failed-2025? | 1
          sats eighty. temperature 36.8.           | urgent saturation-screen-failed-2025? | 1
          sats eighty. sats seventy.               | urgent saturation-screen-failed-2025? | 2
          sats eighty. sats foot eighty one.       | urgent saturation-screen-failed-2025  | 0
          sats eighty. no.                         |                                       | 0
          sats ten                                 | urgent saturation-screen-failed-2025? | 1
          sats foot ten                            | urgent saturation-screen-failed-2025? | 1
          sats ninety eight                        |                                       | 1
          apgar two                                | urgent apgar-5-very-low?              | 1
          a clunk                                  | urgent hip-unstable?                  | 1
          now the hips. left positive. baby pink.  | urgent hip-unstable?                  | 1
          no bruising. baby pink.                  |                                       | 0
          absent femoral pulse                     | urgent femoral-pulse-weak?            | 1
          heart rate thirty                        | urgent heart-rate-very-low?           | 1
          heart rate thirty. heart rate one thirty |                                       | 0
          """)
  void whatLacksItsPlaceOrAPossibleNumberRaisesItsFlagMeanwhile(
      String dialogue, String expected, int open) {
    say(dialogue);
    assertEquals(expected == null ? "" : expected, flags());
    assertEquals(open, session.record().openQuestions().size());
  }

  @Test
  void theFlagOfANumberWithoutItsPlaceSaysWhatWasHeard() {
    say("sats eighty");
    String flag = session.wording().flag(session.assessment().flags().get(0));
    assertTrue(
        flag.startsWith(
            "URGENT, not settled: saturation, right hand: 80 % or saturation, foot: 80 %"
                + " — confirm now: "),
        flag);
  }

  // Which limb is meant was not said; the right hand is mostly said first.
  @Test
  void twoSaturationsWithoutALimbWaitForAYesAndRaiseTheirFlag() {
    say("sats 98 and 97.");
    assertEquals("", answers());
    say("yes.");
    assertEquals("saturation-right-hand 98 % [tagger], saturation-foot 97 % [tagger]", answers());
    say("sats 80 and 79.");
    assertEquals("urgent saturation-screen-failed-2025?", flags());
    say("no.");
    assertEquals("", flags());
  }

  @Test
  void whatWasHeardUnsurelyRaisesItsFlagUntilItIsDismissed() {
    hearUnsurely("left barlow positive");
    assertEquals(1, session.record().unsure().size());
    Flag flag = session.assessment().flags().get(0);
    assertTrue(flag.provisional());
    String words = session.wording().flag(flag);
    assertTrue(words.contains("heard unsurely: left Barlow: positive — confirm now"), words);
    session.examination().review("Dr Reed").dismiss(1);
    assertEquals("", flags());
  }

  // The words, the flag meanwhile, what a yes asks, what the answer records.
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          saturation eighty percent | URGENT, heard unsurely: saturation, right hand: 80 % or saturation, foot: 80 % — confirm now | sats foot eighty | saturation-foot 80 %
          absent femoral pulse      | URGENT, heard unsurely: femoral pulse: absent — confirm now | left | femoral-pulse.left absent
          heart rate thirty         | URGENT, heard unsurely: heart rate: 30 /min — confirm now | heart rate one thirty | heart-rate 130 /min
          """)
  void whatIsUnsureAndLacksSomethingRaisesItsFlagAndAYesAsksForIt(
      String words, String flag, String answer, String recorded) {
    hearUnsurely(words);
    assertEquals(1, session.record().offers().size());
    String raised = session.wording().flag(session.assessment().flags().get(0));
    assertTrue(raised.startsWith(flag), raised);
    say("what is unsure. yes.");
    assertEquals("", answers());
    assertEquals(1, session.record().openQuestions().size());
    assertTrue(flags().startsWith("urgent") && flags().endsWith("?"), flags());
    say(answer);
    assertEquals(recorded, answers());
    assertEquals(0, session.record().openQuestions().size());
  }

  @Test
  void theEndAsksForWhatIsPressingAndNotSettled() {
    say("red reflexes present. left red reflex absent.");
    session.command(Command.END_EXAM, 9);
    assertEquals(Phase.ENDING, session.record().phase());
    String asked =
        String.join(
            "\n", CommandReply.beforeEnd(session.record(), Words.asKept(Protocol.standard())));
    assertTrue(asked.startsWith("not settled, urgent, confirm now: "), asked);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          right barlow positive. no, sorry, left.       | barlow.left positive                          |
          right barlow positive no sorry left           | barlow.left positive                          |
          right clavicle crepitus. sorry, left side.    | clavicle.left crepitus                        |
          right barlow positive. no, left.              |                                               | Barlow: positive — left, right or both?
          right barlow positive. no, left. left.        | barlow.left positive                          |
          left barlow positive. no, sorry, left.        | barlow.left positive                          | Barlow — say it in full
          left barlow negative. right barlow positive. no, sorry, left. | barlow.left negative          | left Barlow: first negative, then positive; keep the first or the second?
          no murmur. no, sorry, left.                   | murmur none                                   | murmur — say it in full
          right barlow positive. no, the other side.    | barlow.left positive                          |
          absent femoral pulse. right barlow positive. no, sorry, left. | barlow.left positive          | femoral pulse: absent — left, right or both?
          right barlow positive. absent femoral pulse. no, sorry, left. | femoral-pulse.left absent, barlow.right positive |
          right barlow positive. I mean the other one.  | barlow.left positive                          |
          left barlow positive. actually it was the right | barlow.right positive                       |
          barlow positive. no, the other side.          |                                               | Barlow: positive — left, right or both?
          actually left barlow positive                 | barlow.left positive                          |
          no left hip click                             | hip-click.left none                           |
          """)
  void anAmendedSideMovesTheFindingOrAsks(String dialogue, String answers, String question) {
    say(dialogue);
    assertEquals(answers == null ? "" : answers, answers());
    assertEquals(
        question == null ? "" : question,
        session.record().openQuestion().map(asked -> asked.question().text()).orElse(""));
  }

  // The dialogue, what stands, what of it waits: an older question takes no words from a sentence,
  // nor a yes from an offer; a test that is named is not where something was found.
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          palate intact. ortolani is negative on the right and on the left. | ortolani.left negative, ortolani.right negative, palate intact | 0
          cephalohaematoma. ortolani is negative on the right and on the left. | ortolani.left negative, ortolani.right negative, scalp cephalohaematoma | 0
          palate intact. right hip doesn't go out on barlow.      | palate intact               | 1
          palate intact. right hip doesn't go out on barlow. yes. | hip-abduction.right limited [tagger], palate intact | 0
          palate intact. yes.                                     | palate intact palpated=yes  | 0
          cephalohaematoma. on the left.                          | scalp.left cephalohaematoma | 0
          """)
  void anOpenQuestionTakesNothingThatIsSaidOfSomethingElse(
      String dialogue, String answers, int waiting) {
    say(dialogue);
    assertEquals(answers, String.join(", ", new TreeSet<>(List.of(answers().split(", ")))));
    assertEquals(waiting, session.record().unsure().size());
  }

  // What was said when; only right behind a finding are the last words about its side.
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          no sorry left      | 4  | accepted | barlow.left positive
          no sorry left      | 40 | unsure   | barlow.right positive
          no sign of left    | 4  | unsure   | barlow.right positive
          no sign of left    | 40 | ignored  | barlow.right positive
          """)
  void aSideIsAmendedOnlyRightBehindItsFindingAndNothingLikeItIsSilent(
      String words, double at, String outcome, String answers) {
    hear("right barlow positive", 1);
    hear(words, at);
    List<Utterance> said = session.record().utterances();
    assertEquals(outcome, said.get(1).heard().outcome().id());
    assertEquals(answers, answers());
    assertTrue(said.get(1).candidates().isEmpty());
  }

  private void hear(String text, double at) {
    List<Word> words =
        Arrays.stream(text.split(" ")).map(word -> new Word(word, at, at + 1, 1)).toList();
    session.hear(new Hypothesis(at, at + 1, words), 0);
  }

  /** Each value of each step said behind each other one of the same step. */
  @Test
  void aSecondReadingNeverLowersTheHighestLevel() {
    Protocol.standard().steps().filter(step -> !step.isMeasured()).forEach(this::pairs);
  }

  private void pairs(Step step) {
    String place = step.id() + (step.sided() ? ".left " : " ");
    for (Value first : step.values()) {
      for (Value second : step.values()) {
        Bedside bed = new Bedside();
        bed.find(place + second.id());
        int alone = highest(bed.record());
        bed = new Bedside();
        bed.find(place + first.id());
        int before = highest(bed.record());
        bed.find(place + second.id());
        int after = highest(bed.record());
        String said = step.id() + ": " + first.id() + ", then " + second.id();
        assertTrue(after <= before && after <= alone, said);
      }
    }
  }

  /** The place of the highest level; more than any where no flag is raised. */
  private static int highest(ExamRecord record) {
    return Assessor.of(Protocol.standard())
        .assess(record, Settings.DEFAULT, ZoneOffset.UTC)
        .flags()
        .stream()
        .mapToInt(flag -> flag.level().ordinal())
        .min()
        .orElse(Integer.MAX_VALUE);
  }
}
