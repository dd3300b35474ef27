package tiptoe.clinical;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import tiptoe.exam.Answer;
import tiptoe.protocol.Protocol;

/**
 * Raises what readings that are not settled would raise. Which of them hold is not known, so each
 * is tried beside what stands, in place of what stands where it says otherwise, and all of them
 * together. What stands keeps every flag of its own.
 */
final class UnsettledFlags {
  private final Protocol protocol;
  private final Rules rules;

  UnsettledFlags(Protocol protocol, Rules rules) {
    this.protocol = protocol;
    this.rules = rules;
  }

  /**
   * The flags of what stands, and behind those of each level the provisional ones.
   *
   * @param settled what is raised without the unsettled readings
   */
  List<Flag> beside(List<Flag> settled, AssessedBaby standing, List<Answer> unsettled) {
    if (unsettled.isEmpty()) {
      return settled;
    }
    Map<String, Flag> provisional = new LinkedHashMap<>();
    for (List<Answer> reading : readings(standing.answers(), unsettled)) {
      for (Flag flag : new Flags(protocol, rules, standing.withAnswers(reading)).flags()) {
        provisional.putIfAbsent(key(flag), flag.asProvisional());
      }
    }
    settled.forEach(flag -> provisional.remove(key(flag)));
    List<Flag> all = Stream.concat(settled.stream(), provisional.values().stream()).toList();
    Set<String> superfluous = superfluous(all);
    return all.stream()
        .filter(flag -> !flag.provisional() || !superfluous.contains(flag.rule()))
        .sorted(Comparator.comparing(Flag::level).thenComparing(Flag::provisional))
        .toList();
  }

  /** The numbers that flags of unsettled readings rest on, where those hold. */
  List<AbnormalNumber> abnormalNumbers(AssessedBaby standing, List<Answer> unsettled) {
    return unsettled.stream()
        .filter(one -> one.quantity() != null)
        .flatMap(
            one ->
                new Flags(
                        protocol,
                        rules,
                        standing.withAnswers(inPlace(standing.answers(), List.of(one))))
                    .abnormalNumbers().stream()
                        .filter(number -> number.statement() == one.statement()))
        .toList();
  }

  // The general note is raised for each step of its own.
  private static String key(Flag flag) {
    return flag.rule().equals(Flags.GENERAL) ? flag.rule() + flag.steps() : flag.rule();
  }

  private static List<List<Answer>> readings(List<Answer> standing, List<Answer> unsettled) {
    List<List<Answer>> readings = new ArrayList<>();
    readings.add(Stream.concat(standing.stream(), unsettled.stream()).toList());
    readings.add(inPlace(standing, unsettled));
    unsettled.forEach(one -> readings.add(inPlace(standing, List.of(one))));
    return readings;
  }

  private static List<Answer> inPlace(List<Answer> standing, List<Answer> unsettled) {
    Stream<Answer> kept =
        standing.stream()
            .filter(
                answer ->
                    unsettled.stream()
                        .noneMatch(
                            other ->
                                other.step().equals(answer.step())
                                    && other.side() == answer.side()));
    return Stream.concat(kept, unsettled.stream()).toList();
  }

  private Set<String> superfluous(List<Flag> flags) {
    Set<String> raised = flags.stream().map(Flag::rule).collect(Collectors.toSet());
    return rules.flags().stream()
        .filter(rule -> raised.contains(rule.id()))
        .flatMap(rule -> rule.insteadOf().stream())
        .collect(Collectors.toSet());
  }
}
