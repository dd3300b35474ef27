package tiptoe.clinical;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tiptoe.exam.Answer;
import tiptoe.protocol.Gestation;
import tiptoe.protocol.Units;
import tiptoe.settings.Setting;

/**
 * The last bilirubin against the thresholds of treatment.
 *
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

  // AAP, Pediatrics 2022;150:e2022058859: from this rise an hour haemolysis is likely, in mg/dL, in
  // the first day and behind it.
  private static final double AAP_RAPID_RISE_FIRST_DAY = 0.3;
  private static final double AAP_RAPID_RISE = 0.2;
  private static final double FIRST_DAY_HOURS = 24;

  private static final int AT_RISK_BELOW_WEEKS = 38;

  enum Band {
    BELOW,
    CLOSE,
    PHOTOTHERAPY,
    EXCHANGE
  }

  /** The last bilirubin; empty where none was stated or what decides on it is not known. */
  static Optional<Bilirubin> of(AssessedBaby baby) {
    Optional<Answer> last = latest(baby);
    Optional<Double> hours = last.flatMap(baby::age);
    if (hours.isEmpty() || baby.gestation().isEmpty()) {
      return Optional.empty();
    }
    String standard = baby.settings().get(Setting.JAUNDICE);
    Gestation gestation = baby.gestation().get();
    if (BilirubinThresholds.obstacle(standard, gestation, hours.get()).isPresent()) {
      return Optional.empty();
    }
    boolean haemolysis = baby.fact("direct-antiglobulin").equals(Optional.of("positive"));
    boolean risk = haemolysis || !baby.fact(RISK).equals(Optional.of("no"));
    List<String> remarks = new ArrayList<>();
    if (standard.equals(BilirubinThresholds.AAP) && baby.fact(RISK).isEmpty() && !haemolysis) {
      remarks.add("the lower thresholds were taken, since no risk factors were not stated");
    }
    if ("skin".equals(last.get().details().get("method"))) {
      remarks.add("measured through the skin; confirm near a threshold in serum");
    }
    rise(baby).ifPresent(rise -> remarks.add(said(rise)));
    BilirubinThresholds limits = BilirubinThresholds.of(standard, gestation, hours.get(), risk);
    Bilirubin found = new Bilirubin(last.get(), hours.get(), limits, remarks);
    found.again(baby).ifPresent(remarks::add);
    return Optional.of(found);
  }

  /** When to measure again by NICE CG98; the AAP's times are not tabled, so nothing is said. */
  private Optional<String> again(AssessedBaby baby) {
    if (!thresholds.id().equals(BilirubinThresholds.NICE)) {
      return Optional.empty();
    }
    return Optional.of(
        switch (band()) {
          case EXCHANGE -> "again within 2 hours of an exchange transfusion";
          case PHOTOTHERAPY ->
              "again 4 to 6 hours after phototherapy began, then every 6 to 12 hours once it is"
                  + " stable or falling";
          case CLOSE -> {
            List<String> risks = risks(baby);
            yield risks.isEmpty()
                ? "again within 24 hours, within 18 where there are risk factors"
                : "again within 18 hours: " + String.join(", ", risks);
          }
          case BELOW -> "no routine repeat where the baby is well";
        });
  }

  // NICE CG98, factors that make a significant rise likelier.
  private static List<String> risks(AssessedBaby baby) {
    List<String> risks = new ArrayList<>();
    if (baby.gestation().filter(born -> born.weeks() < AT_RISK_BELOW_WEEKS).isPresent()) {
      risks.add("born before 38 weeks");
    }
    if (baby.fact("sibling-phototherapy").equals(Optional.of("yes"))) {
      risks.add("phototherapy of a brother or sister");
    }
    if (baby.fact("feeding").equals(Optional.of("breast"))) {
      risks.add("fed at the breast alone");
    }
    return risks;
  }

  private static String said(Rise rise) {
    String way = rise.anHour < 0 ? "falling" : "rising";
    return String.format(
        java.util.Locale.ROOT,
        "%s by %.1f µmol/L an hour%s",
        way,
        Math.abs(rise.anHour),
        rise.rapid ? " (rapid)" : "");
  }

  /** Facts that are needed for the thresholds and were not stated; empty without a bilirubin. */
  static List<String> needs(AssessedBaby baby) {
    List<String> needs = new ArrayList<>();
    latest(baby)
        .ifPresent(
            answer -> {
              if (baby.age(answer).isEmpty()) {
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

  // By the ages that were said; the last that was said where one has none.
  private static Optional<Answer> latest(AssessedBaby baby) {
    List<Answer> all = baby.numbers(STEP);
    return all.stream().noneMatch(one -> Double.isNaN(age(one)))
        ? all.stream().max(java.util.Comparator.comparingDouble(Bilirubin::age))
        : baby.number(STEP);
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
    return ConditionResult.found(
        of(baby).filter(found -> found.band() == band).map(Bilirubin::answer).stream().toList());
  }

  /** Whether it rose faster than phototherapy alone would be trusted with. */
  static ConditionResult risesFast(AssessedBaby baby) {
    boolean fast = rise(baby).filter(Rise::rapid).isPresent();
    return ConditionResult.of(fast, latest(baby).stream().toList());
  }

  /**
   * Between the last two measurements whose ages were said.
   *
   * @param anHour in µmol/L; below 0 where it falls
   * @param rapid whether the configured standard calls it so
   */
  private record Rise(double anHour, boolean rapid) {}

  private static Optional<Rise> rise(AssessedBaby baby) {
    List<Answer> timed =
        baby.numbers(STEP).stream()
            .filter(one -> !Double.isNaN(age(one)))
            .sorted(java.util.Comparator.comparingDouble(Bilirubin::age))
            .toList();
    if (timed.size() < 2) {
      return Optional.empty();
    }
    Answer before = timed.get(timed.size() - 2);
    Answer last = timed.get(timed.size() - 1);
    double hours = age(last) - age(before);
    if (hours <= 0) {
      return Optional.empty();
    }
    double anHour = (last.quantity().number() - before.quantity().number()) / hours;
    boolean rapid = anHour > RAPID_RISE_AN_HOUR;
    if (baby.settings().is(Setting.JAUNDICE, BilirubinThresholds.AAP)) {
      double limit = age(last) <= FIRST_DAY_HOURS ? AAP_RAPID_RISE_FIRST_DAY : AAP_RAPID_RISE;
      rapid = anHour >= limit * Units.MICROMOLES_PER_MILLIGRAM_OF_BILIRUBIN;
    }
    return Optional.of(new Rise(anHour, rapid));
  }

  private static double age(Answer answer) {
    return TermReader.numberIn(answer.details().getOrDefault("age", ""));
  }
}
