package tiptoe.clinical;

import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * When something is due, read from words.
 *
 * <pre>
 * due  = "at " n [ " to " n ] unit " of age" | "by " n unit " of age" | "from " n unit " of age"
 *      | "in " n unit .
 * unit = "hour" | "hours" | "days" | "weeks" | "months" .
 * </pre>
 *
 * <p>{@code of age} counts from birth, {@code in} from the examination. A month is one of the
 * calendar.
 *
 * @param text the words
 * @param fromBirth whether it counts from birth and not from the examination
 * @param unit what it counts in
 * @param first the earliest; null where there is none
 * @param last the latest; null where there is none
 */
record Due(String text, boolean fromBirth, ChronoUnit unit, Integer first, Integer last) {
  private static final Pattern FORM =
      Pattern.compile("(at|by|from|in) (\\d+)(?: to (\\d+))? (hour|day|week|month)s?( of age)?");
  private static final Map<String, ChronoUnit> UNITS =
      Map.of(
          "hour", ChronoUnit.HOURS,
          "day", ChronoUnit.DAYS,
          "week", ChronoUnit.WEEKS,
          "month", ChronoUnit.MONTHS);
  private static final DateTimeFormatter MOMENT =
      DateTimeFormatter.ofPattern("uuuu-MM-dd'T'HH:mm:ssxxx");

  static Due parse(String text) {
    Matcher form = FORM.matcher(text);
    boolean readable =
        form.matches()
            && form.group(1).equals("in") == (form.group(5) == null)
            && (form.group(3) == null || form.group(1).equals("at"));
    if (!readable) {
      throw new IllegalArgumentException(
          "expected a time such as at 2 weeks of age, found " + text);
    }
    Integer number = Integer.valueOf(form.group(2));
    Integer last = form.group(3) == null ? number : Integer.valueOf(form.group(3));
    return new Due(
        text,
        form.group(5) != null,
        UNITS.get(form.group(4)),
        form.group(1).equals("by") ? null : number,
        form.group(1).equals("from") ? null : last);
  }

  /** The earliest moment, as in {@link PlanItem}; null where there is none or none is known. */
  String from(AssessedBaby baby) {
    return moment(baby, first);
  }

  /** The latest moment, as in {@link PlanItem}; null where there is none or none is known. */
  String to(AssessedBaby baby) {
    return moment(baby, last);
  }

  /** Whether it was over before the examination. */
  boolean isPast(AssessedBaby baby) {
    Optional<ZonedDateTime> end = at(baby, last);
    return end.isPresent()
        && baby.examinedAt().isPresent()
        && end.get().isBefore(baby.examinedAt().get());
  }

  private String moment(AssessedBaby baby, Integer number) {
    return at(baby, number)
        .map(
            moment ->
                unit == ChronoUnit.HOURS ? MOMENT.format(moment) : moment.toLocalDate().toString())
        .orElse(null);
  }

  private Optional<ZonedDateTime> at(AssessedBaby baby, Integer number) {
    Optional<ZonedDateTime> start = fromBirth ? baby.bornAt() : baby.examinedAt();
    return number == null ? Optional.empty() : start.map(moment -> moment.plus(number, unit));
  }
}
