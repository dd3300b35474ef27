package tiptoe.clinical;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;
import tiptoe.exam.Answer;
import tiptoe.protocol.Detail;
import tiptoe.protocol.Identified;
import tiptoe.settings.Setting;
import tiptoe.settings.Settings;

/**
 * A pulse-oximetry screen for critical congenital heart disease: from readings in hand and foot to
 * what comes next.
 *
 * @param pass lowest passing saturation in %
 * @param fail below this saturation in % in either limb, the screen fails at once
 * @param difference largest passing difference between hand and foot in %
 * @param bothLimbs whether both limbs must reach {@code pass}, or one is enough
 * @param repeats how often a screen that neither passes nor fails is repeated
 * @param source the paper
 */
record SaturationScreen(
    double pass, double fail, double difference, boolean bothLimbs, int repeats, String source) {
  static final SaturationScreen OF_2025 =
      new SaturationScreen(95, 90, 3, true, 1, "AAP 2025 screen, Pediatrics 155:e2024069667");
  static final SaturationScreen OF_2011 =
      new SaturationScreen(95, 90, 3, false, 2, "AAP-endorsed 2011 screen, Pediatrics 128:e1259");

  /** For use within the first day, so that nothing is said of an age below 24 hours. */
  static final SaturationScreen UK =
      new SaturationScreen(
          95,
          90,
          2,
          true,
          1,
          "BAPM, Routine pulse oximetry testing for newborn babies, 2024; Ewer et al., Lancet"
              + " 2011;378:785");

  private static final String HAND = "saturation-right-hand";
  private static final String FOOT = "saturation-foot";

  /** Ids of the repeats in their order; the first measurement has none. */
  private static final List<String> REPEATS = List.of("", "first", "second");

  enum Outcome implements Identified {
    PASS,
    REPEAT,
    FAIL
  }

  /**
   * One pair of readings in %.
   *
   * @param hand right hand, before the duct
   * @param foot either foot, behind the duct
   */
  record Reading(double hand, double foot) {}

  static SaturationScreen of(Settings settings) {
    return switch (settings.get(Setting.SATURATION_SCREEN)) {
      case "2011" -> OF_2011;
      case "uk" -> UK;
      default -> OF_2025;
    };
  }

  /** Whether it is meant for babies of 24 hours and older. */
  boolean fromOneDay() {
    return this != UK;
  }

  /** The outcome by the configured rules; empty while only one limb was read and it is not low. */
  static Optional<Outcome> outcome(AssessedBaby baby) {
    SaturationScreen screen = of(baby.settings());
    return Optional.of(screen.readings(baby)).filter(all -> !all.isEmpty()).map(screen::outcome);
  }

  static ConditionResult verdict(AssessedBaby baby, Outcome... any) {
    return ConditionResult.of(
        outcome(baby).filter(List.of(any)::contains).isPresent(),
        Stream.of(HAND, FOOT).flatMap(step -> baby.numbers(step).stream()).toList());
  }

  /**
   * What the screen and its repeats come to.
   *
   * @param readings in the order they were taken, at least one. What follows a pass is a new
   *     screen, so that a baby who turns blue is not covered by it; a fail is not undone by what
   *     follows
   */
  Outcome outcome(List<Reading> readings) {
    Outcome latest = Outcome.REPEAT;
    int unclear = 0;
    for (Reading reading : readings) {
      latest = outcome(reading);
      unclear = latest == Outcome.REPEAT ? unclear + 1 : 0;
      if (latest == Outcome.FAIL || unclear > repeats) {
        return Outcome.FAIL;
      }
    }
    return latest;
  }

  private Outcome outcome(Reading reading) {
    double low = Math.min(reading.hand(), reading.foot());
    double high = Math.max(reading.hand(), reading.foot());
    if (low < fail) {
      return Outcome.FAIL;
    }
    boolean reached = (bothLimbs ? low : high) >= pass;
    return reached && high - low <= difference ? Outcome.PASS : Outcome.REPEAT;
  }

  // Readings of the same repeat belong together; where none is named, the first of each limb do,
  // then the second, and so on. A reading without its partner counts only where it fails whatever
  // the partner is.
  private List<Reading> readings(AssessedBaby baby) {
    SortedMap<Integer, Double> hand = byRepeat(baby.numbers(HAND));
    SortedMap<Integer, Double> foot = byRepeat(baby.numbers(FOOT));
    SortedSet<Integer> times = new TreeSet<>(hand.keySet());
    times.addAll(foot.keySet());
    List<Reading> readings = new ArrayList<>();
    for (int time : times) {
      double one = hand.getOrDefault(time, foot.get(time));
      double other = foot.getOrDefault(time, one);
      boolean pair = hand.containsKey(time) && foot.containsKey(time);
      if (pair || one < fail) {
        readings.add(new Reading(one, other));
      }
    }
    return readings;
  }

  private static SortedMap<Integer, Double> byRepeat(List<Answer> answers) {
    SortedMap<Integer, Double> numbers = new TreeMap<>();
    int next = 0;
    for (Answer answer : answers) {
      String repeat = answer.details().get(Detail.REPEAT);
      numbers.put(repeat == null ? next++ : REPEATS.indexOf(repeat), answer.quantity().number());
    }
    return numbers;
  }
}
