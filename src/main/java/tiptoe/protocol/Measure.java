package tiptoe.protocol;

/**
 * What a number means and which numbers can be meant.
 *
 * @param unit the unit it is kept in: {@code g}, {@code cm}, {@code mm}, {@code °C}, {@code %},
 *     {@code /min}, {@code s}, {@code h} or {@code 1} for a plain count or score
 * @param min smallest plausible number, in that unit; below it the number is asked about
 * @param max largest plausible number, in that unit
 * @param whole whether only whole numbers make sense
 * @param bounds whether less or more than a number is an answer too, such as "under two seconds"
 */
public record Measure(String unit, double min, double max, boolean whole, boolean bounds) {
  public Measure(String unit, double min, double max, boolean whole) {
    this(unit, min, max, whole, false);
  }

  public Measure {
    if (!(min <= max)) {
      throw new IllegalArgumentException("expected min ≤ max, found " + min + " and " + max);
    }
  }

  public boolean plausible(double number) {
    return number >= min && number <= max && (!whole || number == Math.rint(number));
  }
}
