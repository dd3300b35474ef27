package tiptoe.clinical;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import tiptoe.exam.Answer;
import tiptoe.exam.Handover;
import tiptoe.protocol.Protocol;
import tiptoe.protocol.Side;
import tiptoe.protocol.Step;
import tiptoe.protocol.Value;
import tiptoe.settings.Setting;

/**
 * What is to be done: the action of every flag that asks for one, the most pressing first; then key
 * steps that are owed; then the programme that the settings name, the soonest first.
 */
final class Plan {
  private static final List<String> PRESSING =
      List.of("now", "within 2 hours", "within 6 hours", "today");
  private static final String BEFORE_DISCHARGE = "before discharge";

  private final Protocol protocol;
  private final Rules rules;
  private final AssessedBaby baby;
  private final Handover handover;

  /**
   * The plan of one baby.
   *
   * @param baby with what was raised
   * @param handover what was set going and done of it
   */
  Plan(Protocol protocol, Rules rules, AssessedBaby baby, Handover handover) {
    this.handover = handover;
    this.protocol = protocol;
    this.rules = rules;
    this.baby = baby;
  }

  /**
   * The items in the order in which they are to be read.
   *
   * @param flags what was raised by what stands
   */
  List<PlanItem> items(List<Flag> flags) {
    List<PlanItem> programme = new ArrayList<>();
    Set<String> actedOn = new HashSet<>();
    for (Rules.PlanRule rule : rules.plan()) {
      if (rule.when().of(baby).isYes() && !rule.due().isPast(baby)) {
        programme.add(item(rule));
        actedOn.addAll(rule.actsOn());
      }
    }
    programme.sort(
        Comparator.comparing(
            item -> item.from() == null ? item.to() : item.from(),
            Comparator.nullsLast(String::compareTo)));
    List<PlanItem> items = new ArrayList<>();
    flags.stream()
        .filter(flag -> flag.level() != Level.NOTE && !actedOn.contains(flag.rule()))
        .sorted(Comparator.comparing(Flag::level).thenComparing(Plan::haste))
        .forEach(flag -> items.add(item(flag)));
    protocol.steps().forEach(step -> owed(step).ifPresent(items::add));
    items.addAll(programme);
    items.replaceAll(
        item ->
            handledBy(item.id()).of(item.id(), handover, protocol).map(item::with).orElse(item));
    return items;
  }

  private HandledBy handledBy(String id) {
    Stream<HandledBy> ofFlags =
        rules.flags().stream().filter(rule -> rule.id().equals(id)).map(Rules.FlagRule::handledBy);
    Stream<HandledBy> ofPlan =
        rules.plan().stream().filter(rule -> rule.id().equals(id)).map(Rules.PlanRule::handledBy);
    return Stream.concat(ofFlags, ofPlan).findFirst().orElse(HandledBy.NOTHING);
  }

  private PlanItem item(Rules.PlanRule rule) {
    return new PlanItem(
        rule.id(),
        baby.sex().equals(Optional.of("girl")) ? rule.ofAGirl() : rule.what(),
        rule.due().text(),
        rule.due().from(baby),
        rule.due().to(baby),
        rule.reason(),
        rule.source(),
        null);
  }

  private static int haste(Flag flag) {
    int place = PRESSING.indexOf(flag.when());
    return place < 0 ? PRESSING.size() : place;
  }

  private PlanItem item(Flag flag) {
    String consider = "consider " + flag.consider() + "; ";
    String what =
        flag.consider() == null ? flag.advice() : flag.advice().substring(consider.length());
    String reason =
        flag.consider() == null
            ? flag.steps().stream()
                .map(id -> protocol.step(id).label())
                .collect(Collectors.joining(", "))
            : flag.consider();
    boolean onTheDay = flag.when().equals("now") || flag.when().equals("today");
    String today =
        baby.examinedAt().map(at -> at.toLocalDate()).map(LocalDate::toString).orElse(null);
    Optional<Due> due = Due.parsed(flag.when());
    return new PlanItem(
        flag.rule(),
        what,
        flag.when(),
        onTheDay ? today : due.map(d -> d.from(baby)).orElse(null),
        onTheDay ? today : due.map(d -> d.to(baby)).orElse(null),
        reason,
        flag.source(),
        null);
  }

  // A key step that was put off is to be done, not done.
  private Optional<PlanItem> owed(Step step) {
    List<Answer> deferred =
        baby.answers(step.id()).stream()
            .filter(answer -> Value.NOT_EXAMINED.equals(answer.value()))
            .toList();
    if (!step.key() || deferred.isEmpty() || !step.appliesTo(baby.sex().orElse(null))) {
      return Optional.empty();
    }
    String sides =
        deferred.stream()
            .map(Answer::side)
            .filter(Objects::nonNull)
            .distinct()
            .sorted()
            .map(Side::id)
            .collect(Collectors.joining(" and "));
    String reason =
        deferred.stream()
            .map(answer -> answer.details().getOrDefault("reason", ""))
            .filter(said -> !said.isEmpty())
            .distinct()
            .collect(Collectors.joining(", "));
    Due within72Hours = Due.parse("by 72 hours of age");
    boolean uk = baby.settings().is(Setting.HIP_ULTRASOUND, "uk");
    boolean dated = uk && !within72Hours.isPast(baby);
    return Optional.of(
        new PlanItem(
            "owed-" + step.id(),
            "examine " + step.label() + (sides.isEmpty() ? "" : ", " + sides),
            dated ? within72Hours.text() : BEFORE_DISCHARGE,
            null,
            dated ? within72Hours.to(baby) : null,
            "not examined" + (reason.isEmpty() ? "" : ": " + reason),
            uk
                ? "NHS England, NIPE screening programme handbook, 2024: within 72 hours of birth"
                : "common practice",
            null));
  }
}
