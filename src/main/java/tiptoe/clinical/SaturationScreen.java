package tiptoe.clinical;

import com.fasterxml.jackson.annotation.JsonValue;
import java.util.List;
import java.util.Locale;

/** The pulse-oximetry screen: from readings in hand and foot to what comes next. */
final class SaturationScreen {
  private SaturationScreen() {}

  /** What comes of a screen. */
  enum Outcome {
    PASS,
    REPEAT,
    FAIL;

    @JsonValue
    String id() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  /**
   * One pair of readings in %.
   *
   * @param hand right hand, before the duct
   * @param foot either foot, behind the duct
   */
  record Reading(double hand, double foot) {}

  /**
   * What the screen and its repeats come to.
   *
   * @param readings in the order they were taken, at least one; what follows a pass or a fail is
   *     not looked at
   */
  static Outcome outcome(SaturationRules rules, List<Reading> readings) {
    for (int i = 0; i < readings.size(); i++) {
      Outcome one = single(rules, readings.get(i));
      if (one != Outcome.REPEAT) {
        return one;
      }
      if (i == rules.repeats()) {
        return Outcome.FAIL;
      }
    }
    return Outcome.REPEAT;
  }

  private static Outcome single(SaturationRules rules, Reading reading) {
    double low = Math.min(reading.hand(), reading.foot());
    double high = Math.max(reading.hand(), reading.foot());
    if (low < rules.fail()) {
      return Outcome.FAIL;
    }
    boolean reached = (rules.bothLimbs() ? low : high) >= rules.pass();
    return reached && high - low <= rules.difference() ? Outcome.PASS : Outcome.REPEAT;
  }
}
