package tiptoe.clinical;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tiptoe.protocol.Gestation;

class NewbornSizeTest {
  private static final Path PUBLISHED = Path.of("../shared/reference/newborn-size-centiles.csv");
  private static final int[] CENTILES = {3, 5, 10, 50, 90, 95, 97};

  private static SizeModel model(String step, String sex, String gestation) {
    return NewbornSize.model(Bedside.measure(step), sex, Gestation.parse(gestation)).orElseThrow();
  }

  // Published tables of the study group, rounded to 0.01 kg and 0.1 cm: newborn size standard from
  // 33+0 (Lancet 2014;384:857) and very preterm reference below it (Lancet 2016;387:844).
  @ParameterizedTest
  @CsvSource({
    "weight, boy, 33+0, 1.18, 1.28, 1.43, 1.95, 2.52, 2.70, 2.82",
    "head-circumference, boy, 24+0, 19.4, 19.8, 20.3, 22.3, 24.3, 24.9, 25.3",
    "head-circumference, boy, 28+0, 23.0, 23.3, 23.9, 25.9, 27.9, 28.5, 28.8",
    "head-circumference, boy, 32+6, 27.3, 27.6, 28.2, 30.2, 32.2, 32.8, 33.1",
    "head-circumference, boy, 33+0, 28.2, 28.6, 29.1, 30.9, 32.7, 33.3, 33.6",
    "head-circumference, boy, 40+0, 32.2, 32.4, 32.9, 34.3, 35.8, 36.3, 36.6",
    "head-circumference, boy, 42+6, 33.3, 33.6, 34.0, 35.4, 36.8, 37.2, 37.5",
  })
  void agreesWithThePublishedCentiles(
      String step,
      String sex,
      String gestation,
      double p3,
      double p5,
      double p10,
      double p50,
      double p90,
      double p95,
      double p97) {
    SizeModel model = model(step, sex, gestation);
    double[] published = {p3, p5, p10, p50, p90, p95, p97};
    boolean weight = step.equals("weight");
    for (int i = 0; i < CENTILES.length; i++) {
      double unit = weight ? 1000 : 1;
      assertEquals(
          published[i], model.valueAt(CENTILES[i]) / unit, weight ? 0.015 : 0.055, gestation);
    }
  }

  // Published z-score tables of the same study group, SD -3 to +3.
  @ParameterizedTest
  @CsvSource({
    "weight, boy, 24+0, 0.36, 0.43, 0.53, 0.64, 0.77, 0.94, 1.14",
    "weight, boy, 28+0, 0.60, 0.73, 0.88, 1.07, 1.30, 1.58, 1.92",
    "weight, boy, 32+6, 1.08, 1.31, 1.59, 1.92, 2.33, 2.83, 3.43",
    "weight, boy, 37+0, 1.59, 2.08, 2.50, 2.89, 3.32, 3.80, 4.39",
    "weight, boy, 40+0, 2.10, 2.58, 2.99, 3.38, 3.81, 4.29, 4.86",
    "weight, boy, 42+6, 2.43, 2.91, 3.32, 3.71, 4.13, 4.60, 5.18",
    "weight, girl, 24+0, 0.34, 0.41, 0.50, 0.60, 0.73, 0.89, 1.07",
    "weight, girl, 30+3, 0.76, 0.93, 1.13, 1.36, 1.66, 2.01, 2.44",
    "weight, girl, 40+0, 2.06, 2.50, 2.88, 3.26, 3.68, 4.14, 4.70",
    "length, boy, 24+0, 24.4, 27.0, 29.6, 32.2, 34.8, 37.4, 40.0",
    "length, boy, 32+6, 35.7, 38.3, 40.9, 43.5, 46.1, 48.7, 51.3",
    "length, boy, 40+0, 44.4, 46.5, 48.3, 49.9, 51.6, 53.4, 55.6",
    "head-circumference, girl, 24+0, 17.4, 19.0, 20.5, 22.1, 23.6, 25.2, 26.8",
    "head-circumference, girl, 32+6, 25.3, 26.8, 28.4, 30.0, 31.5, 33.1, 34.6",
    "head-circumference, girl, 40+0, 30.3, 31.6, 32.7, 33.8, 34.9, 36.1, 37.5",
    "length, girl, 24+0, 24.0, 26.6, 29.2, 31.8, 34.4, 37.0, 39.6",
    "length, girl, 29+3, 30.9, 33.5, 36.1, 38.7, 41.3, 43.9, 46.5",
    "length, girl, 32+6, 35.2, 37.8, 40.4, 43.0, 45.6, 48.2, 50.8",
    "length, girl, 36+0, 40.7, 42.9, 44.8, 46.5, 48.1, 49.9, 52.0",
    "length, girl, 40+0, 43.9, 45.9, 47.6, 49.2, 50.8, 52.4, 54.3",
  })
  void agreesWithThePublishedZScores(
      String step,
      String sex,
      String gestation,
      double m3,
      double m2,
      double m1,
      double zero,
      double p1,
      double p2,
      double p3) {
    SizeModel model = model(step, sex, gestation);
    double[] published = {m3, m2, m1, zero, p1, p2, p3};
    boolean weight = step.equals("weight");
    for (int z = -3; z <= 3; z++) {
      double at = model.valueAt(Centile.ofZScore(z).percent()) / (weight ? 1000 : 1);
      assertEquals(published[z + 3], at, weight ? 0.015 : 0.055, gestation + " SD " + z);
      assertEquals(z, model.zScore(model.valueAt(Centile.ofZScore(z).percent())), 1e-6);
    }
  }

