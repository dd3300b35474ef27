package tiptoe.exam;

import java.time.Instant;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;

/** Which facts about the baby there are and what they can be. */
public final class Facts {
  private static final Check YES_NO = Check.oneOf("yes", "no");
  private static final Map<String, Check> CHECKS =
      Map.ofEntries(
          Map.entry("label", new Check("some text", text -> !text.isBlank())),
          Map.entry("sex", Check.oneOf("girl", "boy", "undetermined")),
          Map.entry("gestation", new Check("weeks and days such as 39+4", Facts::isGestation)),
          Map.entry("age", Check.number("hours from 0 to 2000", 0, 2000)),
          Map.entry("born-at", new Check("a time such as 2026-03-01T04:30:00Z", Facts::isTime)),
          Map.entry("first-born", YES_NO),
          Map.entry("presentation", Check.oneOf("breech", "cephalic")),
          Map.entry("breech-in-last-month", YES_NO),
          Map.entry("hip-family-history", YES_NO),
          Map.entry("multiple", YES_NO),
          Map.entry("birth-mode", Check.oneOf("vaginal", "forceps", "vacuum", "caesarean")),
          Map.entry("heart-family-history", YES_NO),
          Map.entry("eye-family-history", YES_NO),
          Map.entry("birth-weight", Check.number("grams from 300 to 7000", 300, 7000)));

  private Facts() {}

  /** What is wrong with this fact, for people; empty when it can be recorded. */
  public static Optional<String> problem(String fact, String value) {
    Check check = CHECKS.get(fact);
    if (check == null) {
      return Optional.of("expected a fact about the baby, found " + fact);
    }
    return value != null && check.test().test(value)
        ? Optional.empty()
        : Optional.of("expected " + check.expected() + " for " + fact + ", found " + value);
  }

  private static boolean isGestation(String text) {
    try {
      return Gestation.parse(text) != null;
    } catch (IllegalArgumentException e) {
      return false;
    }
  }

  private static boolean isTime(String text) {
    try {
      return Instant.parse(text) != null;
    } catch (java.time.DateTimeException e) {
      return false;
    }
  }

  private record Check(String expected, Predicate<String> test) {
    static Check oneOf(String... values) {
      return new Check(String.join(" or ", values), java.util.Set.of(values)::contains);
    }

    static Check number(String expected, double min, double max) {
      return new Check(
          expected,
          text -> text.matches("\\d+(\\.\\d+)?") && within(Double.parseDouble(text), min, max));
    }

    private static boolean within(double number, double min, double max) {
      return number >= min && number <= max;
    }
  }
}
