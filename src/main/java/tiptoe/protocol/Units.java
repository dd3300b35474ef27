package tiptoe.protocol;

/**
 * Conversions to the units that are kept, exact by definition: the international pound and inch
 * (agreement of 1959), an ounce a sixteenth of a pound.
 */
public final class Units {
  /**
   * µmol/L of bilirubin for each mg/dL: its molar mass is 584.66 g/mol (C33H36N4O6, IUPAC masses).
   */
  public static final double MICROMOLES_PER_MILLIGRAM_OF_BILIRUBIN = 10_000 / 584.66;

  /** mmol/L of glucose for each mg/dL: its molar mass is 180.156 g/mol (C6H12O6, IUPAC masses). */
  public static final double MILLIMOLES_PER_MILLIGRAM_OF_GLUCOSE = 10 / 180.156;

  public static final double GRAMS_PER_KILOGRAM = 1000;
  public static final double GRAMS_PER_POUND = 453.59237;
  public static final double OUNCES_PER_POUND = 16;
  public static final double GRAMS_PER_OUNCE = GRAMS_PER_POUND / OUNCES_PER_POUND;
  public static final double CENTIMETRES_PER_INCH = 2.54;
  public static final double HOURS_PER_DAY = 24;
  public static final double DAYS_PER_WEEK = 7;

  private Units() {}

  /** The unit as it is said of several: {@code hours} for {@code h}. */
  static String plural(String unit) {
    return switch (unit) {
      case "h" -> "hours";
      case "g" -> "grams";
      default -> unit;
    };
  }

  /** °F to °C. */
  public static double celsius(double fahrenheit) {
    return (fahrenheit - 32) * 5 / 9;
  }

  /** °C to °F. */
  public static double fahrenheit(double celsius) {
    return celsius * 9 / 5 + 32;
  }

  /** g as pounds and ounces to the nearest ounce: {@code 7 lb 6 oz}. */
  public static String poundsAndOunces(double grams) {
    long ounces = Math.round(grams / GRAMS_PER_OUNCE);
    long perPound = (long) OUNCES_PER_POUND;
    return ounces / perPound + " lb " + ounces % perPound + " oz";
  }

  /** cm to inches. */
  public static double inches(double centimetres) {
    return centimetres / CENTIMETRES_PER_INCH;
  }
}
