package tiptoe.clinical;

import com.fasterxml.jackson.annotation.JsonValue;
import java.util.Locale;

/** The 5-minute Apgar score (AAP and ACOG Committee Opinion 644, 2015). */
public final class Apgar {
  static final String SOURCE = "AAP and ACOG Committee Opinion 644, 2015";
  private static final int SIGNS = 5;

  private Apgar() {}

  /** What a 5-minute score says. */
  public enum Band {
    LOW,
    MODERATELY_ABNORMAL,
    REASSURING;

    @JsonValue
    public String id() {
      return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    public String text() {
      return id().replace('-', ' ');
    }
  }

  /** The band of a 5-minute total from 0 to 10. */
  static Band band(int total) {
    return total >= 7 ? Band.REASSURING : total >= 4 ? Band.MODERATELY_ABNORMAL : Band.LOW;
  }

  /** The total of the five signs (colour, pulse, grimace, activity, breathing), each 0 to 2. */
  public static int total(int... signs) {
    if (signs.length != SIGNS) {
      throw new IllegalArgumentException("expected five signs, found " + signs.length);
    }
    int total = 0;
    for (int sign : signs) {
      if (sign < 0 || sign > 2) {
        throw new IllegalArgumentException("expected a sign of 0, 1 or 2, found " + sign);
      }
      total += sign;
    }
    return total;
  }
}