  // Computed with an independent implementation of the published formula (SciPy 1.17).
  @ParameterizedTest
  @CsvSource({
    "weight, boy, 40+0, 2500, 1.445, -2.185",
    "weight, girl, 40+0, 3000, 24.570, -0.688",
    "weight, boy, 40+0, 4200, 96.656, 1.833",
    "weight, boy, 37+0, 2400, 10.610, -1.248",
    "length, girl, 40+0, 48.0, 21.775, -0.780",
    "head-circumference, boy, 40+0, 36.0, 92.441, 1.435",
  })
  void givesCentileAndZScore(
      String step, String sex, String gestation, double value, double centile, double z) {
    SizeModel model = model(step, sex, gestation);
    assertEquals(centile, model.centile(value).percent(), 0.001);
    assertEquals(z, model.zScore(value), 0.001);
    assertEquals(value, model.valueAt(model.centile(value).percent()), 1e-6 * value);
  }

  @Test
  void agreesWithEveryPublishedCentile() throws IOException {
    assumeTrue(Files.exists(PUBLISHED), "the published centile tables are not beside the project");
    List<String> lines = Files.readAllLines(PUBLISHED);
    int cells = 0;
    for (String line : lines.subList(1, lines.size())) {
      String[] cell = line.split(",");
      SizeMeasure measure =
          cell[0].startsWith("weight")
              ? SizeMeasure.WEIGHT
              : cell[0].startsWith("length") ? SizeMeasure.LENGTH : SizeMeasure.HEAD;
      int days = Integer.parseInt(cell[2]);
      SizeModel model =
          NewbornSize.model(
                  measure,
                  cell[1].equals("male") ? "boy" : "girl",
                  new Gestation(days / 7, days % 7))
              .orElseThrow();
      double tolerance = measure == SizeMeasure.WEIGHT ? 0.015 : 0.055;
      for (int i = 0; i < CENTILES.length; i++, cells++) {
        assertEquals(
            Double.parseDouble(cell[3 + i]),
            measure.toStandard(model.valueAt(CENTILES[i])),
            tolerance,
            line);
      }
    }
    assertEquals(2940, cells);
  }

  @Test
  void hasNoStandardOutsideItsGestationsOrForAnotherSex() {
    assertTrue(NewbornSize.model(SizeMeasure.WEIGHT, "girl", new Gestation(23, 6)).isEmpty());
    assertTrue(NewbornSize.model(SizeMeasure.WEIGHT, "girl", new Gestation(24, 0)).isPresent());
    assertTrue(NewbornSize.model(SizeMeasure.WEIGHT, "girl", new Gestation(42, 6)).isPresent());
    assertTrue(NewbornSize.model(SizeMeasure.WEIGHT, "girl", new Gestation(43, 0)).isEmpty());
    assertTrue(
        NewbornSize.model(SizeMeasure.WEIGHT, "undetermined", new Gestation(40, 0)).isEmpty());
    assertTrue(NewbornSize.model(SizeMeasure.WEIGHT, null, new Gestation(40, 0)).isEmpty());
  }

  @Test
  void namesTheReferenceBelow33WeeksAndTheStandardFromThere() {
    assertEquals(NewbornSize.PRETERM_SOURCE, NewbornSize.source(new Gestation(32, 6)));
    assertEquals(NewbornSize.STANDARD_SOURCE, NewbornSize.source(new Gestation(33, 0)));
  }

  @Test
  void staysFiniteForTheLargestAndSmallestPlausibleBabies() {
    for (String gestation : List.of("24+0", "32+6", "33+0", "40+0", "42+6")) {
      for (String sex : List.of("girl", "boy")) {
        for (double grams : new double[] {300, 7000}) {
          double z = model("weight", sex, gestation).zScore(grams);
          assertTrue(Double.isFinite(z), gestation + " " + grams + " g: " + z);
        }
      }
    }
  }

  @Test
  void theHalvesMeetAtTheMode() {
    SkewT skewT = new SkewT(3.33848, 0.3926636, 1.095261, 17.05299);
    double atMode = 1 / (1 + 1.095261 * 1.095261);
    assertEquals(skewT.zScore(3.33848), skewT.zScore(3.33848 - 1e-9), 1e-8);
    assertEquals(atMode, Centile.ofZScore(skewT.zScore(3.33848)).percent() / 100, 1e-9);
    assertEquals(3.33848, skewT.quantile(atMode), 1e-9);
  }

  @Test
  void readsTheTableAnew() {
    assertEquals(
        new SkewT(3.33848, 0.3926636, 1.095261, 17.05299),
        NewbornSize.at(SizeMeasure.WEIGHT, "boy", 280));
    assertEquals(34.54082, NewbornSize.at(SizeMeasure.HEAD, "girl", 300).mu());
  }
}
