package tiptoe.protocol;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

/** Factors: NIST Special Publication 811 (2008), appendix B.8. */
class UnitsTest {
  @Test
  void convertsBetweenFahrenheitAndCelsius() {
    assertEquals(37, Units.celsius(98.6), 1e-9);
    assertEquals(0, Units.celsius(32), 1e-9);
    assertEquals(97.7, Units.fahrenheit(36.5), 1e-9);
  }

  @Test
  void convertsPoundsAndOuncesToGrams() {
    assertEquals(453.59237, Units.GRAMS_PER_POUND, 1e-9);
    assertEquals(28.349523125, Units.GRAMS_PER_OUNCE, 1e-9);
  }

  @Test
  void showsGramsAsPoundsAndOuncesToTheNearestOunce() {
    assertEquals("7 lb 6 oz", Units.poundsAndOunces(3345));
    assertEquals("8 lb 0 oz", Units.poundsAndOunces(7 * 453.59237 + 15.6 * 28.349523125));
  }

  @Test
  void convertsCentimetresToInches() {
    assertEquals(20, Units.inches(50.8), 1e-9);
  }
}
