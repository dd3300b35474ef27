package tiptoe.clinical;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tiptoe.exam.Answer;
import tiptoe.protocol.Identified;
import tiptoe.protocol.Units;
import tiptoe.settings.Setting;

/**
 * The last blood glucose against the operational thresholds of the configured guideline.
 *
 * @param band where it lies
 * @param standard id of the guideline, as in the configuration
 * @param remarks what must be kept in mind with it
 */
record Glucose(Answer answer, Band band, String standard, List<String> remarks) {
  static final String STEP = "glucose";
  static final String AAP = "aap-2011";

  // BAPM 2017, in mmol/L.
  private static final double SEVERE_BELOW = 1.0;
  private static final double BAPM_LOW_BELOW = 2.0;
  private static final double BAPM_WITH_SIGNS_BELOW = 2.5;

  // In mg/dL, from birth to 4 hours, and from there to 24 hours: what is treated, 40 and 45, and 40
  // with signs, by AAP, Pediatrics 2011;127:575; what is low, 25 and 35, by common practice in the
  // US.
  private static final double AAP_FIRST_HOURS = 4;
  private static final double AAP_LOW_BELOW_AT_FIRST = 25;
  private static final double AAP_LOW_BELOW = 35;
  private static final double AAP_TARGET_AT_FIRST = 40;
  private static final double AAP_TARGET = 45;
  private static final double AAP_WITH_SIGNS_BELOW = 40;

  /** Where a glucose lies, the gravest first. */
  enum Band implements Identified {
    SEVERE,
    LOW,
    /** Not low, but below what is aimed for; the AAP's alone. */
    BORDERLINE,
    TARGET;
  }

  /** The last glucose; empty where none was stated. */
  static Optional<Glucose> of(AssessedBaby baby) {
    return baby.number(STEP).map(last -> judged(baby, last));
  }

  static String source(String standard) {
    return standard.equals(AAP)
        ? "AAP, Pediatrics 2011;127:575, and common practice in the US"
        : "BAPM, Identification and management of neonatal hypoglycaemia in the full term infant,"
            + " 2017";
  }

  /** In mmol/L. */
  double number() {
    return answer.quantity().number();
  }

  static ConditionResult is(AssessedBaby baby, Band band) {
    return ConditionResult.found(
        of(baby).filter(found -> found.band == band).map(Glucose::answer).stream().toList());
  }

  /** Whether it is below what a baby with signs of low glucose is treated at. */
  static ConditionResult isLowForSigns(AssessedBaby baby) {
    boolean aap = isAap(baby);
    return ConditionResult.found(
        baby.number(STEP).stream()
            .filter(
                last ->
                    aap
                        ? milligrams(last) < AAP_WITH_SIGNS_BELOW
                        : last.quantity().number() < BAPM_WITH_SIGNS_BELOW)
            .toList());
  }

  /** Whether the last two are both low. */
  static ConditionResult isLowAgain(AssessedBaby baby) {
    List<Answer> all = baby.numbers(STEP);
    if (all.size() < 2) {
      return ConditionResult.NO;
    }
    List<Answer> lastTwo = all.subList(all.size() - 2, all.size());
    return ConditionResult.of(
        lastTwo.stream().allMatch(one -> judged(baby, one).band.compareTo(Band.LOW) <= 0), lastTwo);
  }

  private static Glucose judged(AssessedBaby baby, Answer answer) {
    List<String> remarks = new ArrayList<>();
    if (!isAap(baby)) {
      double number = answer.quantity().number();
      Band band =
          number < SEVERE_BELOW ? Band.SEVERE : number < BAPM_LOW_BELOW ? Band.LOW : Band.TARGET;
      return new Glucose(answer, band, baby.settings().get(Setting.HYPOGLYCAEMIA), remarks);
    }
    Optional<Double> age = baby.age(answer);
    if (age.isEmpty()) {
      remarks.add("the thresholds from 4 hours of age were taken, since the age was not stated");
    }
    boolean first = age.orElse(AAP_FIRST_HOURS) < AAP_FIRST_HOURS;
    double milligrams = milligrams(answer);
    Band band =
        answer.quantity().number() < SEVERE_BELOW
            ? Band.SEVERE
            : milligrams < (first ? AAP_LOW_BELOW_AT_FIRST : AAP_LOW_BELOW)
                ? Band.LOW
                : milligrams < (first ? AAP_TARGET_AT_FIRST : AAP_TARGET)
                    ? Band.BORDERLINE
                    : Band.TARGET;
    return new Glucose(answer, band, AAP, remarks);
  }

  private static boolean isAap(AssessedBaby baby) {
    return baby.settings().is(Setting.HYPOGLYCAEMIA, AAP);
  }

  // To a tenth, so that 40 mg/dL that were kept as 2.22 mmol/L are 40 again.
  private static double milligrams(Answer answer) {
    double exact = answer.quantity().number() / Units.MILLIMOLES_PER_MILLIGRAM_OF_GLUCOSE;
    return Math.round(exact * 10) / 10.0;
  }
}
