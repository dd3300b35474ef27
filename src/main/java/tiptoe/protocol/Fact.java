package tiptoe.protocol;

import com.fasterxml.jackson.annotation.JsonCreator;
import java.time.DateTimeException;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.ZonedDateTime;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * Something that can be known of the baby beside the findings.
 *
 * @param id unique among the facts
 * @param label for people
 * @param kind how its value is written
 * @param values what a choice can be; empty for every other kind
 * @param labels words for people for those values whose id is not good enough
 * @param measure unit and range of a number, of the weeks of a gestation, and of the length of an
 *     identity; else null
 * @param handover whether it is handed on rather than known of the baby: consent, what was told,
 *     what was set going
 */
public record Fact(
    String id,
    String label,
    Kind kind,
    List<String> values,
    Map<String, String> labels,
    Measure measure,
    boolean handover) {
  private static final Pattern PRINTABLE = Pattern.compile("[^\\p{C}\\p{Zl}\\p{Zp}]+");

  /** How the value of a fact is written. */
  public enum Kind {
    /** One of a few words. */
    CHOICE,
    /** A number in the unit of the fact. */
    NUMBER,
    /** Weeks and days such as 39+4. */
    GESTATION,
    /** An ISO 8601 date and time; without a zone it is in the one where the baby is examined. */
    MOMENT,
    /** Anything but nothing. */
    TEXT,
    /** One printable line that helps to tell whose record it is; no rule depends on it. */
    IDENTITY;

    @JsonCreator
    static Kind of(String id) {
      return valueOf(id.toUpperCase(Locale.ROOT));
    }
  }

  public Fact {
    values = List.copyOf(values);
    labels = Map.copyOf(labels);
    if (!values.containsAll(labels.keySet())) {
      throw new IllegalArgumentException("expected labels of values alone in fact " + id);
    }
    if ((kind == Kind.CHOICE) == values.isEmpty()
        || (kind == Kind.CHOICE || kind == Kind.MOMENT || kind == Kind.TEXT) != (measure == null)) {
      throw new IllegalArgumentException("expected what its kind needs in fact " + id);
    }
  }

  /** Whether it helps to tell whose record it is: the moment of birth does, too. */
  public boolean identifies() {
    return kind == Kind.IDENTITY || kind == Kind.MOMENT;
  }

  /** A value of a choice for people. */
  public String label(String value) {
    return labels.getOrDefault(value, Labels.of(value));
  }

  /** What is wrong with this value, for people; empty where the fact can have it. */
  public Optional<String> problem(String value) {
    return value != null && isPossible(value)
        ? Optional.empty()
        : Optional.of("expected " + expected() + " for " + id + ", found " + value);
  }

  /**
   * Reads the value of a moment.
   *
   * @param zone the zone of the moment read; null for the one it names, or else UTC
   * @throws DateTimeException where it is none
   */
  public static ZonedDateTime moment(String value, ZoneId zone) {
    if (!value.matches(".*(Z|[+-]\\d\\d:\\d\\d)")) {
      return LocalDateTime.parse(value).atZone(zone == null ? ZoneOffset.UTC : zone);
    }
    OffsetDateTime moment = OffsetDateTime.parse(value);
    return zone == null ? moment.toZonedDateTime() : moment.atZoneSameInstant(zone);
  }

  private boolean isPossible(String value) {
    try {
      return switch (kind) {
        case CHOICE -> values.contains(value);
        case NUMBER ->
            value.matches("\\d+(\\.\\d+)?") && measure.plausible(Double.parseDouble(value));
        case GESTATION -> measure.plausible(Gestation.parse(value).weeks());
        case MOMENT -> moment(value, null) != null;
        case TEXT -> !value.isBlank();
        case IDENTITY ->
            PRINTABLE.matcher(value).matches()
                && value.equals(value.strip())
                && measure.plausible(value.length());
      };
    } catch (IllegalArgumentException | DateTimeException e) {
      return false;
    }
  }

  private String expected() {
    String from =
        measure == null ? "" : (kind == Kind.IDENTITY ? " " : " from ") + Math.round(measure.min());
    String to = measure == null ? "" : Long.toString(Math.round(measure.max()));
    return switch (kind) {
      case CHOICE -> String.join(" or ", values);
      case NUMBER -> Units.plural(measure.unit()) + from + " to " + to;
      case GESTATION -> "weeks and days" + from + "+0 to " + to + "+6";
      case MOMENT -> "a time such as 2026-03-01T04:30:00Z";
      case TEXT -> "some text";
      case IDENTITY -> "one line of" + from + " to " + to + " printable letters";
    };
  }
}
