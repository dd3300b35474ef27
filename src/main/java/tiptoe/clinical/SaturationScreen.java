package tiptoe.clinical;

import com.fasterxml.jackson.annotation.JsonValue;
import java.util.List;
import tiptoe.protocol.Labels;

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
      return Labels.id(this);
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
   * @param readings in the order they were taken, at least one. What follows a pass is a new
   *     screen, so that a baby who turns blue is not covered by it; a fail is not undone by what
   *     follows
   */
  static Outcome outcome(SaturationRules rules, List<Reading> readings) {
    Outcome latest = Outcome.REPEAT;
    int unclear = 0;
    for (Reading reading : readings) {
      latest = single(rules, reading);
      unclear = latest == Outcome.REPEAT ? unclear + 1 : 0;
      if (latest == Outcome.FAIL || unclear > rules.repeats()) {
        return Outcome.FAIL;
      }
    }
    return latest;
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
