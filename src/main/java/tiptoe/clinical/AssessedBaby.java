package tiptoe.clinical;

import java.time.DateTimeException;
import java.time.Duration;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.time.ZonedDateTime;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import tiptoe.exam.Answer;
import tiptoe.exam.Baby;
import tiptoe.exam.Gestation;
import tiptoe.protocol.Detail;
import tiptoe.settings.Settings;

/** One baby with the findings that stand, as the rules look at it. */
final class AssessedBaby {
  private static final Set<String> SEXES = Set.of("girl", "boy", "undetermined");
  private static final double SECONDS_PER_HOUR = 3600;
  private static final double OLDEST_HOURS = 24 * 366;

  private final Baby baby;
  private final List<Answer> answers;
  private final Settings settings;
  private final ZonedDateTime examinedAt;
  private final Set<String> raised;
  private final Map<String, String> unreadable = new LinkedHashMap<>();
  private final Optional<String> sex;
  private final Optional<Gestation> gestation;
  private final Optional<ZonedDateTime> bornAt;
  private final Optional<Double> age;
  private final Optional<Double> birthWeight;

  /**
   * A case in which no rule has been raised yet.
   *
   * @param examinedAt null where it is not known
   */
  AssessedBaby(Baby baby, List<Answer> answers, Settings settings, ZonedDateTime examinedAt) {
    this(baby, answers, settings, examinedAt, Set.of());
  }

  private AssessedBaby(
      Baby baby,
      List<Answer> answers,
      Settings settings,
      ZonedDateTime examinedAt,
      Set<String> raised) {
    this.baby = baby;
    this.answers = List.copyOf(answers);
    this.settings = settings;
    this.examinedAt = examinedAt;
    this.raised = raised;
    this.sex = read("sex", "girl, boy or undetermined", AssessedBaby::sex);
    this.gestation = read("gestation", "gestation such as 39+4", Gestation::parse);
    this.birthWeight = read("birth-weight", "a weight in g above 0", AssessedBaby::aboveZero);
    Optional<Double> stated = read("age", "an age in hours, a year at most", AssessedBaby::age);
    Optional<ZonedDateTime> birth =
        read("born-at", "a date and time no later than the examination", this::moment);
    this.age = stated.or(() -> birth.flatMap(this::hoursSince));
    this.bornAt = birth.or(() -> stated.flatMap(this::before));
  }

  /** The same case with the rules that were raised. */
  AssessedBaby withRaised(Set<String> rules) {
    return new AssessedBaby(baby, answers, settings, examinedAt, Set.copyOf(rules));
  }

  boolean isRaised(String rule) {
    return raised.contains(rule);
  }

  Baby baby() {
    return baby;
  }

  Settings settings() {
    return settings;
  }

  /** {@code girl}, {@code boy} or {@code undetermined}. */
  Optional<String> sex() {
    return sex;
  }

  Optional<Gestation> gestation() {
    return gestation;
  }

  /** Age at the examination in hours, stated or counted from birth. */
  Optional<Double> age() {
    return age;
  }

  /** The moment of birth, stated or counted back from the examination. */
  Optional<ZonedDateTime> bornAt() {
    return bornAt;
  }

  Optional<ZonedDateTime> examinedAt() {
    return Optional.ofNullable(examinedAt);
  }

  /** Birth weight in g. */
  Optional<Double> birthWeight() {
    return birthWeight;
  }

  /** Facts that were stated in a way that cannot be read: what was expected and found, by id. */
  Map<String, String> unreadable() {
    return unreadable;
  }

  /** What stands for a step, be it that it was not examined. */
  List<Answer> answers(String step) {
    return answers.stream().filter(answer -> answer.step().equals(step)).toList();
  }

  /** The numbers stated for a step, the oldest first; repeats behind what they repeat. */
  List<Answer> numbers(String step) {
    return answers(step).stream()
        .filter(answer -> answer.quantity() != null)
        .sorted(Comparator.comparing(AssessedBaby::repeat).thenComparingInt(Answer::statement))
        .toList();
  }

  // "", "first", "second" sort as they follow each other.
  private static String repeat(Answer answer) {
    return answer.details().getOrDefault(Detail.REPEAT, "");
  }

  /** The number that stands for a step: the last one stated. */
  Optional<Answer> number(String step) {
    List<Answer> all = numbers(step);
    return all.isEmpty() ? Optional.empty() : Optional.of(all.get(all.size() - 1));
  }

  private <T> Optional<T> read(String fact, String expected, Function<String, T> reader) {
    Optional<String> stated = baby.fact(fact);
    try {
      return stated.map(reader);
    } catch (IllegalArgumentException | DateTimeException e) {
      unreadable.put(fact, "expected " + expected + ", found " + stated.orElseThrow());
      return Optional.empty();
    }
  }

  private static String sex(String text) {
    return checked(text, SEXES.contains(text));
  }

  private static Double aboveZero(String text) {
    Double number = Double.valueOf(text);
    return checked(number, number > 0 && Double.isFinite(number));
  }

  private static Double age(String text) {
    Double hours = Double.valueOf(text);
    return checked(hours, hours >= 0 && hours <= OLDEST_HOURS);
  }

  // A time without a zone is in the zone of the examination: both are read off the same clock.
  private ZonedDateTime moment(String text) {
    if (text.matches(".*(Z|[+-]\\d\\d:\\d\\d)")) {
      ZonedDateTime moment = OffsetDateTime.parse(text).toZonedDateTime();
      return checked(
          examinedAt == null ? moment : moment.withZoneSameInstant(examinedAt.getZone()),
          examinedAt == null || !moment.isAfter(examinedAt));
    }
    LocalDateTime local = LocalDateTime.parse(text);
    ZonedDateTime moment =
        local.atZone(examinedAt == null ? java.time.ZoneOffset.UTC : examinedAt.getZone());
    return checked(moment, examinedAt == null || !moment.isAfter(examinedAt));
  }

  private static <T> T checked(T value, boolean sound) {
    if (!sound) {
      throw new IllegalArgumentException("not sound");
    }
    return value;
  }

  private Optional<Double> hoursSince(ZonedDateTime birth) {
    return examinedAt().map(now -> Duration.between(birth, now).toSeconds() / SECONDS_PER_HOUR);
  }

  private Optional<ZonedDateTime> before(double hours) {
    return examinedAt().map(now -> now.minusSeconds(Math.round(hours * SECONDS_PER_HOUR)));
  }
}
