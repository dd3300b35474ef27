package tiptoe.clinical;

import tiptoe.settings.Setting;
import tiptoe.settings.Settings;

/**
 * The figures of a pulse-oximetry screen for critical congenital heart disease.
 *
 * @param id as in the configuration
 * @param pass lowest passing saturation in %
 * @param fail below this saturation in % in either limb, the screen fails at once
 * @param difference largest passing difference between hand and foot in %
 * @param bothLimbs whether both limbs must reach {@code pass}, or one is enough
 * @param repeats how often a screen that neither passes nor fails is repeated
 * @param source the paper
 */
record SaturationRules(
    String id,
    double pass,
    double fail,
    double difference,
    boolean bothLimbs,
    int repeats,
    String source) {
  static final SaturationRules OF_2025 =
      new SaturationRules(
          "2025", 95, 90, 3, true, 1, "AAP 2025 screen, Pediatrics 155:e2024069667");
  static final SaturationRules OF_2011 =
      new SaturationRules(
          "2011", 95, 90, 3, false, 2, "AAP-endorsed 2011 screen, Pediatrics 128:e1259");

  /** For use within the first day, so that nothing is said of an age below 24 hours. */
  static final SaturationRules UK =
      new SaturationRules(
          "uk",
          95,
          90,
          2,
          true,
          1,
          "BAPM, Routine pulse oximetry testing for newborn babies, 2024; Ewer et al., Lancet"
              + " 2011;378:785");

  static SaturationRules of(Settings settings) {
    return switch (settings.get(Setting.SATURATION_SCREEN)) {
      case "2011" -> OF_2011;
      case "uk" -> UK;
      default -> OF_2025;
    };
  }

  /** Whether it is meant for babies of 24 hours and older. */
  boolean fromOneDay() {
    return this != UK;
  }
}
