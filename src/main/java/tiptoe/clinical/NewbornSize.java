package tiptoe.clinical;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tiptoe.files.Shipped;
import tiptoe.protocol.Gestation;

/**
 * Size at birth by sex and gestation: the INTERGROWTH-21st newborn size standard from 33+0 (Villar
 * et al., Lancet 2014;384:857) and the very preterm reference below it (Villar et al., Lancet
 * 2016;387:844).
 */
public final class NewbornSize {
  /** The first day of the very preterm reference. */
  public static final Gestation EARLIEST = new Gestation(24, 0);

  /** The first day of the standard. */
  public static final Gestation STANDARD_FROM = new Gestation(33, 0);

  /** The last day of the standard. */
  public static final Gestation LATEST = new Gestation(42, 6);

  static final String STANDARD_SOURCE =
      "INTERGROWTH-21st newborn size standard, Lancet 2014;384:857";
  static final String PRETERM_SOURCE =
      "INTERGROWTH-21st very preterm size reference, Lancet 2016;387:844";

  private static final Map<String, SkewT> STANDARD = table();

  private NewbornSize() {}

  /**
   * How a measure is spread at a gestation.
   *
   * @param sex {@code girl} or {@code boy}; anything else has no standard
   * @return empty outside 24+0 to 42+6 or without a standard for the sex
   */
  public static Optional<SizeModel> model(SizeMeasure measure, String sex, Gestation gestation) {
    boolean known = "girl".equals(sex) || "boy".equals(sex);
    if (!known || gestation.compareTo(EARLIEST) < 0 || gestation.compareTo(LATEST) > 0) {
      return Optional.empty();
    }
    return Optional.of(
        gestation.compareTo(STANDARD_FROM) < 0
            ? veryPreterm(measure, "boy".equals(sex), gestation.totalDays() / 7.0)
            : standard(measure, at(measure, sex, gestation.totalDays())));
  }

  /** The paper that {@link #model} is taken from at this gestation. */
  public static String source(Gestation gestation) {
    return gestation.compareTo(STANDARD_FROM) < 0 ? PRETERM_SOURCE : STANDARD_SOURCE;
  }

  /** The distribution of the standard on a day from 231 (33+0) to 300 (42+6). */
  static SkewT at(SizeMeasure measure, String sex, int days) {
    return STANDARD.get(measure.step() + " " + sex + " " + days);
  }

  private static Map<String, SkewT> table() {
    Map<String, SkewT> table = new HashMap<>();
    List<String[]> shapes = new ArrayList<>();
    for (String line : Shipped.lines(NewbornSize.class, "newborn-size.csv")) {
      String[] cells = line.split(",");
      if (cells[0].equals("shape")) {
        shapes.add(cells);
      } else if (cells[0].equals("day")) {
        int column = 2;
        for (String[] shape : shapes) {
          double mu = Double.parseDouble(cells[column++]);
          double sigma = Double.parseDouble(cells[column++]);
          double nu = Double.parseDouble(shape[3]);
          double tau = Double.parseDouble(shape[4]);
          String key = shape[1] + " " + shape[2] + " " + Integer.parseInt(cells[1]);
          table.put(key, new SkewT(mu, sigma, nu, tau));
        }
      }
    }
    return table;
  }

  private static SizeModel standard(SizeMeasure measure, SkewT skewT) {
    return new SizeModel() {
      @Override
      public double zScore(double value) {
        return skewT.zScore(measure.toStandard(value));
      }

      @Override
      public double valueAt(double centile) {
        return measure.fromStandard(skewT.quantile(centile / 100));
      }
    };
  }

  // Means and variances of normal distributions, of ln kg for weight and of cm for the others.
  private static SizeModel veryPreterm(SizeMeasure measure, boolean boy, double weeks) {
    int s = boy ? 1 : 0;
    return switch (measure) {
      case WEIGHT ->
          new NormalSize(
              measure,
              -7.00303 + 1.325911 * Math.sqrt(weeks) + 0.0571937 * s,
              Math.sqrt(0.0373218));
      case LENGTH ->
          new NormalSize(measure, 1.307633 + 1.270022 * weeks + 0.4263885 * s, Math.sqrt(6.757543));
      case HEAD ->
          new NormalSize(
              measure, 0.7866522 + 0.887638 * weeks + 0.2513385 * s, Math.sqrt(2.433481));
    };
  }

  /** A normal distribution, of the logarithm where the measure is weight. */
  private record NormalSize(SizeMeasure measure, double mean, double sd) implements SizeModel {
    @Override
    public double zScore(double value) {
      double y = measure.toStandard(value);
      return ((measure == SizeMeasure.WEIGHT ? Math.log(y) : y) - mean) / sd;
    }

    @Override
    public double valueAt(double centile) {
      double y = mean + sd * Centile.STANDARD.inverseCumulativeProbability(centile / 100);
      return measure.fromStandard(measure == SizeMeasure.WEIGHT ? Math.exp(y) : y);
    }
  }
}
