package tiptoe.clinical;

import java.util.function.Function;
import java.util.stream.Stream;
import tiptoe.clinical.SaturationScreen.Outcome;

/** Conditions that rules name because they would not be readable in the rules file. */
enum Check implements Condition {
  SIMPLE_DIMPLE("simple-dimple", Dimple::simple),
  DIMPLE_NOT_SIMPLE("dimple-not-simple", Dimple::notSimple),
  SATURATION_FAILS("saturation-fails", baby -> SaturationScreen.verdict(baby, Outcome.FAIL)),
  SATURATION_UNCLEAR("saturation-unclear", baby -> SaturationScreen.verdict(baby, Outcome.REPEAT)),
  SATURATION_NOT_PASSED(
      "saturation-not-passed",
      baby -> SaturationScreen.verdict(baby, Outcome.REPEAT, Outcome.FAIL)),
  SATURATION_SCREENED(
      "saturation-screened", baby -> SaturationScreen.verdict(baby, Outcome.values())),
  BILIRUBIN_CLOSE("bilirubin-close", baby -> Bilirubin.is(baby, Bilirubin.Band.CLOSE)),
  BILIRUBIN_PHOTOTHERAPY(
      "bilirubin-phototherapy", baby -> Bilirubin.is(baby, Bilirubin.Band.PHOTOTHERAPY)),
  BILIRUBIN_EXCHANGE("bilirubin-exchange", baby -> Bilirubin.is(baby, Bilirubin.Band.EXCHANGE)),
  BILIRUBIN_RISES_FAST("bilirubin-rises-fast", Bilirubin::risesFast),
  GLUCOSE_SEVERE("glucose-severe", baby -> Glucose.is(baby, Glucose.Band.SEVERE)),
  GLUCOSE_LOW("glucose-low", baby -> Glucose.is(baby, Glucose.Band.LOW)),
  GLUCOSE_BORDERLINE("glucose-borderline", baby -> Glucose.is(baby, Glucose.Band.BORDERLINE)),
  GLUCOSE_LOW_FOR_SIGNS("glucose-low-for-signs", Glucose::isLowForSigns),
  GLUCOSE_LOW_AGAIN("glucose-low-again", Glucose::isLowAgain),
  EARLY_INFECTION_RED_FLAG("early-infection-red-flag", EarlyInfection::hasRedFlag),
  EARLY_INFECTION_TREAT("early-infection-treat", EarlyInfection::isToBeTreated),
  EARLY_INFECTION_RISK("early-infection-risk", EarlyInfection::isOneRiskFactor),
  MATURITY_DIFFERS("maturity-differs", Maturity::differs);

  private final String id;
  private final Function<AssessedBaby, ConditionResult> test;

  Check(String id, Function<AssessedBaby, ConditionResult> test) {
    this.id = id;
    this.test = test;
  }

  static Check named(String id) {
    return Stream.of(values())
        .filter(check -> check.id.equals(id))
        .findFirst()
        .orElseThrow(() -> new IllegalArgumentException("expected a known check, found " + id));
  }

  @Override
  public ConditionResult of(AssessedBaby baby) {
    return test.apply(baby);
  }
}
