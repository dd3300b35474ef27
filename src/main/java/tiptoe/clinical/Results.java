package tiptoe.clinical;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import tiptoe.clinical.SaturationScreen.Outcome;
import tiptoe.exam.Answer;

/** Computes classes and screens of one case. */
final class Results {
  private static final double SCREEN_FROM_HOURS = 24;
  private static final int TERM_FROM_WEEKS = 37;

  private final AssessedBaby baby;

  Results(AssessedBaby baby) {
    this.baby = baby;
  }

  List<Result> all() {
    return Stream.of(
            gestationClass(),
            birthWeightClass(),
            maturity(),
            maturitySigns(),
            apgar(),
            saturation(),
            weightChange(),
            bilirubin(),
            glucose(),
            earlyInfection())
        .flatMap(Optional::stream)
        .toList();
  }

  private Optional<Result> gestationClass() {
    return baby.gestation()
        .map(
            gestation -> {
              GestationClass found = GestationClass.of(gestation);
              return new Result(
                  "gestation-class",
                  found.id(),
                  "gestation " + gestation + " weeks, " + found.text(),
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
                  "birth weight " + shown(grams, 0) + " g, " + found.text(),
                  List.of(),
                  BirthWeightClass.SOURCE);
            });
  }

  private Optional<Result> maturity() {
    return Maturity.total(baby)
        .map(
            total -> {
              int weeks = Maturity.weeks(total);
              List<String> remarks = new ArrayList<>();
              baby.gestation()
                  .filter(stated -> Maturity.differs(total, stated))
                  .ifPresent(stated -> remarks.add("more than 2 weeks from the stated " + stated));
              baby.gestation()
                  .filter(stated -> stated.weeks() < TERM_FROM_WEEKS)
                  .map(
                      stated ->
                          "a score of about %s is expected at %s"
                              .formatted(Maturity.expected(stated), stated))
                  .ifPresent(remarks::add);
              return new Result(
                  "maturity",
                  Integer.toString(weeks),
                  weeks + " weeks by a maturity score of " + total,
                  remarks,
                  Maturity.SOURCE);
            });
  }

  // Signs that are scored one by one, until all are.
  private Optional<Result> maturitySigns() {
    List<String> open = Maturity.open(baby);
    int scored = Maturity.STEPS.size() - open.size();
    return open.isEmpty()
        ? Optional.empty()
        : Optional.of(
            new Result(
                "maturity-signs",
                Integer.toString(scored),
                scored + " of " + Maturity.STEPS.size() + " signs of maturity scored",
                List.of("still to be scored: " + String.join(", ", open)),
                Maturity.SOURCE));
  }

  private Optional<Result> apgar() {
    return baby.number("apgar-5")
        .map(
            score -> {
              int total = (int) Math.round(number(score));
              ApgarBand band = ApgarBand.of(total);
              return new Result(
                  "apgar-5",
                  band.id(),
                  "Apgar " + total + " at 5 minutes, " + band.text(),
                  List.of(),
                  ApgarBand.SOURCE);
            });
  }

  private Optional<Result> saturation() {
    SaturationScreen rules = SaturationScreen.of(baby.settings());
    return SaturationScreen.outcome(baby)
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

  private static String said(Outcome outcome, SaturationScreen rules) {
    return switch (outcome) {
      case PASS -> "passed";
      case REPEAT ->
          "to be repeated in " + (rules == SaturationScreen.UK ? "1 to 2 hours" : "1 hour");
      case FAIL -> "not passed";
    };
  }

  private Optional<Result> weightChange() {
    return WeightChange.percent(baby)
        .map(
            percent -> {
              String text =
                  percent < 0
                      ? shown(-percent, 1) + " % lost since birth"
                      : percent > 0
                          ? shown(percent, 1) + " % gained since birth"
                          : "as heavy as at birth";
              return new Result(
                  "weight-change",
                  shown(percent, 1),
                  text,
                  percent < 0 ? WeightChange.remarks(baby) : List.of(),
                  WeightChange.SOURCE);
            });
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

  private Optional<Result> glucose() {
    return Glucose.of(baby)
        .map(
            found -> {
              String next =
                  switch (found.band()) {
                    case SEVERE -> "severely low: glucose into a vein now";
                    case LOW -> "low: feed, gel, and measure again before the next feed";
                    case BORDERLINE -> "below the aim: feed and measure again in 1 hour";
                    case TARGET -> "not low";
                  };
              return new Result(
                  Glucose.STEP,
                  found.band().id(),
                  String.format(Locale.ROOT, "glucose %.1f mmol/L: %s", found.number(), next),
                  found.remarks(),
                  found.standard(),
                  found.number(),
                  "mmol/L",
                  null,
                  null,
                  Glucose.source(found.standard()));
            });
  }

  // Nothing is said of a baby whose age is not known to be one the framework is for.
  private Optional<Result> earlyInfection() {
    if (baby.age().filter(hours -> hours < EarlyInfection.UNTIL_HOURS).isEmpty()) {
      return Optional.empty();
    }
    EarlyInfection found = EarlyInfection.of(baby);
    String counted = String.join(", ", found.names());
    return switch (found.recommendation()) {
      case NOTHING -> Optional.empty();
      case TREAT ->
          Optional.of(
              new Result(
                  "early-infection",
                  "treat",
                  "early-onset infection: investigate and start antibiotics",
                  List.of((found.redFlags().isEmpty() ? "" : "red flag: ") + counted),
                  EarlyInfection.version()));
      case JUDGE ->
          Optional.of(
              new Result(
                  "early-infection",
                  "judge",
                  "early-onset infection: judge whether antibiotics can be withheld and whether to"
                      + " watch the baby",
                  List.of(
                      counted,
                      "where watched: vital signs at 1 and 2 hours, then every 2 hours for 10"
                          + " hours"),
                  EarlyInfection.version()));
    };
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
