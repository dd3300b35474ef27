package tiptoe.language.tagger;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tiptoe.finding.Source;
import tiptoe.language.Dialogue;
import tiptoe.language.Interpretation;
import tiptoe.language.Interpreter;
import tiptoe.language.Meaning;
import tiptoe.language.Shipped;
import tiptoe.protocol.Protocol;

/**
 * What a claim is taken for by how likely it was meant, and what no likelihood lets be recorded.
 */
class LikelihoodTest {
  private static final double LIKELY = 0.999;
  private static final double BETWEEN = 0.8;
  private static final double UNLIKELY = 0.4;

  private static Set<String> recorded(String text, double likelihood) throws IOException {
    Interpreter interpreter =
        new Interpreter(
            Shipped.network(),
            Protocol.standard(),
            Shipped.tagger().weighing((claim, features) -> likelihood));
    Interpretation read =
        interpreter.interpret(Shipped.typed().utterance(text), Dialogue.START, Source.GRAMMAR);
    return read.howSure().stream()
        .filter(Interpretation.Certainty::sure)
        .map(Interpretation.Certainty::meaning)
        .filter(Meaning.States.class::isInstance)
        .map(meaning -> ((Meaning.States) meaning).statement())
        .map(finding -> finding.step() + "=" + finding.value())
        .collect(Collectors.toSet());
  }

  @Test
  void weightsAndLimitsAreThere() {
    Likelihood.Limits limits = Likelihood.Limits.shipped();

    assertTrue(limits.offeredFrom() < limits.recordedFrom());
    assertTrue(limits.recordedFrom() < limits.offeredDoubtfulFrom());
    assertTrue(limits.offeredDoubtfulFrom() < limits.recordedOpenFrom());
    assertTrue(limits.recordedOpenFrom() < limits.keyNormalFrom() && limits.keyNormalFrom() < 1);
    assertTrue(Likelihood.shipped().weights().containsKey(Likelihood.ALWAYS));
  }

  @Test
  void theOddsAreTheSumOfTheWeights() {
    Likelihood model = new Likelihood(Map.of(Likelihood.ALWAYS, 1f, "here", -2f));

    assertEquals(1 / (1 + Math.exp(-1)), model.of(Set.of("nothing of it")), 1e-9);
    assertEquals(1 / (1 + Math.exp(1)), model.of(Set.of("here")), 1e-9);
  }

  /** "Flobbery" is a word that nobody knows, in a stretch of its own behind what is found. */
  @Test
  void whatIsLikelyIsRecordedBesideOpenWordsElsewhere() throws IOException {
    String text = "the anterior fontanelle is open, soft and flat, a gronk flobbery";

    assertEquals(Set.of("anterior-fontanelle=open-soft-flat"), recorded(text, LIKELY));
    assertEquals(Set.of(), recorded(text, BETWEEN));
  }

  /** A plan, a denial or a remark on others in a stretch of its own is of something else. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "breathing easy, and the gronk was not in its flobbery",
        "breathing easy, a gronk of his mother's flobbery"
      })
  void whatIsLikelyIsRecordedBeforeAnotherMatter(String text) throws IOException {
    assertEquals(Set.of("breathing=easy"), recorded(text, LIKELY));
    assertEquals(Set.of(), recorded(text, BETWEEN));
  }

  /** "Industry" is in no list of the examination, but a word that everybody says. */
  @Test
  void anEverydayWordBehindWhatIsNormalTakesNothingFromIt() throws IOException {
    String text = "the sutures are normal an %s";

    assertEquals(Set.of("sutures=normal"), recorded(text.formatted("industry"), LIKELY));
    assertEquals(Set.of(), recorded(text.formatted("industry"), BETWEEN));
    assertEquals(Set.of(), recorded(text.formatted("flobbery"), LIKELY));
    assertEquals(Set.of(), recorded("the sutures are normal but an industry", LIKELY));
    assertEquals(Set.of(), recorded("the anus is patent an industry", LIKELY));
  }

  @Test
  void whatIsUnlikelyIsOnlyOffered() throws IOException {
    String text = "and then his abdomen is soft, lovely";

    assertEquals(Set.of("abdomen=soft"), recorded(text, BETWEEN));
    assertEquals(Set.of(), recorded(text, UNLIKELY));
  }

  /** However likely: a denial, a doubt, another person, a question, a correction, another side. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "the gronk fontanelle is open, soft and flat",
        "the fontanelle is bulging, a flobbery, not really",
        "his brother had a gronk, the fontanelle is bulging",
        "i think the fontanelle is bulging gronk",
        "if the fontanelle is bulging, then gronk flobbery",
        "the fontanelle is bulging, a gronk flobbery?",
        "femoral weak on the right, no gronk, on the left",
        "femoral weak on the right, flobbery, weak on the left"
      })
  void noLikelihoodRecordsWhatMayBeTakenBack(String text) throws IOException {
    assertEquals(Set.of(), recorded(text, LIKELY));
  }
}
