package tiptoe.clinical;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CentileTest {
  @ParameterizedTest
  @CsvSource({
    "0, below the 1st",
    "0.999, below the 1st",
    "1, 1st",
    "1.44, 1st",
    "2, 2nd",
    "2.6, just below the 3rd",
    "3, 3rd",
    "3.4, just above the 3rd",
    "4, 4th",
    "9.6, just below the 10th",
    "10, 10th",
    "10.4, just above the 10th",
    "10.61, 11th",
    "11.5, 12th",
    "13, 13th",
    "21, 21st",
    "22, 22nd",
    "24.6, 25th",
    "50, 50th",
    "90.2, just above the 90th",
    "92.4, 92nd",
    "96.66, just below the 97th",
    "97, 97th",
    "98.4, 98th",
    "99, 99th",
    "99.001, above the 99th",
    "100, above the 99th",
  })
  void readsAsPeopleSayIt(double percent, String text) {
    assertEquals(text, new Centile(percent).text());
    assertEquals(text, new Centile(percent).toString());
  }

  @Property
  void neverSaysTheZerothOrTheHundredth(@ForAll @DoubleRange(max = 100) double percent) {
    String text = new Centile(percent).text();
    assertEquals(text, text.replace("100th", "").replaceAll("\\b0th", ""));
  }

  @Test
  void refusesWhatIsNoShare() {
    assertEquals(
        "expected a centile from 0 to 100, found 100.5",
        assertThrows(IllegalArgumentException.class, () -> new Centile(100.5)).getMessage());
    assertThrows(IllegalArgumentException.class, () -> new Centile(-0.1));
    assertThrows(IllegalArgumentException.class, () -> new Centile(Double.NaN));
  }

  // Common practice with the newborn size standard: below the 10th small, below the 3rd severely
  // small, above the 90th large; head circumference marked below the 3rd and above the 97th.
  @ParameterizedTest
  @CsvSource({
    "weight, 2.99, severely-small",
    "weight, 3, small",
    "weight, 9.99, small",
    "weight, 10, expected",
    "weight, 90, expected",
    "weight, 90.01, large",
    "head-circumference, 2.99, small",
    "head-circumference, 3, expected",
    "head-circumference, 97, expected",
    "head-circumference, 97.01, large",
    "length, 2.99, small",
    "length, 97.01, large",
  })
  void classesSizeOnBothSidesOfEachLine(String step, double percent, String expected) {
    assertEquals(expected, SizeClass.of(Bedside.measure(step), new Centile(percent)).id());
  }
}
