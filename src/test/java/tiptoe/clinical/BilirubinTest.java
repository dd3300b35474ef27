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
import tiptoe.settings.Setting;
import tiptoe.settings.Settings;

/** Bilirubin against the published thresholds. */
class BilirubinTest {
  private static final Settings BY_AAP = Settings.DEFAULT.with(Setting.JAUNDICE, "aap-2022");
  private static final Path AAP_TABLES = Path.of("../shared/reference/bilirubin-aap-2022.csv");

  // NICE CG98, threshold table for babies of 38 weeks and more, every row. The printed figures are
  // cut to whole numbers.
  @ParameterizedTest
  @CsvSource(
      textBlock =
          """
          0, 100, 100
          6, 125, 150
          12, 150, 200
          18, 175, 250
          24, 200, 300
          30, 212, 350
          36, 225, 400
          42, 237, 450
          48, 250, 450
          54, 262, 450
          60, 275, 450
          66, 287, 450
          72, 300, 450
          78, 312, 450
          84, 325, 450
          90, 337, 450
          96, 350, 450
          200, 350, 450
          """)
  void agreesWithEveryRowOfTheTableFrom38Weeks(double hours, int phototherapy, int exchange) {
    for (String gestation : List.of("38+0", "39+4", "42+0")) {
      BilirubinThresholds found =
          BilirubinThresholds.of("nice-cg98", Gestation.parse(gestation), hours, false);
      assertEquals(phototherapy, (int) Math.floor(found.phototherapy()));
      assertEquals(exchange, (int) Math.floor(found.exchange()));
    }
  }

  // NICE CG98, treatment threshold graphs: from 72 h weeks x 10 - 100 and weeks x 10; from 40 and
  // 80 at birth in a straight line.
  @ParameterizedTest
  @CsvSource({
    "32+0, 72, 220, 320",
    "32+6, 200, 220, 320",
    "37+6, 72, 270, 370",
    "23+0, 72, 130, 230",
    "32+0, 0, 40, 80",
    "32+0, 36, 130, 200",
    "28+0, 24, 86.67, 146.67",
  })
  void followsTheLinesBelow38Weeks(
      String gestation, double hours, double phototherapy, double exchange) {
    BilirubinThresholds found =
        BilirubinThresholds.of("nice-cg98", Gestation.parse(gestation), hours, false);
    assertEquals(phototherapy, found.phototherapy(), 0.01);
    assertEquals(exchange, found.exchange(), 0.01);
  }

