package tiptoe.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tiptoe.grammar.PhraseNetwork;
import tiptoe.session.ContinuablePhrases;
import tiptoe.session.Hearing;

/** Which words may be torn off, by the grammars as they are. */
class GoingOnTest {
  private static final PhraseNetwork network = Hearing.understood().network();

  @ParameterizedTest
  @CsvSource({
    "weight three thousand, true",
    "weight three thousand four hundred, true",
    "temperature thirty six, true",
    "heart rate one hundred, true",
    "no, true",
    "right, true",
    "weight three thousand four hundred and twenty grams, false",
    "left barlow negative, false",
    "anus patent, false",
    "no murmur, false",
  })
  void waitsForTheRestOfANumberAndForWhatALoneNoBelongsTo(String words, boolean mayGoOn) {
    assertEquals(mayGoOn, new ContinuablePhrases(network).mayGoOn(List.of(words.split(" "))));
  }

  @ParameterizedTest
  @CsvSource({
    "weight three thousand, four, true",
    "temperature thirty six, point, true",
    "no, murmur, true",
    "weight three thousand, murmur, false",
  })
  void knowsWhatCarriesAPhraseOn(String words, String next, boolean goesOn) {
    assertEquals(
        goesOn, new ContinuablePhrases(network).goesOnWith(List.of(words.split(" ")), next));
  }
}
