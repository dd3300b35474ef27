package tiptoe.clinical;

import java.util.Optional;

/**
 * Size at birth against the WHO Child Growth Standards (2006, tables for day 0): term babies, by
 * sex, whatever their gestation.
 */
public final class WhoAtBirth {
  static final String SOURCE = "WHO Child Growth Standards 2006, at birth";

  private WhoAtBirth() {}

  /**
   * How a measure is spread at birth.
   *
   * @param sex {@code girl} or {@code boy}; anything else has no standard
   */
  public static Optional<SizeModel> model(SizeMeasure measure, String sex) {
    boolean boy = "boy".equals(sex);
    if (!boy && !"girl".equals(sex)) {
      return Optional.empty();
    }
    return Optional.of(
        switch (measure) {
          case WEIGHT ->
              boy
                  ? new Lms(measure, 0.3487, 3.3464, 0.14602)
                  : new Lms(measure, 0.3809, 3.2322, 0.14171);
          case LENGTH ->
              boy ? new Lms(measure, 1, 49.8842, 0.03795) : new Lms(measure, 1, 49.1477, 0.03790);
          case HEAD ->
              boy ? new Lms(measure, 1, 34.4618, 0.03686) : new Lms(measure, 1, 33.8787, 0.03496);
        });
  }

  /** Power L, median M and coefficient of variation S, in kg or cm. */
  private record Lms(SizeMeasure measure, double l, double m, double s) implements SizeModel {

    // Beyond 3 SD the weight standard goes on in steps of the distance between SD 2 and SD 3:
    // the data do not support the fitted tails (WHO Child Growth Standards: methods, 2006).
    @Override
    public double zScore(double value) {
      double y = measure.toStandard(value);
      double z = (Math.pow(y / m, l) - 1) / (l * s);
      if (measure != SizeMeasure.WEIGHT || Math.abs(z) <= 3) {
        return z;
      }
      return z > 3
          ? 3 + (y - atSd(3)) / (atSd(3) - atSd(2))
          : -3 + (y - atSd(-3)) / (atSd(-2) - atSd(-3));
    }

    @Override
    public double valueAt(double centile) {
      double z = Centile.STANDARD.inverseCumulativeProbability(centile / 100);
      if (measure == SizeMeasure.WEIGHT && Math.abs(z) > 3) {
        double beyond =
            z > 3
                ? atSd(3) + (z - 3) * (atSd(3) - atSd(2))
                : atSd(-3) + (z + 3) * (atSd(-2) - atSd(-3));
        return measure.fromStandard(beyond);
      }
      return measure.fromStandard(atSd(z));
    }

    private double atSd(double sd) {
      return m * Math.pow(1 + l * s * sd, 1 / l);
    }
  }
}
