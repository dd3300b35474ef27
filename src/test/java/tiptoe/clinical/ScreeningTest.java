package tiptoe.clinical;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tiptoe.clinical.SaturationScreen.Outcome;
import tiptoe.clinical.SaturationScreen.Reading;
import tiptoe.protocol.Gestation;
import tiptoe.settings.Setting;
import tiptoe.settings.Settings;

class ScreeningTest {
  // ACOG Committee Opinion 579 (2013); late preterm: 34+0 to 36+6.
  @ParameterizedTest
  @CsvSource({
    "20+0, preterm, preterm",
    "33+6, preterm, preterm",
    "34+0, late-preterm, late preterm",
    "36+6, late-preterm, late preterm",
    "37+0, early-term, early term",
    "38+6, early-term, early term",
    "39+0, full-term, full term",
    "40+6, full-term, full term",
    "41+0, late-term, late term",
    "41+6, late-term, late term",
    "42+0, post-term, post-term",
    "45+6, post-term, post-term",
  })
  void classesGestationOnBothSidesOfEachLine(String gestation, String id, String text) {
    GestationClass found = GestationClass.of(Gestation.parse(gestation));
    assertEquals(id, found.id());
    assertEquals(text, found.text());
  }

  // WHO, ICD-10, P07: below 2,500, 1,500 and 1,000 g.
  @ParameterizedTest
  @CsvSource({
    "999, extremely-low, extremely low",
    "1000, very-low, very low",
    "1499, very-low, very low",
    "1500, low, low",
    "2499, low, low",
    "2500, not-low, not low",
  })
  void classesBirthWeightOnBothSidesOfEachLine(double grams, String id, String text) {
    assertEquals(id, BirthWeightClass.of(grams).id());
    assertEquals(text, BirthWeightClass.of(grams).text());
  }

  // The published table goes in steps of 5 points, 2 weeks (J Pediatr 1991;119:417).
  @ParameterizedTest
  @CsvSource({
    "-10, 20", "-5, 22", "-1, 23", "0, 24", "5, 26", "10, 28", "15, 30", "16, 30", "17, 30",
    "18, 31", "20, 32", "25, 34", "30, 36", "35, 38", "40, 40", "45, 42", "50, 44",
  })
  void givesWeeksForAMaturityScore(int score, int weeks) {
    assertEquals(weeks, Maturity.weeks(score));
  }

  @ParameterizedTest
  @CsvSource({
    "35, 40+0, false",
    "35, 40+1, true",
    "35, 36+0, false",
    "35, 35+6, true",
  })
  void maturityDiffersFromMoreThanTwoWeeksOn(int score, String stated, boolean differs) {
    assertEquals(differs, Maturity.differs(score, Gestation.parse(stated)));
  }

  // AAP and ACOG Committee Opinion 644 (2015).
  @ParameterizedTest
  @CsvSource({
    "0, low",
    "3, low",
    "4, moderately-abnormal",
    "6, moderately-abnormal",
    "7, reassuring",
    "10, reassuring",
  })
  void bandsTheFiveMinuteApgar(int total, String band) {
    assertEquals(band, ApgarBand.of(total).id());
  }

  @ParameterizedTest
  @CsvSource({"3000, 2700, -10", "3420, 3078, -10", "3000, 3000, 0", "3000, 3150, 5"})
  void givesWeightChangeInPercentOfBirthWeight(double birth, double now, double percent) {
    assertEquals(percent, WeightChange.percent(birth, now), 0);
  }

  // AAP 2025 (Pediatrics 155:e2024069667): pass at 95 % or more in both with a difference of 3 or
  // less; fail below 90 in either; otherwise one repeat after an hour, which must pass.
  @ParameterizedTest
  @CsvSource({
    "95, 95, pass",
    "98, 95, pass",
    "99, 95, repeat",
    "95, 98, pass",
    "95, 99, repeat",
    "94, 95, repeat",
    "95, 94, repeat",
    "97, 94, repeat",
    "90, 90, repeat",
    "90, 99, repeat",
    "89, 98, fail",
    "98, 89, fail",
    "100, 97, pass",
    "100, 96, repeat",
  })
  void screensByTheRulesOf2025(double hand, double foot, String outcome) {
    assertEquals(outcome, SaturationScreen.OF_2025.outcome(List.of(new Reading(hand, foot))).id());
  }

