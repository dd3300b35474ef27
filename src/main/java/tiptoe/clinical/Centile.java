package tiptoe.clinical;

import com.fasterxml.jackson.annotation.JsonValue;
import org.apache.commons.statistics.distribution.NormalDistribution;

/**
 * The share of babies who are smaller, as a centile.
 *
 * @param percent 0–100, unrounded
 */
public record Centile(@JsonValue double percent) {
  static final NormalDistribution STANDARD = NormalDistribution.of(0, 1);
  // Lines that classes are drawn at: rounding must not carry a baby across one of them.
  private static final int[] LINES = {3, 10, 90, 97};

  public Centile {
    if (!(percent >= 0 && percent <= 100)) {
      throw new IllegalArgumentException("expected a centile from 0 to 100, found " + percent);
    }
  }

  static Centile ofZScore(double z) {
    return new Centile(100 * STANDARD.cumulativeProbability(z));
  }

  /**
   * For people: {@code 25th}, {@code below the 1st}, {@code above the 99th}, and {@code just below
   * the 10th} where rounding would hide on which side of a line the baby is.
   */
  public String text() {
    if (percent < 1) {
      return "below the 1st";
    }
    if (percent > 99) {
      return "above the 99th";
    }
    int rounded = (int) Math.round(percent);
    for (int line : LINES) {
      if (rounded == line && percent != line) {
        return (percent < line ? "just below the " : "just above the ") + ordinal(line);
      }
    }
    return ordinal(rounded);
  }

  private static String ordinal(int number) {
    int tens = number / 10 % 10;
    String suffix =
        tens == 1
            ? "th"
            : switch (number % 10) {
              case 1 -> "st";
              case 2 -> "nd";
              case 3 -> "rd";
              default -> "th";
            };
    return number + suffix;
  }

  @Override
  public String toString() {
    return text();
  }
}
