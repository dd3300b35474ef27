package tiptoe.speech;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The limits are the tool's own, measured on spoken sentences and babble; no source outside. */
class RehearingTest {
  @ParameterizedTest(name = "{0} s: {1}")
  @CsvSource({"1.1, false", "1.2, true", "8.0, true", "8.1, false", "15.0, false"})
  void hearsNeitherShortAnswersNorLongTalk(double seconds, boolean heard) {
    Word word = new Word("word", 0, seconds, 1);
    assertEquals(heard, Rehearing.isFreely(new Utterance(0, seconds, List.of(word))));
  }
}
