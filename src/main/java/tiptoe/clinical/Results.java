package tiptoe.clinical;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import tiptoe.clinical.SaturationScreen.Outcome;
import tiptoe.exam.Answer;

/** Computes classes and screens of one case. */
final class Results {
  private static final double SCREEN_FROM_HOURS = 24;

  private final AssessedBaby baby;

  Results(AssessedBaby baby) {
    this.baby = baby;
  }

  /** What could be computed. */
  List<Result> all() {
    List<Result> results = new ArrayList<>();
    gestationClass().ifPresent(results::add);
    birthWeightClass().ifPresent(results::add);
    maturity().ifPresent(results::add);
    apgar().ifPresent(results::add);
    saturation().ifPresent(results::add);
    weightChange().ifPresent(results::add);
    bilirubin().ifPresent(results::add);
    return results;
  }

  private Optional<Result> gestationClass() {
    return baby.gestation()
        .map(
            gestation -> {
              GestationClass found = GestationClass.of(gestation);
              return new Result(
                  "gestation-class",
                  found.id(),
                  gestation + ", " + found.text(),
                  List.of(),
                  GestationClass.SOURCE);
            });
  }

  private Optional<Result> birthWeightClass() {
    return Sizes.birthWeight(baby)
        .map(
            grams -> {
              BirthWeightClass found = BirthWeightClass.of(grams);
              return new Result(
                  "birth-weight-class",
                  found.id(),
                  shown(grams, 0) + " g, " + found.text(),
                  List.of(),
                  BirthWeightClass.SOURCE);
            });
  }

  private Optional<Result> maturity() {
    return baby.number("maturity-score")
        .map(
            score -> {
              int total = (int) Math.round(number(score));
              int weeks = Maturity.weeks(total);
              List<String> remarks =
                  baby.gestation()
                      .filter(stated -> Maturity.differs(total, stated))
                      .map(stated -> List.of("more than 2 weeks from the stated " + stated))
                      .orElse(List.of());
              return new Result(
                  "maturity",
                  Integer.toString(weeks),
                  weeks + " weeks by a maturity score of " + total,
                  remarks,
                  Maturity.SOURCE);
            });
  }

  private Optional<Result> apgar() {
    return baby.number("apgar-5")
        .map(
            score -> {
              int total = (int) Math.round(number(score));
              Apgar.Band band = Apgar.band(total);
              return new Result(
                  "apgar-5",
                  band.id(),
                  total + " at 5 minutes, " + band.text(),
                  List.of(),
                  Apgar.SOURCE);
            });
  }

  private Optional<Result> saturation() {
    SaturationRules rules = SaturationRules.of(baby.settings());
    return Saturations.outcome(baby)
        .map(
            outcome -> {
              List<String> remarks = new ArrayList<>();
              if (outcome == Outcome.PASS) {
                remarks.add("a pass does not exclude coarctation");
              }
              if (rules.fromOneDay() && baby.age().orElse(SCREEN_FROM_HOURS) < SCREEN_FROM_HOURS) {
                remarks.add("the screen is meant for 24 hours of age or later");
              }
              return new Result(
                  "saturation-screen",
                  outcome.id(),
                  "saturation screen: " + said(outcome, rules),
                  remarks,
                  rules.source());
            });
  }

  private static String said(Outcome outcome, SaturationRules rules) {
    return switch (outcome) {
      case PASS -> "passed";
      case REPEAT ->
          "to be repeated in " + (rules == SaturationRules.UK ? "1 to 2 hours" : "1 hour");
      case FAIL -> "not passed";
    };
  }

  private Optional<Result> weightChange() {
    Optional<Answer> weight = baby.number("weight");
    if (weight.isEmpty() || baby.birthWeight().isEmpty()) {
      return Optional.empty();
    }
    double percent = WeightChange.percent(baby.birthWeight().get(), number(weight.get()));
    String text =
        percent < 0
            ? shown(-percent, 1) + " % lost since birth"
            : percent > 0 ? shown(percent, 1) + " % gained since birth" : "as heavy as at birth";
    return Optional.of(
        new Result("weight-change", shown(percent, 1), text, List.of(), WeightChange.SOURCE));
  }

  private Optional<Result> bilirubin() {
    return Bilirubin.of(baby)
        .map(
            found -> {
              BilirubinThresholds limits = found.thresholds();
              double to = limits.phototherapy() - found.number();
              String place =
                  switch (found.band()) {
                    case EXCHANGE -> "at the threshold of an exchange transfusion or above";
                    case PHOTOTHERAPY -> "at the threshold of phototherapy or above";
                    case CLOSE, BELOW -> shown(to, 0) + " µmol/L below phototherapy";
                  };
              return new Result(
                  Bilirubin.STEP,
                  switch (found.band()) {
                    case EXCHANGE -> "exchange";
                    case PHOTOTHERAPY -> "phototherapy";
                    case CLOSE, BELOW -> "below";
                  },
                  String.format(
                      Locale.ROOT,
                      "bilirubin %.0f µmol/L at %.0f h: %s (phototherapy %.0f, exchange %.0f)",
                      found.number(),
                      found.hours(),
                      place,
                      limits.phototherapy(),
                      limits.exchange()),
                  found.remarks(),
                  limits.id(),
                  found.number(),
                  "µmol/L",
                  rounded(limits.phototherapy()),
                  rounded(limits.exchange()),
                  limits.source());
            });
  }

  private static double rounded(double number) {
    return Math.round(number * 10) / 10.0;
  }

  private static double number(Answer answer) {
    return answer.quantity().number();
  }

  private static String shown(double number, int decimals) {
    return String.format(Locale.ROOT, "%." + decimals + "f", number);
  }
}
