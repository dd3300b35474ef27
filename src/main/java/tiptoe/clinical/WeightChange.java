package tiptoe.clinical;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/** Change since birth. A loss above 10 % is flagged (NICE NG75, 2017, 1.1.2). */
final class WeightChange {
  static final String SOURCE = "NICE NG75, 2017, 1.1.2";
  private static final double NEAR_HOURS = 6;
  // NICE NG75, 2017, 1.1.1
  private static final double LOSS_STOPS_HOURS = 96;

  // Flaherman et al., Pediatrics 2015;135:e16: median loss in % of breast-fed babies by hours of
  // age. The curves between and beyond are published as figures only.
  private static final Map<Integer, Double> VAGINAL = Map.of(24, 4.2, 48, 7.1, 72, 6.4);
  private static final Map<Integer, Double> CAESAREAN = Map.of(24, 4.9, 48, 8.0, 72, 8.6, 96, 5.8);

  private WeightChange() {}

  /** Change in % of the birth weight; empty where one of the two is not known. */
  static Optional<Double> percent(AssessedBaby baby) {
    return baby.number("weight")
        .flatMap(now -> baby.birthWeight().map(then -> percent(then, now.quantity().number())));
  }

  /** Change in % of the birth weight; negative for a loss. Both in g, above 0. */
  static double percent(double birthWeight, double now) {
    // 100 is taken out last, so that a loss of exactly a tenth stays exactly 10 %.
    return (now - birthWeight) * 100 / birthWeight;
  }

  /** What must be kept in mind with a loss. */
  static List<String> remarks(AssessedBaby baby) {
    List<String> remarks = new ArrayList<>();
    Optional<String> mode = baby.fact("birth-mode");
    if (baby.fact("feeding").equals(Optional.of("breast")) && mode.isPresent()) {
      boolean caesarean = mode.get().equals("caesarean");
      double hours = baby.age().orElse(Double.NaN);
      new TreeMap<>(caesarean ? CAESAREAN : VAGINAL)
          .forEach(
              (at, median) -> {
                if (Math.abs(hours - at) <= NEAR_HOURS) {
                  remarks.add(median(at, median, caesarean));
                }
              });
    }
    if (baby.age().filter(hours -> hours > LOSS_STOPS_HOURS).isPresent()) {
      remarks.add(
          "loss mostly stops after 3 to 4 days; birth weight is mostly regained by 3 weeks");
    }
    return List.copyOf(remarks);
  }

  private static String median(int at, double median, boolean caesarean) {
    return String.format(
        Locale.ROOT,
        "median of breast-fed babies %s at %d h: %.1f %% (Flaherman, Pediatrics 2015;135:e16)",
        caesarean ? "after caesarean" : "born vaginally",
        at,
        median);
  }
}
