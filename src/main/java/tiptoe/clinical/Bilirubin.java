package tiptoe.clinical;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tiptoe.exam.Answer;
import tiptoe.protocol.Gestation;
import tiptoe.settings.Setting;

/**
 * The last bilirubin against the thresholds of treatment.
 *
 * @param answer the measurement
 * @param hours age when it was taken
 * @param thresholds at that age
 * @param remarks what must be kept in mind with it
 */
record Bilirubin(
    Answer answer, double hours, BilirubinThresholds thresholds, List<String> remarks) {
  static final String STEP = "bilirubin";
  private static final String RISK = "neurotoxicity-risk";

  // NICE CG98, bilirubin below the threshold by no more than this: measured again within a day.
  private static final double CLOSE_TO_PHOTOTHERAPY = 50;

  // NICE CG98: a rise of more than this an hour calls for more phototherapy.
  private static final double RAPID_RISE_AN_HOUR = 8.5;

  /** Where it stands. */
  enum Band {
    BELOW,
    CLOSE,
    PHOTOTHERAPY,
    EXCHANGE
  }

  /** The last bilirubin; empty where none was stated or what decides on it is not known. */
  static Optional<Bilirubin> of(AssessedBaby baby) {
    Optional<Answer> last = baby.number(STEP);
    Optional<Double> hours = last.flatMap(answer -> hours(baby, answer));
    if (hours.isEmpty() || baby.gestation().isEmpty()) {
      return Optional.empty();
    }
    String standard = baby.settings().get(Setting.JAUNDICE);
    Gestation gestation = baby.gestation().get();
    if (BilirubinThresholds.obstacle(standard, gestation, hours.get()).isPresent()) {
      return Optional.empty();
    }
    boolean risk = !baby.fact(RISK).equals(Optional.of("no"));
    List<String> remarks = new ArrayList<>();
    if (standard.equals(BilirubinThresholds.AAP) && baby.fact(RISK).isEmpty()) {
      remarks.add("the lower thresholds were taken, since no risk factors were not stated");
    }
    if ("skin".equals(last.get().details().get("method"))) {
      remarks.add("measured through the skin; confirm near a threshold in serum");
    }
    rise(baby)
        .filter(rise -> rise > RAPID_RISE_AN_HOUR)
        .ifPresent(
            rise ->
                remarks.add(
                    String.format(
                        java.util.Locale.ROOT, "rising by %.1f µmol/L an hour (rapid)", rise)));
    return Optional.of(
        new Bilirubin(
            last.get(),
            hours.get(),
            BilirubinThresholds.of(standard, gestation, hours.get(), risk),
            List.copyOf(remarks)));
  }

  /** Facts that are needed for the thresholds and were not stated; empty without a bilirubin. */
  static List<String> needs(AssessedBaby baby) {
    List<String> needs = new ArrayList<>();
    baby.number(STEP)
        .ifPresent(
            answer -> {
              if (hours(baby, answer).isEmpty()) {
                needs.add("age");
              }
              if (baby.gestation().isEmpty()) {
                needs.add("gestation");
              }
              if (baby.settings().is(Setting.JAUNDICE, BilirubinThresholds.AAP)
                  && baby.fact(RISK).isEmpty()) {
                needs.add(RISK);
              }
            });
    return needs;
  }

  /** In µmol/L. */
  double number() {
    return answer.quantity().number();
  }

  Band band() {
    if (thresholds.callsForExchange(number())) {
      return Band.EXCHANGE;
    }
    if (thresholds.callsForPhototherapy(number())) {
      return Band.PHOTOTHERAPY;
    }
    boolean close =
        thresholds.id().equals(BilirubinThresholds.NICE)
            && thresholds.phototherapy() - number() <= CLOSE_TO_PHOTOTHERAPY;
    return close ? Band.CLOSE : Band.BELOW;
  }

  /** Whether the last bilirubin is in this band. */
  static ConditionResult is(AssessedBaby baby, Band band) {
    if (baby.number(STEP).isEmpty()) {
      return ConditionResult.NO;
    }
    return of(baby)
        .filter(found -> found.band() == band)
        .map(found -> ConditionResult.yes(List.of(found.answer())))
        .orElse(ConditionResult.NO);
  }

  /** Whether it rose faster than phototherapy alone would be trusted with. */
  static ConditionResult risesFast(AssessedBaby baby) {
    return rise(baby).filter(rise -> rise > RAPID_RISE_AN_HOUR).isPresent()
        ? ConditionResult.yes(baby.number(STEP).stream().toList())
        : ConditionResult.NO;
  }

  /** µmol/L an hour between the last two measurements whose ages were said. */
  private static Optional<Double> rise(AssessedBaby baby) {
    List<Answer> timed =
        baby.numbers(STEP).stream().filter(one -> one.details().containsKey("age")).toList();
    if (timed.size() < 2) {
      return Optional.empty();
    }
    Answer before = timed.get(timed.size() - 2);
    Answer last = timed.get(timed.size() - 1);
    double hours = age(last) - age(before);
    return hours > 0
        ? Optional.of((last.quantity().number() - before.quantity().number()) / hours)
        : Optional.empty();
  }

  private static Optional<Double> hours(AssessedBaby baby, Answer answer) {
    double said = answer.details().containsKey("age") ? age(answer) : Double.NaN;
    return Double.isNaN(said) ? baby.age() : Optional.of(said);
  }

  private static double age(Answer answer) {
    return TermReader.numberIn(answer.details().get("age"));
  }
}
