package tiptoe.clinical;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tiptoe.settings.Setting;
import tiptoe.settings.Settings;

/** Blood glucose: who is at risk, when it is due, and what is low. */
class GlucoseTest {
  private static final Settings AAP = Settings.DEFAULT.with(Setting.HYPOGLYCAEMIA, "aap-2011");

  private static String flags(Assessment assessment) {
    return assessment.flags().stream()
        .filter(flag -> flag.rule().startsWith("glucose"))
        .map(flag -> flag.level().id() + " " + flag.when() + " " + flag.rule())
        .collect(Collectors.joining(", "));
  }

  private static void check(
      String baby, String findings, String value, String flags, Settings settings) {
    Assessment found = Bedside.assess(baby, findings, settings);
    Result result = found.result("glucose");
    assertEquals(value, result == null ? null : result.value());
    assertEquals(flags == null ? "" : flags, flags(found));
  }

  // BAPM, Identification and management of neonatal hypoglycaemia in the full term infant, 2017:
  // below 1.0; 1.0 to 1.9; 2.0 and more; 2.5 with clinical signs; still below 2.0.
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          age=5 | glucose 0.9 mmol/L | severe | emergency now glucose-severe
          age=5 | glucose 1.0 mmol/L | low | urgent now glucose-low
          age=5 | glucose 1.9 mmol/L | low | urgent now glucose-low
          age=5 | glucose 2.0 mmol/L | target |
          age=5 | glucose 2.4 mmol/L; movements jittery | target | emergency now glucose-low-with-signs
          age=5 | glucose 2.5 mmol/L; movements jittery | target |
          age=5 | glucose 1.9 mmol/L; alertness lethargic | low | emergency now glucose-low-with-signs, urgent now glucose-low
          age=5 | glucose 0.9 mmol/L; tone low | severe | emergency now glucose-low-with-signs
          age=5 | glucose 1.9 mmol/L; glucose 1.8 mmol/L | low | urgent now glucose-low-again, urgent now glucose-low
          age=5 | glucose 1.9 mmol/L; glucose 2.1 mmol/L | target |
          age=5 | glucose 10 mmol/L | target |
          age=5 | glucose 10.1 mmol/L | target | arrange today glucose-high
          age=1 maternal-diabetes=gestational | | | arrange now glucose-due-bapm
          age=1 maternal-diabetes=no | | |
          age=48 maternal-diabetes=type-1 | | | arrange now glucose-due-bapm
          age=49 maternal-diabetes=type-1 | | |
          age=1 maternal-beta-blocker=yes | | | arrange now glucose-due-bapm
          age=1 maternal-beta-blocker=yes | glucose 2.6 mmol/L | target |
          age=1 gestation=36+6 | | | arrange now glucose-due-bapm
          age=1 gestation=37+0 | | |
          age=1 gestation=34+0 | | | arrange now glucose-due-bapm
          age=1 gestation=33+6 | | |
          """)
  void byTheBapm(String baby, String findings, String value, String flags) {
    check(baby, findings, value, flags, Settings.DEFAULT);
  }

  // AAP, Pediatrics 2011;127:575: treated below 40 mg/dL in the first 4 hours, 45 mg/dL until 24
  // hours, 40 with clinical signs; low below 25 and 35 mg/dL by common practice in the US. 25 mg/dL
  // are 1.39 mmol/L, 35 are 1.94, 40 are 2.22 and 45 are 2.50.
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          age=2 | glucose 0.99 mmol/L | severe | emergency now glucose-severe
          age=2 | glucose 1.0 mmol/L | low | urgent now glucose-low
          age=2 | glucose 1.38 mmol/L | low | urgent now glucose-low
          age=2 | glucose 1.39 mmol/L | borderline | arrange now glucose-borderline
          age=2 | glucose 2.21 mmol/L | borderline | arrange now glucose-borderline
          age=2 | glucose 2.22 mmol/L | target |
          age=4 | glucose 1.93 mmol/L | low | urgent now glucose-low
          age=4 | glucose 1.94 mmol/L | borderline | arrange now glucose-borderline
          age=4 | glucose 2.49 mmol/L | borderline | arrange now glucose-borderline
          age=4 | glucose 2.50 mmol/L | target |
          age=12 | glucose 1.5 mmol/L age=3 | borderline | arrange now glucose-borderline
          | glucose 1.5 mmol/L | low | urgent now glucose-low
          age=12 | glucose 2.2 mmol/L; movements jittery | borderline | emergency now glucose-low-with-signs, arrange now glucose-borderline
          age=12 | glucose 2.22 mmol/L; movements jittery | borderline | arrange now glucose-borderline
          age=12 | glucose 2.3 mmol/L; movements jittery | borderline | arrange now glucose-borderline
          age=1 maternal-diabetes=yes | | | arrange now glucose-due-aap
          age=1 maternal-beta-blocker=yes | | |
          age=1 gestation=40+0 sex=boy birth-weight=4400 | | | arrange now glucose-due-aap
          age=1 gestation=40+0 sex=boy birth-weight=3500 | | |
          age=25 maternal-diabetes=yes | | |
          """)
  void byTheAap(String baby, String findings, String value, String flags) {
    check(baby, findings, value, flags, AAP);
  }

  @Test
  void saysTheNumberTheStandardAndWhatWasTakenForTheAge() {
    Result bapm = Bedside.assess("", "glucose 2.6 mmol/L").result("glucose");
    assertTrue(bapm.text().startsWith("glucose 2.6 mmol/L: "), bapm.text());
    assertTrue(bapm.source().startsWith("BAPM"), bapm.source());
    assertEquals(List.of(), bapm.remarks());
    Result aap = Bedside.assess("", "glucose 2.6 mmol/L", AAP).result("glucose");
    assertTrue(aap.source().startsWith("AAP"), aap.source());
    assertTrue(aap.remarks().get(0).endsWith("since the age was not stated"));
    assertEquals(
        List.of(), Bedside.assess("age=5", "glucose 2.6 mmol/L", AAP).result("glucose").remarks());
  }
}
