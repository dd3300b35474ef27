package tiptoe.language;

import java.time.DateTimeException;
import java.time.DayOfWeek;
import java.time.Duration;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.Month;
import java.time.ZonedDateTime;
import java.time.temporal.TemporalAdjusters;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * When the baby was born, as people say it: "born yesterday at half past nine in the evening". It
 * must be all that is said: a hedge, a relative or anything else beside it makes it none.
 *
 * <pre>
 * saying = ( [ subject ] ( "born" | "delivered" ) | "time of birth" [ "is" | "was" ] ) { item } .
 * item   = day | clock | part .
 * day    = "today" | "yesterday" | [ "on" ] weekday | "on the third of march" [ year ] .
 * clock  = "at" ( minutes ( "past" | "to" ) hour | hour minutes | hour "o'clock" | "noon" ) .
 * part   = "this morning" | "in the evening" | "at night" | "am" | … .
 * </pre>
 *
 * @param moment the likeliest, without a zone: where the baby is examined; never in the future and
 *     at most 28 days ago
 * @param doubtful whether it may be another: no day was said, or not which half of it
 */
record BirthTime(LocalDateTime moment, boolean doubtful) {
  /** The newborn period. */
  private static final Duration LONGEST = Duration.ofDays(28);

  private static final String UNIT = "(?:one|two|three|four|five|six|seven|eight|nine)";
  private static final String TEEN =
      "(?:ten|eleven|twelve|thirteen|fourteen|fifteen|sixteen|seventeen|eighteen|nineteen)";
  private static final String NUMBER =
      "(?:(?:twenty|thirty|forty|fifty)(?: %s)?|%s|%1$s)".formatted(UNIT, TEEN);
  private static final String ZERO = "(?:oh|zero)";
  private static final String DIGIT = "(?:%s|%s)".formatted(ZERO, UNIT);
  private static final String TWO_FIGURES =
      "(?:%s %s|%s|(?:twenty|thirty|forty|fifty)(?: %s)?)".formatted(ZERO, DIGIT, TEEN, UNIT);
  private static final String ORDINALS =
      "first second third fourth fifth sixth seventh eighth ninth tenth eleventh twelfth thirteenth"
          + " fourteenth fifteenth sixteenth seventeenth eighteenth nineteenth twentieth thirtieth";
  private static final String MONTHS = labels(Month.values());
  private static final String DATE_NUMBER =
      "(?:(?:twenty |thirty )?(?:%s)|%s(?: (?:st|nd|rd|th))?)"
          .formatted(ORDINALS.replace(' ', '|'), NUMBER);
  private static final String YEAR =
      "(?<year> (?:two thousand(?: and)?|twenty) (?:%s|%s))?".formatted(NUMBER, ZERO + " " + UNIT);

  private static final Pattern SUBJECT =
      start(
          "(?:(?:(?:the |this )?(?:baby|infant|newborn)|she|he|it)(?: was)? |was |(?:she|he)'s )?"
              + "(?:born|delivered)"
              + "|(?<time>(?:the |her |his |baby's )?(?:(?:date and )?time of birth|birth time)"
              + "(?: is| was)?)");
  private static final Pattern DAY =
      start(
          "(?<today>today)|(?<before>(?:the )?day before yesterday)|(?<yesterday>yesterday)"
              + "|(?:on )?(?<weekday>"
              + labels(DayOfWeek.values())
              + ")|(?:on )?(?:the )?(?:(?<day>"
              + DATE_NUMBER
              + ")(?: of)? (?<month>"
              + MONTHS
              + ")|(?<month2>"
              + MONTHS
              + ")(?: the)? (?<day2>"
              + DATE_NUMBER
              + "))"
              + YEAR);
  private static final Pattern CLOCK =
      start(
          "(?<at>at )?(?:(?:a )?(?<minutes>quarter|half|%1$s)(?: minutes?)? (?<way>past|to) (?<of>%1$s)"
                  .formatted(NUMBER)
              + "|half (?<half>%s)".formatted(NUMBER)
              + "|(?<sharp>%s) o'clock".formatted(NUMBER)
              + "|(?<zero>%1$s %2$s)(?: point)? (?<then>%3$s|%2$s %2$s|hundred)(?: hours)?"
                  .formatted(ZERO, DIGIT, TWO_FIGURES)
              + "|(?<hour>%1$s)(?: (?<minute>%2$s)| point (?<point>%3$s %3$s))(?: hours)?"
                  .formatted(NUMBER, TWO_FIGURES, DIGIT)
              + "|(?<thousand>one thousand|two thousand)(?: (?<hundreds>%1$s) hundred)?(?: and)?(?: (?<rest>%1$s))?(?: hours)?"
                  .formatted(NUMBER)
              + "|(?<full>%s) hundred(?: (?<over>%1$s))?(?: hours)?".formatted(NUMBER)
              + "|(?<noon>noon|midday)|(?<midnight>midnight)"
              + "|(?<bare>%s))".formatted(NUMBER));
  private static final Pattern PART =
      start(
          "(?<this>this |in the |in the early |early )?(?<name>morning|afternoon|evening)"
              + "|(?<tonight>tonight)|(?<night>(?:at|last) night)|(?<half>[ap])\\.? ?m");

