package tiptoe.wording;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tiptoe.exam.Changes;
import tiptoe.language.TypedText;
import tiptoe.session.ExamSession;
import tiptoe.session.Hearing;
import tiptoe.session.Sessions;
import tiptoe.session.Understanding;
import tiptoe.settings.Settings;

class SpokenWordingTest {
  private static final Understanding understanding = Hearing.understood();

  private final ExamSession session = Sessions.inMemory(understanding, Settings.DEFAULT);

  private List<String> spoken(String dialogue, boolean results) {
    Changes last = null;
    int at = 0;
    for (String sentence : TypedText.sentences(dialogue)) {
      last = session.dictate(sentence, understanding.typed().words(sentence), at++);
    }
    return SpokenWording.of(last, session.wording().words(), results);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          left clavicle crepitus.                      | left clavicle, crepitus | ''
          weight three thousand four hundred and twenty grams. | weight, 3420 grams | ''
          clavicle crepitus.                           | not recorded yet. clavicle, crepitus, left, right or both? | clavicle, crepitus, left, right or both?
          left clavicle crepitus. cross that out.      | crossed out left clavicle, crepitus | ''
          barlow negative both hips.                   | Barlow on both sides, negative | ''
          left clavicle wibble wobble.                 | not understood | ''
          end of examination. no.                      | going on | ''
          """)
  void resultSideAndNumberAreReadBackAndQuestionsAsked(String said, String all, String asked) {
    assertEquals(all, String.join(". ", spoken(said, true)));
    assertEquals(asked, String.join(". ", spokenAgain(said)));
  }

  private List<String> spokenAgain(String said) {
    return new SpokenWordingTest().spoken(said, false);
  }

  @Test
  void whatIsMissingIsAListByRegion() {
    List<String> list = spoken("what is missing.", false);
    assertEquals("head, anterior fontanelle", list.get(0));
    assertTrue(list.contains("hips, Barlow on both sides, Ortolani on both sides"), list::toString);
    assertTrue(list.get(list.size() - 1).matches("and \\d+ others"), list::toString);
    assertEquals(list.size(), list.stream().distinct().count());
    List<String> here = spoken("now the hips. left barlow negative. what is missing.", false);
    assertTrue(
        here.contains(
            "hips, right Barlow, Ortolani on both sides, hip abduction on both sides, hip click on"
                + " both sides, knee height"),
        here::toString);
  }

  /** A voice is slower than a glance, and nothing is heard meanwhile: some 150 words a minute. */
  @Test
  void whatIsMissingIsToldWithinHalfAMinuteHoweverMuchItIs() {
    String all = String.join(" ", spoken("what is missing.", false));
    assertTrue(all.split(" ").length <= 75, all);
  }

  @Test
  void detailsOfTwoFindingsThatContradictEachOtherAreRead() {
    List<String> asked = spoken("murmur grade two. murmur grade three.", false);
    assertTrue(asked.get(0).contains("present, grade 2"), asked::toString);
    assertTrue(asked.get(0).contains("present, grade 3"), asked::toString);
  }
}
