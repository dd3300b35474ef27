package tiptoe.session;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import tiptoe.finding.Source;
import tiptoe.language.Dialogue;
import tiptoe.language.Interpretation;

/** The reader that the commands use does all that the tagger does. */
class UnderstandingTest {
  private static final Understanding UNDERSTANDING = Hearing.understood();

  private static List<String> certain(String text) {
    Interpretation read =
        UNDERSTANDING
            .interpreter()
            .interpret(UNDERSTANDING.typed().utterance(text), Dialogue.START, Source.TYPED);
    Interpretation counts = read.isParted() ? read.certain() : read;
    return counts.statements().stream().map(one -> one.step() + "=" + one.value()).toList();
  }

  @Test
  void readsWhatWasLeftOut() {
    assertEquals(
        List.of("moro=not-examined", "palate=intact"),
        certain("haven't done the moro yet, palate intact"));
  }

  @Test
  void partsWhatIsSaidInOneBreath() {
    assertTrue(
        certain("first only looking no hands she is pink all over and wide awake watching me")
            .contains("colour=pink"));
  }
}
