package tiptoe.clinical;

import java.util.HashMap;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;
import tiptoe.files.Shipped;
import tiptoe.protocol.Gestation;
import tiptoe.protocol.Units;

/**
 * The bilirubin at which treatment starts, by age and gestation.
 *
 * @param id of the standard, as in the configuration
 * @param phototherapy threshold in µmol/L
 * @param exchange threshold of an exchange transfusion in µmol/L
 * @param reached whether the threshold itself already calls for treatment, or only what is above it
 * @param source the publication
 */
record BilirubinThresholds(
    String id, double phototherapy, double exchange, boolean reached, String source) {
  static final String NICE = "nice-cg98";
  static final String AAP = "aap-2022";
  private static final String NICE_SOURCE =
      "NICE CG98, threshold table from 38 weeks; treatment threshold graphs by week below";
  private static final String AAP_SOURCE = "AAP, Pediatrics 2022;150:e2022058859";

  // NICE CG98, consensus-based thresholds from 38 weeks: hours to µmol/L; between the rows the
  // published graph is a straight line.
  private static final NavigableMap<Double, Double> NICE_PHOTOTHERAPY =
      line(0, 100, 6, 125, 12, 150, 18, 175, 24, 200, 96, 350);
  private static final NavigableMap<Double, Double> NICE_EXCHANGE = line(0, 100, 42, 450);

  // NICE CG98, graphs for 23 to 37 weeks: straight from birth to 72 hours, level from there.
  private static final int NICE_EARLIEST_WEEK = 23;
  private static final int NICE_TABLE_FROM_WEEK = 38;
  private static final double LEVEL_FROM_HOURS = 72;
  private static final double PHOTOTHERAPY_AT_BIRTH = 40;
  private static final double EXCHANGE_AT_BIRTH = 80;

  private static final int AAP_EARLIEST_WEEK = 35;
  private static final int AAP_LAST_HOUR = 336;

  /** Where the chosen standard has no threshold: why, for people. */
  static Optional<String> obstacle(String standard, Gestation gestation, double hours) {
    int earliest = standard.equals(AAP) ? AAP_EARLIEST_WEEK : NICE_EARLIEST_WEEK;
    if (gestation.weeks() < earliest) {
      return Optional.of("the thresholds begin at " + earliest + " weeks");
    }
    return standard.equals(AAP) && hours > AAP_LAST_HOUR
        ? Optional.of("the thresholds end at 14 days")
        : Optional.empty();
  }

  /**
   * The thresholds of a standard where {@link #obstacle} sees none.
   *
   * @param hours age, 0 or more
   * @param riskFactors whether there are neurotoxicity risk factors beyond prematurity, by which
   *     the AAP's are lower
   */
  static BilirubinThresholds of(
      String standard, Gestation gestation, double hours, boolean riskFactors) {
    return standard.equals(AAP)
        ? ofAap(gestation.weeks(), hours, riskFactors)
        : ofNice(gestation.weeks(), hours);
  }

  boolean callsForPhototherapy(double bilirubin) {
    return reached ? bilirubin >= phototherapy : bilirubin > phototherapy;
  }

  boolean callsForExchange(double bilirubin) {
    return reached ? bilirubin >= exchange : bilirubin > exchange;
  }

  private static BilirubinThresholds ofNice(int weeks, double hours) {
    if (weeks >= NICE_TABLE_FROM_WEEK) {
      return new BilirubinThresholds(
          NICE, on(NICE_PHOTOTHERAPY, hours), on(NICE_EXCHANGE, hours), false, NICE_SOURCE);
    }
    double share = Math.min(hours, LEVEL_FROM_HOURS) / LEVEL_FROM_HOURS;
    double exchange = weeks * 10;
    double phototherapy = exchange - 100;
    return new BilirubinThresholds(
        NICE,
        PHOTOTHERAPY_AT_BIRTH + share * (phototherapy - PHOTOTHERAPY_AT_BIRTH),
        EXCHANGE_AT_BIRTH + share * (exchange - EXCHANGE_AT_BIRTH),
        false,
        NICE_SOURCE);
  }

  private static BilirubinThresholds ofAap(int weeks, double hours, boolean riskFactors) {
    return new BilirubinThresholds(
        AAP,
        AapTable.SHIPPED.micromoles("phototherapy", riskFactors, weeks, hours),
        AapTable.SHIPPED.micromoles("exchange", riskFactors, weeks, hours),
        true,
        AAP_SOURCE);
  }

  private static NavigableMap<Double, Double> line(double... points) {
    NavigableMap<Double, Double> line = new TreeMap<>();
    for (int i = 0; i < points.length; i += 2) {
      line.put(points[i], points[i + 1]);
    }
    return line;
  }

  private static double on(NavigableMap<Double, Double> line, double hours) {
    Map.Entry<Double, Double> before = line.floorEntry(hours);
    Map.Entry<Double, Double> after = line.ceilingEntry(hours);
    if (after == null || after.getKey().equals(before.getKey())) {
      return before.getValue();
    }
    double share = (hours - before.getKey()) / (after.getKey() - before.getKey());
    return before.getValue() + share * (after.getValue() - before.getValue());
  }

  /** The AAP's tables: one row a treatment, risk and week. */
  private static final class AapTable {
    static final AapTable SHIPPED = new AapTable();
    private static final String FILE = "bilirubin-aap-2022.csv";

    private final Map<String, NavigableMap<Integer, double[]>> byWeek = new HashMap<>();

    private AapTable() {
      Shipped.lines(BilirubinThresholds.class, FILE).stream()
          .filter(line -> !line.startsWith("#"))
          .forEach(this::read);
    }

    private void read(String line) {
      String[] cells = line.split(";");
      byWeek
          .computeIfAbsent(cells[0] + cells[1].equals("yes"), key -> new TreeMap<>())
          .put(
              Integer.valueOf(cells[2]),
              Stream.of(cells[3].split(" ")).mapToDouble(Double::parseDouble).toArray());
    }

    // The tables go by the hour that was completed, and begin with the first.
    double micromoles(String treatment, boolean riskFactors, int weeks, double hours) {
      double[] row = byWeek.get(treatment + riskFactors).floorEntry(weeks).getValue();
      int hour = Math.max(1, (int) Math.floor(hours));
      return row[hour - 1] * Units.MICROMOLES_PER_MILLIGRAM_OF_BILIRUBIN;
    }
  }
}
