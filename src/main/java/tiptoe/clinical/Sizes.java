package tiptoe.clinical;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tiptoe.protocol.Gestation;
import tiptoe.settings.Setting;

/** Places the baby's measurements in the standards of size at birth. */
final class Sizes {
  // The standard was measured within 12 h of birth; the first day is common practice. Beyond a
  // week a measurement says nothing of size at birth.
  private static final double FIRST_DAY_HOURS = 24;
  private static final double FIRST_WEEK_HOURS = 168;

  private Sizes() {}

  /** What was measured, with its place where a standard applies. */
  static List<Size> of(AssessedBaby baby) {
    List<Size> sizes = new ArrayList<>();
    for (SizeMeasure measure : SizeMeasure.values()) {
      of(baby, measure).ifPresent(sizes::add);
    }
    return sizes;
  }

  static Optional<Size> of(AssessedBaby baby, SizeMeasure measure) {
    List<String> remarks = new ArrayList<>();
    Optional<Double> number = number(baby, measure, remarks);
    return number.map(n -> placed(baby, measure, n, remarks));
  }

  /** Weight at birth in g: the one stated, or one measured on the first day. */
  static Optional<Double> birthWeight(AssessedBaby baby) {
    return baby.birthWeight()
        .or(
            () ->
                baby.number(SizeMeasure.WEIGHT.step())
                    .filter(weight -> baby.age().orElse(Double.MAX_VALUE) <= FIRST_DAY_HOURS)
                    .map(weight -> weight.quantity().number())
                    .filter(grams -> grams > 0));
  }

  /** Whether a weight stands of which it is not known what it says of birth. */
  static boolean wantsBirthWeight(AssessedBaby baby) {
    return baby.number(SizeMeasure.WEIGHT.step()).isPresent() && birthWeight(baby).isEmpty();
  }

  private static Optional<Double> number(
      AssessedBaby baby, SizeMeasure measure, List<String> remarks) {
    if (measure == SizeMeasure.WEIGHT && baby.birthWeight().isPresent()) {
      remarks.add("weight at birth");
      return baby.birthWeight();
    }
    Optional<Double> number =
        baby.number(measure.step())
            .map(answer -> answer.quantity().number())
            .filter(found -> found > 0);
    boolean placed = measure != SizeMeasure.WEIGHT || birthWeight(baby).isPresent();
    number.filter(found -> placed).ifPresent(found -> timing(baby).ifPresent(remarks::add));
    return number;
  }

  private static Optional<String> timing(AssessedBaby baby) {
    if (baby.age().isEmpty()) {
      return Optional.of("for size at birth, and the age was not stated");
    }
    double hours = baby.age().get();
    return hours <= FIRST_DAY_HOURS
        ? Optional.empty()
        : Optional.of("for size at birth, measured at " + Math.round(hours) + " h");
  }

  private static Size placed(
      AssessedBaby baby, SizeMeasure measure, double number, List<String> remarks) {
    Optional<String> obstacle = obstacle(baby, measure);
    List<Size.Place> against = new ArrayList<>();
    if (obstacle.isPresent()) {
      remarks.add("no standard applies: " + obstacle.get());
    } else {
      Gestation gestation = baby.gestation().orElseThrow();
      String sex = baby.sex().orElseThrow();
      NewbornSize.model(measure, sex, gestation)
          .ifPresent(
              model ->
                  against.add(
                      Size.Place.of(
                          "intergrowth-21st", model, number, NewbornSize.source(gestation))));
      if (gestation.weeks() >= GestationClass.EARLY_TERM.fromWeek()) {
        WhoAtBirth.model(measure, sex)
            .ifPresent(
                model -> against.add(Size.Place.of("who", model, number, WhoAtBirth.SOURCE)));
      }
      chosenFirst(baby, against, remarks);
    }
    SizeClass sizeClass =
        against.isEmpty() ? null : SizeClass.of(measure, new Centile(against.get(0).centile()));
    return new Size(measure.step(), number, measure.unit(), against, sizeClass, remarks);
  }

  private static void chosenFirst(
      AssessedBaby baby, List<Size.Place> against, List<String> remarks) {
    String chosen = baby.settings().get(Setting.SIZE_STANDARD);
    against.sort(
        (a, b) -> Boolean.compare(b.standard().equals(chosen), a.standard().equals(chosen)));
    if (!against.get(0).standard().equals(chosen)) {
      remarks.add("the configured standard (" + chosen + ") is for babies from 37+0");
    }
  }

  private static Optional<String> obstacle(AssessedBaby baby, SizeMeasure measure) {
    if (baby.sex().isEmpty()) {
      return Optional.of("the sex was not stated");
    }
    if (baby.sex().get().equals("undetermined")) {
      return Optional.of("the sex is undetermined, and there is one for girls and one for boys");
    }
    if (baby.gestation().isEmpty()) {
      return Optional.of("the gestation was not stated");
    }
    Gestation gestation = baby.gestation().get();
    if (gestation.compareTo(NewbornSize.EARLIEST) < 0
        || gestation.compareTo(NewbornSize.LATEST) > 0) {
      return Optional.of(
          "they run from %s to %s, and the gestation is %s"
              .formatted(NewbornSize.EARLIEST, NewbornSize.LATEST, gestation));
    }
    if (measure == SizeMeasure.WEIGHT && birthWeight(baby).isEmpty()) {
      return Optional.of("the weight at birth was not stated");
    }
    boolean atBirth = measure == SizeMeasure.WEIGHT && baby.birthWeight().isPresent();
    return !atBirth && baby.age().orElse(0.0) > FIRST_WEEK_HOURS
        ? Optional.of("measured more than a week after birth")
        : Optional.empty();
  }
}