  // Kemper et al., Pediatrics 2011;128:e1259: pass at 95 % or more in hand or foot with a
  // difference
  // of 3 or less; fail below 90 in either; otherwise two repeats an hour apart.
  @ParameterizedTest
  @CsvSource({
    "95, 95, pass",
    "97, 94, pass",
    "94, 97, pass",
    "95, 92, pass",
    "95, 91, repeat",
    "94, 94, repeat",
    "98, 94, repeat",
    "90, 90, repeat",
    "89, 90, fail",
    "90, 89, fail",
  })
  void screensByTheRulesOf2011(double hand, double foot, String outcome) {
    assertEquals(outcome, SaturationScreen.OF_2011.outcome(List.of(new Reading(hand, foot))).id());
  }

  @Test
  void repeatsOnceByTheRulesOf2025AndTwiceByThoseOf2011() {
    Reading unclear = new Reading(93, 93);
    Reading good = new Reading(97, 97);
    List<Outcome> of2025 = new ArrayList<>();
    List<Outcome> of2011 = new ArrayList<>();
    for (var readings :
        List.of(
            List.of(unclear),
            List.of(unclear, unclear),
            List.of(unclear, unclear, unclear),
            List.of(unclear, good),
            List.of(unclear, unclear, good),
            List.of(good, unclear),
            List.of(good, new Reading(80, 79)))) {
      of2025.add(SaturationScreen.OF_2025.outcome(readings));
      of2011.add(SaturationScreen.OF_2011.outcome(readings));
    }
    assertEquals(
        List.of(
            Outcome.REPEAT,
            Outcome.FAIL,
            Outcome.FAIL,
            Outcome.PASS,
            Outcome.FAIL,
            Outcome.REPEAT,
            Outcome.FAIL),
        of2025);
    assertEquals(
        List.of(
            Outcome.REPEAT,
            Outcome.REPEAT,
            Outcome.FAIL,
            Outcome.PASS,
            Outcome.PASS,
            Outcome.REPEAT,
            Outcome.FAIL),
        of2011);
  }

  @Property
  void whatPassesIn2025AlsoPassesIn2011AndTheyFailTheSameFirstReadings(
      @ForAll @IntRange(min = 40, max = 100) int hand,
      @ForAll @IntRange(min = 40, max = 100) int foot) {
    List<Reading> one = List.of(new Reading(hand, foot));
    Outcome of2025 = SaturationScreen.OF_2025.outcome(one);
    Outcome of2011 = SaturationScreen.OF_2011.outcome(one);
    if (of2025 == Outcome.PASS) {
      assertEquals(Outcome.PASS, of2011);
    }
    assertEquals(of2025 == Outcome.FAIL, of2011 == Outcome.FAIL);
  }

  @Test
  void takesTheRuleSetFromTheSettings() {
    assertEquals(SaturationScreen.OF_2025, SaturationScreen.of(Settings.DEFAULT));
    assertEquals(
        SaturationScreen.OF_2011,
        SaturationScreen.of(Settings.DEFAULT.with(Setting.SATURATION_SCREEN, "2011")));
  }

  // HL7 ObservationInterpretation: L below what is expected, H above, A neither, but flagged. A
  // screen that fails by its difference alone has no low and no high limb.
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          saturation-right-hand 99 %; saturation-foot 95 % | A A
          saturation-right-hand 95 %; saturation-foot 99 % | A A
          saturation-right-hand 97 %; saturation-foot 94 % | - L
          saturation-right-hand 94 %; saturation-foot 97 % | L -
          saturation-right-hand 92 %; saturation-foot 92 % | L L
          saturation-right-hand 80 %; saturation-foot 79 % | L L
          saturation-right-hand 98 %; saturation-foot 80 % | - L
          saturation-right-hand 98 %; saturation-foot 97 % | - -
          saturation-foot 91 %; temperature 31 °C | L L
          heart-rate 230 /min; respiratory-rate 65 /min | H H
          heart-rate 50 /min; respiratory-rate 20 /min | L L
          """)
  void marksTheNumbersThatAreUnusualThemselves(String findings, String marks) {
    Assessment assessment = Bedside.assess("age=30", findings);
    assertEquals(
        marks,
        Bedside.answers(findings).stream()
            .map(
                answer ->
                    assessment.abnormal(answer).map(one -> one.direction().code()).orElse("-"))
            .collect(Collectors.joining(" ")));
  }
}
