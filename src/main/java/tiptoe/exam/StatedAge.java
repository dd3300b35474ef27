package tiptoe.exam;

import java.time.DateTimeException;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Optional;
import tiptoe.protocol.Fact;

/** An age that was stated beside a moment of birth. How far both may be apart is our own choice. */
public final class StatedAge {
  private static final double HOURS_PER_DAY = 24;
  private static final double ROUNDED = 2;

  private StatedAge() {}

  /**
   * Whether an age in hours can be what was counted from birth. Whole days, from two on, are said
   * of any hour of a day; else hours are rounded and dictated late.
   */
  public static boolean fits(double stated, double counted) {
    boolean inDays = stated >= 2 * HOURS_PER_DAY && stated % HOURS_PER_DAY == 0;
    return Math.abs(stated - counted) <= (inDays ? HOURS_PER_DAY : ROUNDED);
  }

  /**
   * Whether age and moment of birth of a baby cannot both be right; not where one is not known.
   *
   * @param at when the age was stated
   * @param zone of a moment of birth that names none
   */
  static boolean isAtOdds(Baby baby, Instant at, ZoneId zone) {
    Optional<Double> stated = baby.fact("age").flatMap(StatedAge::number);
    Optional<Double> counted = baby.fact("born-at").flatMap(born -> hours(born, at, zone));
    return stated.isPresent() && counted.isPresent() && !fits(stated.get(), counted.get());
  }

  private static Optional<Double> number(String text) {
    try {
      return Optional.of(Double.valueOf(text));
    } catch (NumberFormatException e) {
      return Optional.empty();
    }
  }

  private static Optional<Double> hours(String bornAt, Instant at, ZoneId zone) {
    try {
      Duration age = Duration.between(Fact.moment(bornAt, zone).toInstant(), at);
      return Optional.of(age.toSeconds() / (double) Duration.ofHours(1).toSeconds());
    } catch (DateTimeException e) {
      return Optional.empty();
    }
  }
}
