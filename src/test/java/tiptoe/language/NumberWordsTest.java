package tiptoe.language;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class NumberWordsTest {

  /** Wordings of clinical dictation; common practice, no published source. */
  @ParameterizedTest
  @CsvSource({
    "zero, 0",
    "oh, 0",
    "seventeen, 17",
    "forty two, 42",
    "one forty two, 142",
    "one hundred and forty two, 142",
    "a hundred and ten, 110",
    "one four two, 142",
    "three four two zero, 3420",
    "thirty four twenty, 3420",
    "three thousand four hundred and twenty, 3420",
    "three thousand, 3000",
    "two thousand and five, 2005",
    "twenty nine hundred, 2900",
    "twenty nine hundred and fifty, 2950",
    "nine nine nine nine, 9999",
    "thirty four point five, 34.5",
    "thirty six point eight, 36.8",
    "three point four two, 3.42",
    "zero point five, 0.5",
    "point five, 0.5",
    "three point twenty five, 3.25",
    "thirty four and a half, 34.5",
    "three and a quarter, 3.25",
    "minus five, -5"
  })
  void readsWhatIsSaid(String words, double number) {
    assertEquals(number, NumberWords.readings(List.of(words.split(" "))).get(0));
  }

  @Test
  void readsAPointThatWasNotSaidAsASecondReading() {
    assertEquals(List.of(368.0, 36.8), NumberWords.readings(List.of("thirty", "six", "eight")));
  }

  @ParameterizedTest
  @CsvSource({"several", "five point", "a", "hundred hundred"})
  void hasNoReadingForWhatIsNoNumber(String words) {
    assertEquals(List.of(), NumberWords.readings(List.of(words.split(" "))));
  }

  @Test
  void readsEveryNumeralTo9999AsItIsSpelledOut() {
    Stream.iterate(0, n -> n + 1)
        .limit(10_000)
        .forEach(
            n ->
                assertEquals(
                    (double) n,
                    NumberWords.readings(TypedText.spoken(Integer.toString(n))).get(0)));
  }
}
