package tiptoe.wording;

import java.util.Locale;
import tiptoe.finding.Quantity;
import tiptoe.protocol.Units;
import tiptoe.settings.Setting;
import tiptoe.settings.Settings;

/**
 * Quantities for people. The number that is kept always stands first, so that a record reads the
 * same wherever it is read; a unit that was chosen otherwise follows in brackets: {@code 3345 g (7
 * lb 6 oz)}.
 */
public final class QuantityWording {
  private final Settings settings;

  public QuantityWording(Settings settings) {
    this.settings = settings;
  }

  /** The quantity as kept, and in the unit that was chosen where that is another. */
  public String of(Quantity quantity) {
    String chosen = chosen(quantity);
    return chosen == null ? quantity.toString() : quantity + " (" + chosen + ")";
  }

  private String chosen(Quantity quantity) {
    return switch (quantity.unit()) {
      case "g" ->
          settings.is(Setting.WEIGHT_UNIT, "lb") ? Units.poundsAndOunces(quantity.number()) : null;
      case "cm" ->
          settings.is(Setting.LENGTH_UNIT, "in")
              ? oneDecimal(Units.inches(quantity.number()), "in")
              : null;
      case "°C" ->
          settings.is(Setting.TEMPERATURE_UNIT, "fahrenheit")
              ? oneDecimal(Units.fahrenheit(quantity.number()), "°F")
              : null;
      default -> null;
    };
  }

  private static String oneDecimal(double number, String unit) {
    return String.format(Locale.ROOT, "%.1f %s", number, unit);
  }
}
