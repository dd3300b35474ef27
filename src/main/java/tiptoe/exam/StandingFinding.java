package tiptoe.exam;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import tiptoe.finding.Finding;
import tiptoe.finding.Quantity;
import tiptoe.protocol.Norm;
import tiptoe.protocol.Protocol;
import tiptoe.protocol.Side;
import tiptoe.protocol.Step;
import tiptoe.protocol.Value;

/**
 * A statement that stands or waits, together with those that confirm it.
 *
 * @param base the statement itself
 * @param side the side, from the first of them that has one
 * @param details merged; what was said later wins
 * @param denied merged
 * @param group whether all of them were said for the region only
 * @param outright whether one of them states the value itself, not only by denying another
 */
record StandingFinding(
    RecordedFinding base,
    Side side,
    Map<String, String> details,
    List<String> denied,
    boolean group,
    boolean outright) {

  static final String SYMMETRIC = "symmetric";

  String step() {
    return base.statement().step();
  }

  String value() {
    return base.statement().value();
  }

  Quantity quantity() {
    return base.statement().quantity();
  }

  /** As one finding. */
  Finding asFinding() {
    return new Finding(
        step(), side, value(), quantity(), details, denied, group, base.statement().source());
  }

  boolean notExamined() {
    return Value.NOT_EXAMINED.equals(value());
  }

  boolean saysSymmetric() {
    return "yes".equals(details.get(SYMMETRIC));
  }

  Norm norm(Step step) {
    return step.value(String.valueOf(value())).map(Value::norm).orElse(Norm.NEUTRAL);
  }

  /** A normal value that was stored because something abnormal was denied. */
  boolean onlyDenies(Step step) {
    return !outright && norm(step) == Norm.NORMAL;
  }

  /** All with this status, in the order they were made. */
  static List<StandingFinding> of(Protocol protocol, List<RecordedFinding> history, Status status) {
    Map<Integer, List<RecordedFinding>> confirming = new LinkedHashMap<>();
    for (RecordedFinding said : history) {
      if (said.status() == Status.CONFIRMS) {
        for (int base : said.of()) {
          confirming.computeIfAbsent(base, key -> new ArrayList<>()).add(said);
        }
      }
    }
    return history.stream()
        .filter(said -> said.status() == status)
        .map(said -> merge(protocol, said, confirming.getOrDefault(said.number(), List.of())))
        .toList();
  }

  private static StandingFinding merge(
      Protocol protocol, RecordedFinding base, List<RecordedFinding> confirming) {
    List<Finding> all = new ArrayList<>(List.of(base.statement()));
    confirming.forEach(said -> all.add(said.statement()));
    Optional<Step> step = protocol.find(base.statement().step());
    Map<String, String> details = new TreeMap<>();
    for (Finding one : all) {
      step.ifPresent(known -> details.putAll(Details.merge(known, details, one.details())));
    }
    return new StandingFinding(
        base,
        all.stream().map(Finding::side).filter(side -> side != null).findFirst().orElse(null),
        details,
        all.stream().flatMap(one -> one.denied().stream()).distinct().toList(),
        all.stream().allMatch(Finding::group),
        all.stream().anyMatch(one -> one.denied().isEmpty()));
  }

  /** The answers that the history comes to, in the order of the protocol. */
  static List<Answer> answers(Protocol protocol, List<RecordedFinding> history) {
    Map<String, List<StandingFinding>> bySteps = new LinkedHashMap<>();
    for (StandingFinding standing : of(protocol, history, Status.STANDS)) {
      bySteps.computeIfAbsent(standing.step(), key -> new ArrayList<>()).add(standing);
    }
    return protocol
        .steps()
        .flatMap(
            step ->
                new StepAnswers(step, bySteps.getOrDefault(step.id(), List.of())).list().stream())
        .toList();
  }
}