  private static final Map<String, Predicate<LocalTime>> PARTS =
      Map.of(
          "morning", time -> time.getHour() < 12,
          "afternoon", time -> time.getHour() >= 12 && time.getHour() < 19,
          "evening", time -> time.getHour() >= 16,
          "night", time -> time.getHour() < 6 || time.getHour() >= 18,
          "a", time -> time.getHour() < 12,
          "p", time -> time.getHour() >= 12);

  private static Pattern start(String any) {
    return Pattern.compile("(?:" + any + ")(?: |$)");
  }

  private static String labels(Enum<?>[] names) {
    return Arrays.stream(names)
        .map(name -> name.name().toLowerCase(Locale.ROOT))
        .collect(Collectors.joining("|"));
  }

  /**
   * Reads an utterance.
   *
   * @param words lower case, as {@link TypedText#utterance} gives them
   * @param now in the zone of the examination
   * @return empty where it is something else, or the moment cannot be
   */
  static Optional<BirthTime> of(List<String> words, ZonedDateTime now) {
    if (words.contains(TypedText.ASKS)) {
      return Optional.empty();
    }
    try {
      return new Reading(String.join(" ", TypedText.plain(words)), now).read();
    } catch (DateTimeException e) {
      // "The thirtieth of february", "at ten seventy": nothing that can be meant.
      return Optional.empty();
    }
  }

  /** One utterance while it is read. */
  private static final class Reading {
    private final ZonedDateTime now;
    private String rest;
    private LocalDate day;
    private LocalTime time;
    private String part;
    private boolean hour24;
    private boolean unclear;
    private boolean weekday;

    Reading(String text, ZonedDateTime now) {
      this.rest = text;
      this.now = now;
    }

    Optional<BirthTime> read() {
      Matcher subject = take(SUBJECT);
      if (subject == null) {
        return Optional.empty();
      }
      boolean bare = subject.group("time") != null;
      while (!rest.isEmpty()) {
        boolean more =
            day == null && takeDay()
                || time == null && takeTime(bare)
                || part == null && takePart();
        if (!more) {
          return Optional.empty();
        }
        bare = false;
      }
      return time == null ? Optional.empty() : moment();
    }

    private Matcher take(Pattern pattern) {
      Matcher found = pattern.matcher(rest);
      if (!found.lookingAt()) {
        return null;
      }
      rest = rest.substring(found.end());
      return found;
    }

    private boolean takeDay() {
      Matcher said = take(DAY);
      if (said != null) {
        day = day(said);
      }
      return said != null;
    }

    private LocalDate day(Matcher said) {
      LocalDate today = now.toLocalDate();
      if (said.group("today") != null) {
        return today;
      } else if (said.group("yesterday") != null) {
        return today.minusDays(1);
      } else if (said.group("before") != null) {
        return today.minusDays(2);
      } else if (said.group("weekday") != null) {
        weekday = true;
        DayOfWeek named = DayOfWeek.valueOf(said.group("weekday").toUpperCase(Locale.ROOT));
        return today.with(TemporalAdjusters.previousOrSame(named));
      }
      Month month = Month.valueOf(either(said, "month", "month2").toUpperCase(Locale.ROOT));
      int date = dayOfMonth(either(said, "day", "day2"));
      if (said.group("year") != null) {
        return LocalDate.of(year(said.group("year").strip()), month, date);
      }
      boolean begun = !LocalDate.of(today.getYear(), month, 1).isAfter(today);
      return LocalDate.of(begun ? today.getYear() : today.getYear() - 1, month, date);
    }

    private static String either(Matcher said, String one, String other) {
      return said.group(one) == null ? said.group(other) : said.group(one);
    }

    private static int dayOfMonth(String said) {
      List<String> words = new ArrayList<>(List.of(said.split(" ")));
      String last = words.get(words.size() - 1);
      int ordinal = List.of(ORDINALS.split(" ")).indexOf(last);
      if (ordinal < 0) {
        return number(said.replaceAll(" (st|nd|rd|th)$", ""));
      }
      int value = ordinal < 20 ? ordinal + 1 : 30;
      return words.size() == 1 ? value : number(words.get(0)) + value;
    }

    private static int year(String said) {
      return said.startsWith("two thousand")
          ? 2000 + number(said.replaceAll("^two thousand( and)? ", ""))
          : 2000 + number(said.replaceAll("^twenty ", ""));
    }