  // AAP, Pediatrics 2022;150:e2022058859, supplemental tables: all 6,048 cells.
  @Test
  void agreesWithEveryCellOfTheAapTables() throws IOException {
    assumeTrue(Files.isRegularFile(AAP_TABLES), "no reference tables in ../shared");
    int cells = 0;
    for (String line : Files.readAllLines(AAP_TABLES)) {
      if (line.startsWith("table")) {
        continue;
      }
      String[] cell = line.split(",");
      BilirubinThresholds found =
          BilirubinThresholds.of(
              "aap-2022",
              new Gestation(Integer.parseInt(cell[2]), 0),
              Integer.parseInt(cell[3]),
              cell[1].equals("yes"));
      double micromoles = cell[0].equals("exchange") ? found.exchange() : found.phototherapy();
      assertEquals(Double.parseDouble(cell[4]), micromoles * 584.66 / 10_000, 0.001, line);
      cells++;
    }
    assertEquals(6048, cells);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          gestation=39+0 age=48 | bilirubin 250 µmol/L | below | arrange bilirubin-close | NICE CG98: above the threshold, not at it
          gestation=39+0 age=48 | bilirubin 251 µmol/L | phototherapy | urgent bilirubin-phototherapy | NICE CG98
          gestation=39+0 age=48 | bilirubin 451 µmol/L | exchange | emergency bilirubin-exchange | NICE CG98
          gestation=39+0 age=48 | bilirubin 199 µmol/L | below | | NICE CG98: more than 50 below
          gestation=39+0 age=48 | bilirubin 200 µmol/L | below | arrange bilirubin-close | NICE CG98: 50 below
          gestation=39+0 age=96 | bilirubin 260 µmol/L age=48 | phototherapy | urgent bilirubin-phototherapy | the age that was said counts
          gestation=32+0 age=80 | bilirubin 221 µmol/L | phototherapy | urgent bilirubin-phototherapy | NICE CG98, graph for 32 weeks
          """)
  void flagsWhatTheThresholdSays(
      String baby, String findings, String value, String flags, String source) {
    Assessment found = Bedside.assess(baby, findings, Settings.DEFAULT);
    assertEquals(flags == null ? "" : flags, Bedside.flags(found), source);
    assertEquals(value, result(found).value());
  }

  @Test
  void takesTheLowerThresholdsOfTheAapUnlessThereAreNoRiskFactors() {
    Result unknown =
        result(Bedside.assess("gestation=39+0 age=48", "bilirubin 260 µmol/L", BY_AAP));
    Result without =
        result(
            Bedside.assess(
                "gestation=39+0 age=48 neurotoxicity-risk=no", "bilirubin 260 µmol/L", BY_AAP));
    assertTrue(unknown.phototherapy() < without.phototherapy());
    assertTrue(unknown.remarks().toString().contains("lower thresholds"));
    assertEquals(List.of(), without.remarks());
    assertEquals("aap-2022", without.standard());
  }

  @Test
  void asksForAgeAndGestationAndJudgesNothingWithoutThem() {
    Assessment found = Bedside.assess("", "bilirubin 260 µmol/L", Settings.DEFAULT);
    assertTrue(found.results().isEmpty());
    List<String> needs = found.needs().stream().map(Need::fact).toList();
    assertTrue(needs.containsAll(List.of("age", "gestation")), needs.toString());
  }

  @Test
  void tellsJaundiceThatStaysTooLong() {
    String term =
        Bedside.flags(
            Bedside.assess("gestation=39+0 age=340", "jaundice present", Settings.DEFAULT));
    String preterm =
        Bedside.flags(
            Bedside.assess("gestation=35+0 age=340", "jaundice present", Settings.DEFAULT));
    assertTrue(term.contains("jaundice-prolonged"), term);
    assertTrue(!preterm.contains("jaundice-prolonged"), preterm);
  }

  // NICE CG98: more than 8.5 µmol/L an hour; again within 18 or 24 hours where no more than 50
  // below,
  // 4 to 6 hours behind the start of phototherapy.
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          gestation=39+0 age=60 | bilirubin 200 µmol/L age=40; bilirubin 234 µmol/L age=44 | rising by 8.5 µmol/L an hour; again within 24 hours, within 18 where there are risk factors | arrange bilirubin-close
          gestation=39+0 age=60 | bilirubin 200 µmol/L age=40; bilirubin 234.4 µmol/L age=44 | rising by 8.6 µmol/L an hour (rapid); again within 24 hours, within 18 where there are risk factors | urgent bilirubin-rises-fast, arrange bilirubin-close
          gestation=39+0 age=60 | bilirubin 234.4 µmol/L age=44; bilirubin 200 µmol/L age=40 repeat=first | rising by 8.6 µmol/L an hour (rapid); again within 24 hours, within 18 where there are risk factors | urgent bilirubin-rises-fast, arrange bilirubin-close
          gestation=39+0 age=60 | bilirubin 240 µmol/L age=40; bilirubin 220 µmol/L age=50 repeat=first | falling by 2.0 µmol/L an hour; again within 24 hours, within 18 where there are risk factors | arrange bilirubin-close
          gestation=39+0 age=60 feeding=breast sibling-phototherapy=yes | bilirubin 240 µmol/L | again within 18 hours: phototherapy of a brother or sister, fed at the breast alone | arrange bilirubin-close, arrange sibling-phototherapy
          gestation=37+6 age=80 | bilirubin 230 µmol/L | again within 18 hours: born before 38 weeks | arrange bilirubin-close
          gestation=39+0 age=60 | bilirubin 100 µmol/L | no routine repeat where the baby is well |
          gestation=39+0 age=60 | bilirubin 300 µmol/L | again 4 to 6 hours after phototherapy began, then every 6 to 12 hours once it is stable or falling | urgent bilirubin-phototherapy
          gestation=39+0 age=60 | bilirubin 460 µmol/L | again within 2 hours of an exchange transfusion | emergency bilirubin-exchange
          """)
  void saysHowFastItRisesAndWhenToMeasureAgain(
      String baby, String findings, String remarks, String flags) {
    Assessment found = Bedside.assess(baby, findings, Settings.DEFAULT);
    assertEquals(remarks, String.join("; ", result(found).remarks()));
    assertEquals(flags == null ? "" : flags, Bedside.flags(found));
  }

  // AAP, Pediatrics 2022;150:e2022058859: 0.3 mg/dL an hour or more in the first 24 hours, 0.2
  // behind
  // them; 1 mg/dL is 17.1 µmol/L.
  @ParameterizedTest
  @CsvSource({
    "50, 81, 24, true",
    "50, 80.7, 24, false",
    "50, 70.6, 25, true",
    "50, 70, 25, false",
  })
  void callsARiseRapidByTheAap(double first, double second, double age, boolean rapid) {
    String findings =
        "bilirubin %s µmol/L age=%s; bilirubin %s µmol/L age=%s repeat=first"
            .formatted(first, age - 6, second, age);
    String flags =
        Bedside.flags(
            Bedside.assess("gestation=39+0 age=30 neurotoxicity-risk=no", findings, BY_AAP));
    assertEquals(rapid, flags.contains("bilirubin-rises-fast"), flags);
  }

  // AAP 2022: isoimmune haemolytic disease is a neurotoxicity risk factor.
  @Test
  void takesAPositiveAntiglobulinTestForARiskFactor() {
    Result found =
        result(
            Bedside.assess(
                "gestation=39+0 age=48 neurotoxicity-risk=no direct-antiglobulin=positive",
                "bilirubin 260 µmol/L",
                BY_AAP));
    Result without =
        result(
            Bedside.assess(
                "gestation=39+0 age=48 neurotoxicity-risk=no", "bilirubin 260 µmol/L", BY_AAP));
    assertTrue(found.phototherapy() < without.phototherapy());
  }

  private static Result result(Assessment assessment) {
    return assessment.results().stream()
        .filter(result -> result.id().equals("bilirubin"))
        .findFirst()
        .orElseThrow();
  }
}
