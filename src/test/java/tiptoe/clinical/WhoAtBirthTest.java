package tiptoe.clinical;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class WhoAtBirthTest {
  private static SizeModel model(String step, String sex) {
    return WhoAtBirth.model(Bedside.measure(step), sex).orElseThrow();
  }

  // SD lines at birth of the simplified field tables (WHO Child Growth Standards 2006; from
  // memory).
  @ParameterizedTest
  @CsvSource({
    "weight, boy, 2.1, 2.5, 2.9, 3.3, 3.9, 4.4, 5.0",
    "weight, girl, 2.0, 2.4, 2.8, 3.2, 3.7, 4.2, 4.8",
    "length, boy, 44.2, 46.1, 48.0, 49.9, 51.8, 53.7, 55.6",
    "length, girl, 43.6, 45.4, 47.3, 49.1, 51.0, 52.9, 54.7",
    "head-circumference, boy, 30.7, 31.9, 33.2, 34.5, 35.7, 37.0, 38.3",
    "head-circumference, girl, 30.3, 31.5, 32.7, 33.9, 35.1, 36.2, 37.4",
  })
  void agreesWithThePublishedLines(
      String step,
      String sex,
      double m3,
      double m2,
      double m1,
      double zero,
      double p1,
      double p2,
      double p3) {
    double[] published = {m3, m2, m1, zero, p1, p2, p3};
    for (int z = -3; z <= 3; z++) {
      double at = model(step, sex).valueAt(Centile.ofZScore(z).percent());
      assertEquals(published[z + 3], step.equals("weight") ? at / 1000 : at, 0.055, "SD " + z);
    }
  }

  // Computed with an independent implementation; beyond 3 SD by the rule of the WHO methods report.
  @ParameterizedTest
  @CsvSource({
    "weight, boy, 2500, -1.899",
    "weight, boy, 5400, 3.604",
    "weight, girl, 1800, -3.643",
    "length, boy, 52, 1.118",
  })
  void givesTheZScore(String step, String sex, double value, double z) {
    assertEquals(z, model(step, sex).zScore(value), 0.0005);
  }

  @Test
  void theRuleBeyondThreeSdIsForWeightOnly() {
    // (58/49.8842 - 1) / 0.03795
    assertEquals(4.287, model("length", "boy").zScore(58), 0.001);
  }

  @Test
  void goesOnWithoutAStepAtThreeSd() {
    SizeModel weight = model("weight", "boy");
    for (double z : new double[] {-4, -3, 3, 4}) {
      double below = weight.valueAt(Centile.ofZScore(z - 1e-6).percent());
      double above = weight.valueAt(Centile.ofZScore(z + 1e-6).percent());
      assertEquals(below, above, 0.05, "at SD " + z);
      assertEquals(z, weight.zScore((below + above) / 2), 1e-4);
    }
  }

  @Test
  void hasNoStandardForAnUndeterminedSex() {
    assertTrue(WhoAtBirth.model(SizeMeasure.WEIGHT, "undetermined").isEmpty());
    assertTrue(WhoAtBirth.model(SizeMeasure.WEIGHT, null).isEmpty());
  }
}
