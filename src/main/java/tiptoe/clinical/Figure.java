package tiptoe.clinical;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import tiptoe.exam.Answer;

/** Numbers that conditions can name and that are computed from the findings. */
enum Figure {
  /** Loss since birth in % of the birth weight. */
  WEIGHT_LOSS("weight-loss", Set.of(), Figure::loss),
  /** Centiles of size at birth by the configured standard. */
  WEIGHT_CENTILE("weight-centile", Set.of(), centile(SizeMeasure.WEIGHT)),
  LENGTH_CENTILE("length-centile", Set.of(), centile(SizeMeasure.LENGTH)),
  HEAD_CENTILE("head-centile", Set.of(), centile(SizeMeasure.HEAD)),
  /** Age in h at which something was stated as not yet passed. */
  HOURS_WITHOUT_MECONIUM("hours-without-meconium", Set.of("age"), hoursWithout("meconium")),
  HOURS_WITHOUT_URINE("hours-without-urine", Set.of("age"), hoursWithout("urine"));

  private final String id;
  private final Set<String> facts;
  private final Comparison comparison;

  Figure(String id, Set<String> facts, Comparison comparison) {
    this.id = id;
    this.facts = facts;
    this.comparison = comparison;
  }

  private interface Comparison {
    ConditionResult of(AssessedBaby baby, Relation relation, double limit);
  }

  static Optional<Figure> named(String id) {
    return Stream.of(values()).filter(figure -> figure.id.equals(id)).findFirst();
  }

  /** Whether the figure, where it can be computed, stands in this relation to the limit. */
  ConditionResult compared(AssessedBaby baby, Relation relation, double limit) {
    return comparison.of(baby, relation, limit);
  }

  /** The facts without which it is not known. */
  Set<String> facts() {
    return facts;
  }

  private static ConditionResult loss(AssessedBaby baby, Relation relation, double limit) {
    Optional<Double> change = WeightChange.percent(baby);
    return ConditionResult.of(
        change.isPresent() && relation.holds(-change.get(), limit),
        baby.number("weight").stream().toList());
  }

  private static Comparison centile(SizeMeasure measure) {
    return (baby, relation, limit) -> {
      boolean holds =
          Sizes.of(baby, measure)
              .filter(size -> !size.against().isEmpty())
              .filter(size -> relation.holds(size.against().get(0).centile(), limit))
              .isPresent();
      boolean stated = measure == SizeMeasure.WEIGHT && baby.birthWeight().isPresent();
      return ConditionResult.of(
          holds, stated ? List.of() : baby.number(measure.step()).stream().toList());
    };
  }

  private static Comparison hoursWithout(String step) {
    return (baby, relation, limit) -> {
      Optional<Answer> notYet =
          baby.answers(step).stream().filter(answer -> answer.is(step, "not-yet")).findFirst();
      Optional<Double> hours = notYet.flatMap(baby::age);
      if (notYet.isPresent() && hours.isEmpty()) {
        return ConditionResult.unknown("age");
      }
      return ConditionResult.of(
          hours.isPresent() && relation.holds(hours.get(), limit), notYet.stream().toList());
    };
  }
}