    private boolean takePart() {
      Matcher said = take(PART);
      if (said == null) {
        return false;
      }
      boolean tonight = said.group("tonight") != null;
      if (tonight || "this ".equals(said.group("this"))) {
        if (day != null) {
          return false;
        }
        day = now.toLocalDate();
      }
      unclear |= tonight || said.group("night") != null;
      String named = either(said, "name", "half");
      part = named == null ? "night" : named;
      return true;
    }

    private boolean takeTime(boolean bare) {
      Matcher said = CLOCK.matcher(rest);
      if (!said.lookingAt() || !bare && said.group("at") == null) {
        return false;
      }
      rest = rest.substring(said.end());
      time = time(said);
      return true;
    }

    /** The time of a clock; for one of twelve hours, that in the first half of the day. */
    private LocalTime time(Matcher said) {
      if (said.group("noon") != null || said.group("midnight") != null) {
        hour24 = true;
        unclear |= said.group("midnight") != null;
        return said.group("noon") != null ? LocalTime.NOON : LocalTime.MIDNIGHT;
      }
      if (said.group("of") != null) {
        int minutes = minutes(said.group("minutes"));
        boolean to = said.group("way").equals("to");
        if (minutes >= 60 || to && said.group("minutes").equals("half")) {
          throw new DateTimeException("minutes");
        }
        LocalTime hour = hour(number(said.group("of")));
        LocalTime time = to ? hour.minusMinutes(minutes) : hour.plusMinutes(minutes);
        return hour24 ? time : time.withHour(time.getHour() % 12);
      }
      if (said.group("half") != null) {
        unclear = true;
        return hour(number(said.group("half"))).withMinute(30);
      }
      if (said.group("zero") != null) {
        hour24 = true;
        String then = said.group("then");
        return LocalTime.of(number(said.group("zero")), then.equals("hundred") ? 0 : number(then));
      }
      if (said.group("thousand") != null) {
        hour24 = true;
        int thousands = said.group("thousand").startsWith("one") ? 10 : 20;
        int hundreds = said.group("hundreds") == null ? 0 : number(said.group("hundreds"));
        int rest = said.group("rest") == null ? 0 : number(said.group("rest"));
        return LocalTime.of(thousands + hundreds, rest);
      }
      if (said.group("full") != null) {
        int hour = number(said.group("full"));
        hour24 = true;
        unclear |= hour <= 12;
        return LocalTime.of(hour, said.group("over") == null ? 0 : number(said.group("over")));
      }
      String hour = said.group("hour") == null ? either(said, "sharp", "bare") : said.group("hour");
      String minute = either(said, "minute", "point");
      return hour(number(hour)).withMinute(minute == null ? 0 : number(minute));
    }

    private static int minutes(String said) {
      return switch (said) {
        case "quarter" -> 15;
        case "half" -> 30;
        default -> number(said);
      };
    }

    private LocalTime hour(int hour) {
      hour24 = hour > 12;
      return LocalTime.of(hour == 12 ? 0 : hour, 0);
    }

    private Optional<BirthTime> moment() {
      // Who says "twelve in the morning" may mean noon.
      unclear |= part != null && !hour24 && time.getHour() == 0;
      List<LocalTime> times = hour24 ? List.of(time) : List.of(time, time.plusHours(12));
      List<LocalDateTime> possible =
          times.stream()
              .filter(one -> part == null || PARTS.get(part).test(one))
              .map(one -> day == null ? latest(one) : day.atTime(one))
              .map(one -> weekday && isFuture(one) ? one.minusWeeks(1) : one)
              .filter(one -> !isFuture(one) && isRecent(one))
              .sorted(Comparator.reverseOrder())
              .toList();
      boolean doubtful = unclear || day == null || weekday || possible.size() > 1;
      return possible.stream().findFirst().map(one -> new BirthTime(one, doubtful));
    }

    private LocalDateTime latest(LocalTime time) {
      LocalDateTime today = now.toLocalDate().atTime(time);
      return isFuture(today) ? today.minusDays(1) : today;
    }

    private boolean isFuture(LocalDateTime moment) {
      return moment.atZone(now.getZone()).isAfter(now);
    }

    // Nor what the clocks left out when they went forward.
    private boolean isRecent(LocalDateTime moment) {
      ZonedDateTime there = moment.atZone(now.getZone());
      return there.toLocalDateTime().equals(moment)
          && Duration.between(there, now).compareTo(LONGEST) <= 0;
    }

    private static int number(String said) {
      List<Double> readings = NumberWords.readings(List.of(said.split(" ")));
      if (readings.isEmpty()) {
        throw new DateTimeException(said);
      }
      return readings.get(0).intValue();
    }
  }
}
