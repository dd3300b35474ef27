package tiptoe.clinical;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The framework of NICE NG195 for infection within 72 hours of birth, from history and findings.
 */
class EarlyInfectionTest {
  private static String flags(Assessment assessment) {
    return assessment.flags().stream()
        .filter(flag -> flag.rule().startsWith("early-infection"))
        .map(flag -> flag.level().id() + " " + flag.when() + " " + flag.rule())
        .collect(Collectors.joining(", "));
  }

  // NICE NG195, box 1 (risk factors, as amended in 2026), box 2 (clinical indicators, 2021) and the
  // framework behind them: any red flag, or two others: treat; one: judge.
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          age=12 twin-infection=yes | | treat | red flag: infection of the other twin | urgent now early-infection-red-flag
          age=12 cardiopulmonary-resuscitation=yes | | treat | red flag: cardiopulmonary resuscitation | urgent now early-infection-red-flag
          age=12 mechanical-ventilation=yes | | treat | red flag: mechanical ventilation | urgent now early-infection-red-flag
          age=12 | breathing apnoea | treat | red flag: apnoea | urgent now early-infection-red-flag
          age=12 | movements seizure | treat | red flag: seizure | urgent now early-infection-red-flag
          age=12 | capillary-refill 4 s; femoral-pulse weak | treat | red flag: signs of shock | urgent now early-infection-red-flag
          age=12 group-b-strep=positive | | judge | group B streptococcus of the mother or of an earlier baby | arrange now early-infection-risk
          age=12 group-b-strep=unknown | | | |
          age=12 group-b-strep=negative chorioamnionitis=no maternal-fever=no | | | |
          age=12 group-b-strep=positive previous-group-b-strep=yes | | judge | group B streptococcus of the mother or of an earlier baby | arrange now early-infection-risk
          age=12 group-b-strep=positive chorioamnionitis=suspected | | treat | group B streptococcus of the mother or of an earlier baby, chorioamnionitis | urgent now early-infection-treat
          age=12 maternal-sepsis=suspected | | judge | sepsis of the mother, or fever in labour | arrange now early-infection-risk
          age=12 maternal-temperature=38 | | | |
          age=12 maternal-temperature=38.1 | | judge | sepsis of the mother, or fever in labour | arrange now early-infection-risk
          age=12 gestation=36+6 spontaneous-labour=yes | | judge | birth before 37 weeks after spontaneous labour | arrange now early-infection-risk
          age=12 gestation=37+0 spontaneous-labour=yes | | | |
          age=12 gestation=36+6 spontaneous-labour=no | | | |
          age=12 gestation=36+6 membranes-ruptured=18 | | | |
          age=12 gestation=36+6 membranes-ruptured=19 | | judge | membranes ruptured for more than 18 hours before a preterm birth | arrange now early-infection-risk
          age=12 gestation=37+0 membranes-ruptured=24 | | | |
          age=12 gestation=37+0 membranes-ruptured=25 | | judge | membranes ruptured for more than 24 hours before a term birth | arrange now early-infection-risk
          age=12 gestation=36+0 spontaneous-labour=yes membranes-ruptured=20 | | treat | birth before 37 weeks after spontaneous labour, membranes ruptured for more than 18 hours before a preterm birth | urgent now early-infection-treat
          age=12 | breathing grunting | judge | respiratory distress |
          age=12 | respiratory-rate 60 /min | judge | respiratory distress |
          age=12 | respiratory-rate 59 /min | | |
          age=12 group-b-strep=positive | breathing grunting | treat | group B streptococcus of the mother or of an earlier baby, respiratory distress | urgent now early-infection-treat
          age=12 | tone low; alertness lethargic | treat | altered behaviour, altered tone | urgent now early-infection-treat
          age=12 feeds=refused | | judge | feeding difficulty |
          age=12 feeds=refused | suck weak | judge | feeding difficulty |
          age=12 vomiting=bile | abdomen distended | judge | feed intolerance |
          age=12 vomiting=milk | | | |
          age=12 | temperature 38 °C | | |
          age=12 | temperature 38.1 °C | judge | temperature below 36 or above 38 |
          age=12 | temperature 36 °C | | |
          age=12 | temperature 35.9 °C; heart-rate 195 /min | treat | abnormal heart rate, temperature below 36 or above 38 | urgent now early-infection-treat
          age=12 | colour central-cyanosis; saturation-foot 89 % | judge | low oxygen |
          age=12 | saturation-right-hand 90 %; saturation-foot 90 % | | |
          age=23.9 | jaundice present | judge | jaundice in the first day |
          age=24 | jaundice present | | |
          age=12 | glucose 1.9 mmol/L; cord-stump bleeding | treat | bleeding, abnormal glucose | urgent now early-infection-treat
          age=71.9 group-b-strep=positive | tone low | treat | group B streptococcus of the mother or of an earlier baby, altered tone | urgent now early-infection-treat
          age=72 group-b-strep=positive | tone low | | |
          """)
  void recommendsWhatTheFrameworkSays(
      String baby, String findings, String value, String counted, String flags) {
    Assessment found = Bedside.assess(baby, sided(findings));
    Result result = found.result("early-infection");
    assertEquals(value, result == null ? null : result.value());
    assertEquals(counted, result == null ? null : result.remarks().get(0));
    assertEquals(flags == null ? "" : flags, flags(found));
  }

  private static String sided(String findings) {
    return findings == null ? null : findings.replace("femoral-pulse", "femoral-pulse.left");
  }

  @Test
  void namesTheEditionAndSaysNothingOfABabyWhoseAgeIsNotKnown() {
    Assessment known = Bedside.assess("age=5 group-b-strep=positive", "tone low");
    assertTrue(known.result("early-infection").source().contains("NG195"));
    Assessment unknown = Bedside.assess("group-b-strep=positive", "tone low");
    assertNull(unknown.result("early-infection"));
    assertTrue(
        unknown.needs().stream().map(Need::fact).toList().containsAll(List.of("age")),
        unknown.needs().toString());
    assertNotNull(EarlyInfection.version());
    Flag treat =
        Bedside.assess("age=5", "jaw small; tone low; breathing grunting").flags().stream()
            .filter(flag -> flag.rule().equals("early-infection-treat"))
            .findFirst()
            .orElseThrow();
    assertEquals(List.of(2, 3), treat.statements().stream().sorted().toList());
  }

  /** One sign is there: each fact that could be the second is asked for, until it is stated. */
  @Test
  void asksForTheHistoryThatDecides() {
    String fetal = "twin-infection=no cardiopulmonary-resuscitation=no mechanical-ventilation=no";
    String mother =
        " previous-group-b-strep=no membranes-ruptured=4 maternal-sepsis=no maternal-fever=no"
            + " chorioamnionitis=no feeds=well vomiting=no";
    assertTrue(asked("age=12 gestation=39+0", "breathing grunting").contains("group-b-strep"));
    assertEquals(
        List.of("group-b-strep"),
        asked("age=12 gestation=39+0 " + fetal + mother, "breathing grunting"));
    assertEquals(
        List.of(),
        asked(
            "age=12 gestation=39+0 group-b-strep=negative " + fetal + mother,
            "breathing grunting"));
    assertEquals(List.of(), asked("age=12 gestation=39+0", "breathing easy"));
    assertEquals(List.of(), asked("age=80 gestation=39+0", "breathing grunting"));
  }

  private static List<String> asked(String baby, String findings) {
    return Bedside.assess(baby, findings).needs().stream()
        .filter(need -> need.reasons().toString().contains("framework starts antibiotics"))
        .map(Need::fact)
        .toList();
  }
}
