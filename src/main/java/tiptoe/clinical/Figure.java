package tiptoe.clinical;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import tiptoe.exam.Answer;

/** Numbers that conditions can name and that are computed from the findings. */
enum Figure {
  /** Loss since birth in % of the birth weight. */
  WEIGHT_LOSS("weight-loss") {
    @Override
    ConditionResult compared(AssessedBaby baby, Relation relation, double limit) {
      Optional<Answer> weight = baby.number("weight");
      if (weight.isEmpty() || baby.birthWeight().isEmpty()) {
        return ConditionResult.NO;
      }
      double loss =
          -WeightChange.percent(baby.birthWeight().get(), weight.get().quantity().number());
      return relation.holds(loss, limit)
          ? ConditionResult.yes(List.of(weight.get()))
          : ConditionResult.NO;
    }
  },
  /** Centile of the weight at birth by the configured standard. */
  WEIGHT_CENTILE("weight-centile") {
    @Override
    ConditionResult compared(AssessedBaby baby, Relation relation, double limit) {
      return centile(baby, SizeMeasure.WEIGHT, relation, limit);
    }
  },
  LENGTH_CENTILE("length-centile") {
    @Override
    ConditionResult compared(AssessedBaby baby, Relation relation, double limit) {
      return centile(baby, SizeMeasure.LENGTH, relation, limit);
    }
  },
  HEAD_CENTILE("head-centile") {
    @Override
    ConditionResult compared(AssessedBaby baby, Relation relation, double limit) {
      return centile(baby, SizeMeasure.HEAD, relation, limit);
    }
  },
  /** Age in h at which meconium was stated as not yet passed. */
  HOURS_WITHOUT_MECONIUM("hours-without-meconium") {
    @Override
    ConditionResult compared(AssessedBaby baby, Relation relation, double limit) {
      return hoursWithout(baby, "meconium", relation, limit);
    }

    @Override
    Set<String> facts() {
      return Set.of("age");
    }
  },
  HOURS_WITHOUT_URINE("hours-without-urine") {
    @Override
    ConditionResult compared(AssessedBaby baby, Relation relation, double limit) {
      return hoursWithout(baby, "urine", relation, limit);
    }

    @Override
    Set<String> facts() {
      return Set.of("age");
    }
  };

  private final String id;

  Figure(String id) {
    this.id = id;
  }

  static Optional<Figure> named(String id) {
    return Stream.of(values()).filter(figure -> figure.id.equals(id)).findFirst();
  }

  /** Whether the figure, where it can be computed, stands in this relation to the limit. */
  abstract ConditionResult compared(AssessedBaby baby, Relation relation, double limit);

  /** The facts without which it is not known. */
  Set<String> facts() {
    return Set.of();
  }

  private static ConditionResult centile(
      AssessedBaby baby, SizeMeasure measure, Relation relation, double limit) {
    boolean holds =
        Sizes.of(baby, measure)
            .filter(size -> !size.against().isEmpty())
            .filter(size -> relation.holds(size.against().get(0).centile(), limit))
            .isPresent();
    if (!holds) {
      return ConditionResult.NO;
    }
    boolean stated = measure == SizeMeasure.WEIGHT && baby.birthWeight().isPresent();
    return ConditionResult.yes(stated ? List.of() : baby.number(measure.step()).stream().toList());
  }

  private static ConditionResult hoursWithout(
      AssessedBaby baby, String step, Relation relation, double limit) {
    Optional<Answer> notYet =
        baby.answers(step).stream().filter(answer -> answer.is(step, "not-yet")).findFirst();
    if (notYet.isEmpty()) {
      return ConditionResult.NO;
    }
    String said = notYet.get().details().get("age");
    double hours = said == null ? Double.NaN : TermReader.numberIn(said);
    if (Double.isNaN(hours)) {
      hours = baby.age().orElse(Double.NaN);
    }
    if (Double.isNaN(hours)) {
      return ConditionResult.unknown("age");
    }
    return relation.holds(hours, limit)
        ? ConditionResult.yes(List.of(notYet.get()))
        : ConditionResult.NO;
  }
}
