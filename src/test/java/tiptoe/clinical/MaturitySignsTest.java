package tiptoe.clinical;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;

import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tiptoe.protocol.Gestation;
import tiptoe.protocol.Protocol;

/** The New Ballard score sign by sign (Ballard et al., J Pediatr 1991;119:417). */
class MaturitySignsTest {
  private static String scored(int... scores) {
    return IntStream.range(0, scores.length)
        .mapToObj(i -> Maturity.STEPS.get(i) + " " + scores[i])
        .collect(Collectors.joining("; "));
  }

  // The score sheet: what each sign can score, and 50 for all of them.
  @Test
  void eachSignHasTheRangeOfTheScoreSheet() {
    assertEquals(
        "0 to 4, -1 to 4, 0 to 4, -1 to 5, -1 to 4, -1 to 4,"
            + " -1 to 5, -1 to 4, -2 to 4, -1 to 4, -2 to 4, -1 to 4",
        Maturity.STEPS.stream()
            .map(step -> Protocol.standard().step(step).measure())
            .map(measure -> (int) measure.min() + " to " + (int) measure.max())
            .collect(Collectors.joining(", ")));
    Assessment all = Bedside.assess("", scored(4, 4, 4, 5, 4, 4, 5, 4, 4, 4, 4, 4));
    assertEquals("44", all.result("maturity").value());
  }

  // The maturity rating of the score sheet: 10 is 28 weeks, 35 is 38, 40 is 40.
  @ParameterizedTest
  @CsvSource({"10, 28", "15, 30", "20, 32", "25, 34", "30, 36", "35, 38", "40, 40"})
  void addsUpToTheWeeksOfTheScoreSheet(int total, int weeks) {
    int[] scores = new int[Maturity.STEPS.size()];
    for (int left = total, i = 0; left > 0; i = (i + 1) % scores.length) {
      if (scores[i] < 4) {
        scores[i]++;
        left--;
      }
    }
    Assessment found = Bedside.assess("", scored(scores));
    assertEquals(weeks + " weeks by a maturity score of " + total, found.result("maturity").text());
    assertNull(found.result("maturity-signs"));
    assertEquals(total, Maturity.expected(new Gestation(weeks, 0)));
  }

  @Test
  void saysWhichSignsAreStillToBeScored() {
    Assessment found = Bedside.assess("", scored(3, 3, 3, 3, 3, 3, 3, 3, 3, 3, 3));
    assertNull(found.result("maturity"));
    assertEquals("11", found.result("maturity-signs").value());
    assertEquals(
        "still to be scored: maturity: genitals", found.result("maturity-signs").remarks().get(0));
  }

  @Test
  void differsFromTheStatedGestationAndSaysWhatAPretermIsExpectedToScore() {
    Assessment found = Bedside.assess("gestation=33+0", scored(4, 4, 4, 4, 3, 3, 3, 3, 3, 3, 3, 3));
    assertEquals("note maturity-differs", Bedside.flags(found));
    assertEquals(
        "more than 2 weeks from the stated 33+0; a score of about 23 is expected at 33+0",
        String.join("; ", found.result("maturity").remarks()));
  }
}
