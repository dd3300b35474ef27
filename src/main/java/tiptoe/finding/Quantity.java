package tiptoe.finding;

import com.fasterxml.jackson.annotation.JsonInclude;

/**
 * A number with its unit.
 *
 * @param number in {@code unit}
 * @param unit as in {@link tiptoe.protocol.Measure#unit()}
 * @param comparator what is known of it where it was not told exactly; null where it was
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record Quantity(double number, String unit, Bound comparator) {
  public Quantity(double number, String unit) {
    this(number, unit, null);
  }

  /** The number without a needless fraction: {@code 3420}, {@code 34.5}. */
  public String text() {
    return number == Math.rint(number)
        ? Long.toString((long) number)
        : java.math.BigDecimal.valueOf(number).stripTrailingZeros().toPlainString();
  }

  /** The same with the sign before it where it was not told exactly: {@code < 2}. */
  public String comparison() {
    return comparator == null ? text() : comparator.sign() + " " + text();
  }

  @Override
  public String toString() {
    return unit.equals("1") ? comparison() : comparison() + " " + unit;
  }
}
