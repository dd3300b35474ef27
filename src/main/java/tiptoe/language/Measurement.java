package tiptoe.language;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import tiptoe.finding.Bound;
import tiptoe.protocol.Measure;
import tiptoe.protocol.Units;

/**
 * What spoken numbers come to, in the unit of the step.
 *
 * @param number in the unit of the measure; only for the question where it is not plausible
 * @param plausible whether it can stand without being asked about
 * @param bound whether it is less or more than that number; null where it is that number
 */
public record Measurement(double number, boolean plausible, Bound bound) {
  Measurement(double number, boolean plausible) {
    this(number, plausible, null);
  }

  private static final Map<String, Map<String, Double>> FACTORS =
      Map.of(
          "g",
              Map.of(
                  "g",
                  1.0,
                  "kg",
                  Units.GRAMS_PER_KILOGRAM,
                  "lb",
                  Units.GRAMS_PER_POUND,
                  "oz",
                  Units.GRAMS_PER_OUNCE),
          "cm", Map.of("cm", 1.0, "mm", 0.1, "in", Units.CENTIMETRES_PER_INCH, "m", 100.0),
          "mm", Map.of("mm", 1.0, "cm", 10.0),
          "µmol/L", Map.of("µmol/L", 1.0, "mg/dL", Units.MICROMOLES_PER_MILLIGRAM_OF_BILIRUBIN),
          "mmol/L", Map.of("mmol/L", 1.0, "mg/dL", Units.MILLIMOLES_PER_MILLIGRAM_OF_GLUCOSE),
          "h",
              Map.of(
                  "h",
                  1.0,
                  "days",
                  Units.HOURS_PER_DAY,
                  "weeks",
                  Units.DAYS_PER_WEEK * Units.HOURS_PER_DAY));

  private static final List<String> DIGITS = NumberWords.BELOW_TWENTY.subList(0, 10);

  // What is tried when no unit was said; pounds and millimetres are always said.
  private static final Map<String, List<String>> UNSAID =
      Map.of(
          "g", List.of("g", "kg"),
          "cm", List.of("cm", "in"),
          "µmol/L", List.of("µmol/L", "mg/dL"),
          "°C", List.of("°C", "°F"));

  /**
   * From this number on, a glucose without its unit may be in mg/dL. Common practice: 10 mmol/L and
   * more are seldom measured in a newborn, 10 to 40 mg/dL are low and must not be kept as high.
   */
  private static final double UNIT_WANTED_FROM = 10;

  /** The measurement that these numbers, said one after the other, mean. */
  public static Measurement of(List<SpokenNumber> said, Measure measure) {
    Bound bound = said.get(0).bound();
    if (bound != null && !measure.bounds()) {
      return new Measurement(asSaid(said.get(0)), false);
    }
    List<Double> candidates = candidates(said, measure);
    List<Double> plausible = candidates.stream().filter(measure::plausible).distinct().toList();
    if (said.size() == 1
        && (beginsAnew(said.get(0), measure) || wantsUnit(said.get(0), candidates, measure))) {
      return new Measurement(candidates.get(0), false);
    }
    boolean unitSaid = said.get(0).unit() != null;
    if (!plausible.isEmpty() && (plausible.size() == 1 || unitSaid || sameUnit(said, measure))) {
      return new Measurement(plausible.get(0), true, bound);
    }
    return new Measurement(candidates.isEmpty() ? asSaid(said.get(0)) : candidates.get(0), false);
  }

  private static boolean wantsUnit(SpokenNumber said, List<Double> candidates, Measure measure) {
    return said.unit() == null
        && measure.unit().equals("mmol/L")
        && candidates.get(0) >= UNIT_WANTED_FROM;
  }

  // "One, two point one": 12.1, or 2.1 said after a slip; "three four point five" of a head is one.
  private static boolean beginsAnew(SpokenNumber number, Measure measure) {
    List<String> words = number.words();
    int point = words.indexOf("point");
    return point == 2
        && words.subList(0, point).stream().allMatch(DIGITS::contains)
        && candidates(
                List.of(
                    new SpokenNumber(
                        null, words.subList(1, words.size()), number.unit(), number.bound())),
                measure)
            .stream()
            .anyMatch(measure::plausible);
  }

  // Only to be shown in the question: what the first number says, whatever its unit.
  private static double asSaid(SpokenNumber number) {
    return NumberWords.readings(number.words()).stream().findFirst().orElse(0.0);
  }

  // Where the words alone are read in several ways, the first reading in the step's own unit wins
  // if it is plausible; readings in two different units are a question.
  private static boolean sameUnit(List<SpokenNumber> said, Measure measure) {
    List<String> units = UNSAID.getOrDefault(measure.unit(), List.of(measure.unit()));
    return units.stream()
            .filter(
                unit ->
                    NumberWords.readings(said.get(0).words()).stream()
                        .anyMatch(n -> measure.plausible(converted(n, unit, measure.unit()))))
            .count()
        == 1;
  }

  private static List<Double> candidates(List<SpokenNumber> said, Measure measure) {
    if (said.size() == 2) {
      return pair(said.get(0), said.get(1), measure);
    }
    List<Double> candidates = new ArrayList<>();
    if (said.size() == 1) {
      SpokenNumber only = said.get(0);
      List<String> units =
          only.unit() != null
              ? List.of(only.unit())
              : UNSAID.getOrDefault(measure.unit(), List.of(measure.unit()));
      for (String unit : units) {
        for (double reading : NumberWords.readings(only.words())) {
          candidates.add(converted(reading, unit, measure.unit()));
        }
      }
    }
    return candidates;
  }

  // "three kilos four hundred", "seven pounds six", "two days and four hours": the second number is
  // in the smaller unit.
  private static List<Double> pair(SpokenNumber major, SpokenNumber minor, Measure measure) {
    boolean metric = "kg".equals(major.unit());
    boolean imperial = "lb".equals(major.unit());
    int parts = List.of("weeks days", "days h").indexOf(major.unit() + " " + minor.unit());
    String unit = minor.unit() != null ? minor.unit() : metric ? "g" : imperial ? "oz" : null;
    List<Double> candidates = new ArrayList<>();
    if (unit == null) {
      return candidates;
    }
    for (double high : NumberWords.readings(major.words())) {
      for (double low : NumberWords.readings(minor.words())) {
        boolean fits =
            metric
                ? low >= 100 && low < 1000 || minor.unit() != null
                : low < (parts == 0 ? Units.DAYS_PER_WEEK : parts == 1 ? Units.HOURS_PER_DAY : 16);
        if (fits) {
          candidates.add(
              round(
                  raw(high, major.unit(), measure.unit()) + raw(low, unit, measure.unit()),
                  measure.unit()));
        }
      }
    }
    return candidates;
  }

  private static double converted(double number, String from, String to) {
    return round(raw(number, from, to), to);
  }

  private static double raw(double number, String from, String to) {
    if (to.equals("°C") && from.equals("°F")) {
      return Units.celsius(number);
    }
    return number * FACTORS.getOrDefault(to, Map.of()).getOrDefault(from, 1.0);
  }

  // Whole grams and hundredths of everything else: finer than any of it is measured.
  private static double round(double number, String unit) {
    return BigDecimal.valueOf(number)
        .setScale(unit.equals("g") ? 0 : 2, RoundingMode.HALF_UP)
        .doubleValue();
  }
}
