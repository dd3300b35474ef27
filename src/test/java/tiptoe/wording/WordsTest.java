package tiptoe.wording;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tiptoe.finding.Quantity;
import tiptoe.protocol.Protocol;
import tiptoe.settings.Setting;
import tiptoe.settings.Settings;

class WordsTest {
  private static final Settings AMERICAN =
      Settings.DEFAULT
          .with(Setting.WEIGHT_UNIT, "lb")
          .with(Setting.LENGTH_UNIT, "in")
          .with(Setting.TEMPERATURE_UNIT, "fahrenheit");

  // Exact by definition: 1 lb = 453.59237 g, 1 in = 2.54 cm (agreement of 1959); 37 °C = 98.6 °F.
  @ParameterizedTest
  @CsvSource({
    "3345, g, 3345 g (7 lb 6 oz)",
    "50.8, cm, 50.8 cm (20.0 in)",
    "37, °C, 37 °C (98.6 °F)",
    "35.9, °C, 35.9 °C (96.6 °F)",
    "140, /min, 140 /min",
    "9, 1, 9"
  })
  void showsTheChosenUnitBehindTheKeptOne(double number, String unit, String shown) {
    assertEquals(
        shown, new Words(Protocol.standard(), AMERICAN).quantity(new Quantity(number, unit)));
  }

  @Test
  void showsOnlyTheKeptUnitUnlessAnotherWasChosen() {
    assertEquals("37 °C", Words.asKept(Protocol.standard()).quantity(new Quantity(37, "°C")));
  }
}
