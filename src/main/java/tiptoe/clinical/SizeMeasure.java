package tiptoe.clinical;

import com.fasterxml.jackson.annotation.JsonValue;

/** What is measured of a newborn's size. */
public enum SizeMeasure {
  WEIGHT("weight", "g", 1000),
  LENGTH("length", "cm", 1),
  HEAD("head-circumference", "cm", 1);

  private final String step;
  private final String unit;
  private final double perStandardUnit;

  SizeMeasure(String step, String unit, double perStandardUnit) {
    this.step = step;
    this.unit = unit;
    this.perStandardUnit = perStandardUnit;
  }

  /** The id of the step it is stated in. */
  @JsonValue
  public String step() {
    return step;
  }

  /** The unit of values of this measure everywhere outside this package: g or cm. */
  public String unit() {
    return unit;
  }

  /** From g or cm to the kg or cm of the standards. */
  double toStandard(double value) {
    return value / perStandardUnit;
  }

  /** From the kg or cm of the standards to g or cm. */
  double fromStandard(double value) {
    return value * perStandardUnit;
  }
}
