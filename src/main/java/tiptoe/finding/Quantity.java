package tiptoe.finding;

/**
 * A number with its unit.
 *
 * @param number in {@code unit}
 * @param unit as in {@link tiptoe.protocol.Measure#unit()}
 */
public record Quantity(double number, String unit) {

  /** The number without a needless fraction: {@code 3420}, {@code 34.5}. */
  public String text() {
    return number == Math.rint(number)
        ? Long.toString((long) number)
        : java.math.BigDecimal.valueOf(number).stripTrailingZeros().toPlainString();
  }

  @Override
  public String toString() {
    return unit.equals("1") ? text() : text() + " " + unit;
  }
}
