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
 *      | "at " n " to " n " weeks corrected" | "in " n unit | "within " n unit .
 * unit = "hour" | "hours" | "days" | "weeks" | "months" .
 * </pre>
 *
 * <p>{@code of age} counts from birth; {@code corrected} too, less the gestation at birth, so that
 * 40 weeks corrected is the day the baby was due; {@code in} and {@code within} count from the
 * examination. A month is one of the calendar.
 *
 * @param start what it counts from
 * @param first the earliest; null where there is none
 * @param last the latest; null where there is none
 */
record Due(String text, Start start, ChronoUnit unit, Integer first, Integer last) {
  enum Start {
    BIRTH,
    CONCEPTION,
    EXAMINATION
  }

  private static final Pattern FORM =
      Pattern.compile(
          "(at|by|from|in|within) (\\d+)(?: to (\\d+))? (hour|day|week|month)s?( of age|"
              + " corrected)?");
  private static final Map<String, ChronoUnit> UNITS =
      Map.of(
          "hour", ChronoUnit.HOURS,
          "day", ChronoUnit.DAYS,
          "week", ChronoUnit.WEEKS,
          "month", ChronoUnit.MONTHS);
  private static final DateTimeFormatter MOMENT =
      DateTimeFormatter.ofPattern("uuuu-MM-dd'T'HH:mm:ssxxx");

  static Due parse(String text) {
    return parsed(text)
        .orElseThrow(
            () ->
                new IllegalArgumentException(
                    "expected a time such as at 2 weeks of age, found " + text));
  }

  /** The time that words begin with; empty where they name none that could be dated. */
  static Optional<Due> parsed(String text) {
    Matcher form = FORM.matcher(text.replace(" or before discharge", ""));
    if (!form.matches()) {
      return Optional.empty();
    }
    String sort = form.group(1);
    String counted = form.group(5);
    boolean fromExamination = sort.equals("in") || sort.equals("within");
    boolean corrected = " corrected".equals(counted);
    boolean readable =
        fromExamination == (counted == null)
            && (form.group(3) == null || sort.equals("at"))
            && (!corrected || sort.matches("at|from") && form.group(4).equals("week"));
    if (!readable) {
      return Optional.empty();
    }
    Integer number = Integer.valueOf(form.group(2));
    Integer last = form.group(3) == null ? number : Integer.valueOf(form.group(3));
    return Optional.of(
        new Due(
            text,
            fromExamination ? Start.EXAMINATION : corrected ? Start.CONCEPTION : Start.BIRTH,
            UNITS.get(form.group(4)),
            sort.equals("by") || sort.equals("within") ? null : number,
            sort.equals("from") ? null : last));
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
    return number == null
        ? Optional.empty()
        : started(baby).map(moment -> moment.plus(number, unit));
  }

  private Optional<ZonedDateTime> started(AssessedBaby baby) {
    return switch (start) {
      case BIRTH -> baby.bornAt();
      case CONCEPTION ->
          baby.bornAt().flatMap(birth -> baby.gestation().map(g -> birth.minusDays(g.totalDays())));
      case EXAMINATION -> baby.examinedAt();
    };
  }
}
