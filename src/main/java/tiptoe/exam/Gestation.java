package tiptoe.exam;

import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Gestation at birth.
 *
 * @param weeks completed weeks, 20–45
 * @param days days beyond them, 0–6
 */
public record Gestation(int weeks, int days) implements Comparable<Gestation> {
  private static final Pattern FORM = Pattern.compile("(\\d{2})\\+([0-6])");

  public Gestation {
    if (weeks < 20 || weeks > 45 || days < 0 || days > 6) {
      throw new IllegalArgumentException(
          "expected gestation from 20+0 to 45+6, found " + weeks + "+" + days);
    }
  }

  /** Reads {@code 39+4}. */
  public static Gestation parse(String text) {
    Matcher form = FORM.matcher(text);
    if (!form.matches()) {
      throw new IllegalArgumentException("expected gestation such as 39+4, found " + text);
    }
    return new Gestation(Integer.parseInt(form.group(1)), Integer.parseInt(form.group(2)));
  }

  public int totalDays() {
    return 7 * weeks + days;
  }

  @Override
  public int compareTo(Gestation other) {
    return Integer.compare(totalDays(), other.totalDays());
  }

  @Override
  public String toString() {
    return weeks + "+" + days;
  }
}
