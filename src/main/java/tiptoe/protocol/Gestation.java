package tiptoe.protocol;

import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Gestation at birth; which ones can be meant is said by the fact {@code gestation}.
 *
 * @param weeks completed weeks, 0–99
 * @param days days beyond them, 0–6
 */
public record Gestation(int weeks, int days) implements Comparable<Gestation> {
  private static final Pattern FORM = Pattern.compile("(\\d{2})\\+([0-6])");

  public Gestation {
    if (weeks < 0 || weeks > 99 || days < 0 || days > 6) {
      throw new IllegalArgumentException(
          "expected gestation such as 39+4, found " + weeks + "+" + days);
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
