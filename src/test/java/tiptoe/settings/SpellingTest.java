package tiptoe.settings;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SpellingTest {
  private static final Settings AMERICAN = Settings.DEFAULT.with(Setting.SPELLING, "american");

  // Stedman's and Merriam-Webster spelling.
  @ParameterizedTest
  @CsvSource({
    "haemorrhage, hemorrhage",
    "Haemangioma of the colour, Hemangioma of the color",
    "anaemia or hypoglycaemia, anemia or hypoglycemia",
    "cephalohaematoma, cephalohematoma",
    "paediatric orthopaedics, pediatric orthopedics",
    "anterior fontanelle, anterior fontanel",
    "97th centile, 97th percentile",
    "97th percentile, 97th percentile",
    "Centile, Percentile",
    "tumour, tumor",
    "praecordium, precordium",
    "centimetres, centimeters",
    "does the treatment, does the treatment",
    "petechiae, petechiae",
  })
  void showsAmericanSpellingWhereItWasChosen(String british, String american) {
    assertEquals(american, Spelling.of(british, AMERICAN));
    assertEquals(british, Spelling.of(british, Settings.DEFAULT));
  }
}
