package tiptoe.clinical;

import java.time.Duration;
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
import tiptoe.exam.StatedAge;
import tiptoe.protocol.Detail;
import tiptoe.protocol.Fact;
import tiptoe.protocol.Gestation;
import tiptoe.protocol.Protocol;
import tiptoe.settings.Settings;

/** One baby with the findings that stand, as the rules look at it. */
final class AssessedBaby {
  private static final double SECONDS_PER_HOUR = 3600;

  private final Protocol protocol;
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
  private final boolean atOdds;

  /**
   * A baby.
   *
   * @param examinedAt null where it is not known
   * @param raised ids of the rules that were raised so far
   */
  AssessedBaby(
      Protocol protocol,
      Baby baby,
      List<Answer> answers,
      Settings settings,
      ZonedDateTime examinedAt,
      Set<String> raised) {
    this.protocol = protocol;
    this.baby = baby;
    this.answers = List.copyOf(answers);
    this.settings = settings;
    this.examinedAt = examinedAt;
    this.raised = raised;
    baby.facts()
        .forEach(
            (id, value) -> protocol.problem(id, value).ifPresent(text -> unreadable.put(id, text)));
    this.sex = read("sex", Function.identity());
    this.gestation = read("gestation", Gestation::parse);
    this.birthWeight = read("birth-weight", Double::valueOf);
    Optional<Double> stated = read("age", Double::valueOf);
    Optional<ZonedDateTime> birth = read("born-at", this::moment).filter(this::fits);
    Optional<Double> counted = birth.flatMap(this::hoursSince);
    this.age = stated.or(() -> counted);
    this.atOdds =
        stated.isPresent() && counted.isPresent() && !StatedAge.fits(stated.get(), counted.get());
    this.bornAt = birth.or(() -> stated.flatMap(this::before));
  }

  /** The same baby with the rules that were raised. */
  AssessedBaby withRaised(Set<String> rules) {
    return new AssessedBaby(protocol, baby, answers, settings, examinedAt, Set.copyOf(rules));
  }

  /** The same baby with other findings, of which no rule has been raised yet. */
  AssessedBaby withAnswers(List<Answer> others) {
    return new AssessedBaby(protocol, baby, others, settings, examinedAt, Set.of());
  }

  /** Everything that was found, in the order it was given. */
  List<Answer> answers() {
    return answers;
  }

  boolean isRaised(String rule) {
    return raised.contains(rule);
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

  /** Age in hours at which something was found: as it was said of that, else at the examination. */
  Optional<Double> age(Answer answer) {
    double said = TermReader.numberIn(answer.details().getOrDefault("age", ""));
    return Double.isNaN(said) ? age : Optional.of(said);
  }

  /** Whether the stated age cannot be what is counted from the stated moment of birth. */
  boolean ageIsAtOdds() {
    return atOdds;
  }

  /** The stated moment of birth; empty where it is at odds with the age. */
  Optional<ZonedDateTime> timeOfBirth() {
    return fact("born-at").isPresent() && !atOdds ? bornAt : Optional.empty();
  }

  /** The moment of birth, stated or counted back from the examination. */
  Optional<ZonedDateTime> bornAt() {
    return bornAt;
  }

  Optional<ZonedDateTime> examinedAt() {
    return Optional.ofNullable(examinedAt);
  }

  /** What was stated of a fact and can be read. */
  Optional<String> fact(String id) {
    return read(id, Function.identity());
  }

  /** The number that was stated of a fact; the age also as counted from birth. */
  Optional<Double> numberOf(String fact) {
    return fact.equals("age") ? age : read(fact, Double::valueOf);
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
        .sorted(Comparator.comparingInt(this::repeat).thenComparingInt(Answer::statement))
        .toList();
  }

  // Where it stands among the repeats of its step; the first measurement, which is none, first.
  private int repeat(Answer answer) {
    String said = answer.details().getOrDefault(Detail.REPEAT, "");
    return protocol
        .step(answer.step())
        .detail(Detail.REPEAT)
        .map(detail -> detail.values().indexOf(said))
        .orElse(-1);
  }

  /** The number that stands for a step: the last one stated. */
  Optional<Answer> number(String step) {
    List<Answer> all = numbers(step);
    return all.isEmpty() ? Optional.empty() : Optional.of(all.get(all.size() - 1));
  }

  private <T> Optional<T> read(String fact, Function<String, T> reader) {
    return unreadable.containsKey(fact) ? Optional.empty() : baby.fact(fact).map(reader);
  }

  // A time without a zone is in the zone of the examination: both are read off the same clock.
  private ZonedDateTime moment(String text) {
    return Fact.moment(text, examinedAt == null ? null : examinedAt.getZone());
  }

  // A birth behind the examination, or too long before it, is no birth that dates count from.
  private boolean fits(ZonedDateTime birth) {
    Optional<Double> hours = hoursSince(birth);
    Optional<String> problem =
        hours.orElse(0.0) < 0
            ? Optional.of(
                "expected a time no later than the examination for born-at, found "
                    + baby.fact("born-at").orElseThrow())
            : hours.flatMap(n -> protocol.problem("age", Long.toString(Math.round(n))));
    problem.ifPresent(text -> unreadable.put("born-at", text));
    return problem.isEmpty();
  }

  private Optional<Double> hoursSince(ZonedDateTime birth) {
    return examinedAt().map(now -> Duration.between(birth, now).toSeconds() / SECONDS_PER_HOUR);
  }

  private Optional<ZonedDateTime> before(double hours) {
    return examinedAt().map(now -> now.minusSeconds(Math.round(hours * SECONDS_PER_HOUR)));
  }
}
