package tiptoe.language;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import tiptoe.finding.Finding;
import tiptoe.finding.Question;
import tiptoe.finding.Source;
import tiptoe.protocol.Protocol;

class InterpreterTest {
  private static Interpreter interpreter;
  private static TypedText typed;

  @BeforeAll
  static void loadGrammars() throws IOException {
    interpreter = new Interpreter(Shipped.network(), Protocol.standard());
    typed = Shipped.typed();
  }

  private static Interpretation interpret(String text) {
    return interpreter.interpret(typed.words(text), Dialogue.START, Source.TYPED);
  }

  /** A number that cannot be right is asked for again; what is said then needs no name. */
  @ParameterizedTest
  @CsvSource({
    "heart rate four hundred, one forty, States heart-rate",
    "temperature fifty, thirty seven point two, States temperature",
    "birth weight ninety kilos, three point two kilos, Fact birth-weight"
  })
  void takesANumberAloneForTheOneThatIsAskedFor(String said, String number, String expected) {
    Question asked =
        interpret(said).of(Meaning.Asks.class).map(Meaning.Asks::question).findFirst().get();
    Dialogue open = Dialogue.START.asking(asked, false, false);
    Interpretation answer = interpreter.interpret(typed.words(number), open, Source.TYPED);
    assertEquals(
        List.of(expected),
        answer.meanings().stream()
            .map(
                meaning ->
                    meaning instanceof Meaning.States states
                        ? "States " + states.statement().step()
                        : meaning instanceof Meaning.Fact fact ? "Fact " + fact.id() : "")
            .toList());
    assertTrue(
        interpreter
            .interpret(typed.words(number), Dialogue.START, Source.TYPED)
            .meanings()
            .isEmpty());
  }

  /** "No" taken apart from what it denies would record the opposite of what was said. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "no naevus flammeus",
        "no milk spots",
        "no crackles no naevus flammeus",
        "yes gasping"
      })
  void leavesUncoveredABareNoOrYesBesideAFinding(String text) {
    assertFalse(interpret(text).uncovered().isEmpty());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "i don't think there is crepitus on the left clavicle",
        "never any grunting",
        "left clavicle crepitus is not there",
        "mother says she had jaundice to the chest"
      })
  void leavesUncoveredWhatChangesTheMeaning(String text) {
    assertFalse(interpret(text).uncovered().isEmpty());
  }

  /** Nor is a finding taken that stands beside words which no phrase covers and which deny it. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "no milk spots",
        "never any grunting",
        "i don't think there is crepitus on the left clavicle",
        "inguinal hernia absent",
        "left clavicle crepitus is not there"
      })
  void takesNoFindingThatTheWordsBesideItDeny(String text) {
    assertEquals(List.of(), interpret(text).meanings());
  }

  @Test
  void aBareAnswerDoesNothingWhereNothingWasAsked() {
    assertTrue(interpret("both sides").meanings().isEmpty());
  }

  @Test
  void americanAndBritishSpellingMeanTheSame() {
    assertEquals(
        interpret("left parietal cephalohaematoma").statements(),
        interpret("left parietal cephalohematoma").statements());
    assertEquals(
        interpret("anterior fontanelle soft").statements(),
        interpret("anterior fontanel soft").statements());
  }

  @Test
  void aSideCarriesToTheNextFindingOfTheBreathOnly() {
    Interpretation meaning = interpret("left barlow negative ortolani negative hip abduction full");
    assertEquals(2, meaning.statements().size());
    assertEquals(Question.Kind.SIDE, meaning.questions().get(0).kind());
    assertEquals("hip-abduction", meaning.questions().get(0).about().step());
  }

  @Test
  void aSideAnswersNoQuestionOnceSomethingElseWasSaid() {
    // "positive right, negative left" once recorded a positive test on the left.
    assertEquals(List.of(), interpret("barlow positive right negative left").statements());
  }

  @Test
  void aSideDoesNotCarryToAnotherRegion() {
    Interpretation meaning = interpret("left clavicle crepitus femoral pulse strong");
    assertEquals(1, meaning.statements().size());
    assertEquals("femoral-pulse", meaning.questions().get(0).about().step());
  }

  @Test
  void aRegionThatIsNormalAsAWholeFillsNoKeyStep() {
    List<Finding> statements = interpret("eyes normal").statements();
    assertTrue(statements.stream().allMatch(Finding::group));
    assertTrue(statements.stream().noneMatch(one -> one.step().equals("red-reflex")));
  }
}
