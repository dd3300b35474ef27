package tiptoe.exam;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import tiptoe.finding.Finding;
import tiptoe.finding.Quantity;
import tiptoe.protocol.Detail;
import tiptoe.protocol.Norm;
import tiptoe.protocol.Protocol;
import tiptoe.protocol.Side;
import tiptoe.protocol.Step;
import tiptoe.protocol.Value;

/**
 * A statement that stands or waits, together with those that confirm it.
 *
 * @param base the statement itself
 * @param finding all of them as one: its side is from the first that has one; of details that
 *     differ the later wins
 * @param outright whether one of them states the value itself, not only by denying another
 */
record StandingFinding(RecordedFinding base, Finding finding, boolean outright) {
  static final String SYMMETRIC = "symmetric";
  private static final String NONE = "none";

  Side side() {
    return finding.side();
  }

  String value() {
    return finding.value();
  }

  Quantity quantity() {
    return finding.quantity();
  }

  Map<String, String> details() {
    return finding.details();
  }

  List<String> denied() {
    return finding.denied();
  }

  boolean notExamined() {
    return Value.NOT_EXAMINED.equals(value());
  }

  boolean saysSymmetric() {
    return "yes".equals(details().get(SYMMETRIC));
  }

  Norm norm(Step step) {
    return step.norm(value());
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
      step.ifPresent(known -> details.putAll(merge(known, details, one.details())));
    }
    Finding first = base.statement();
    Finding merged =
        new Finding(
            first.step(),
            all.stream().map(Finding::side).filter(Objects::nonNull).findFirst().orElse(null),
            first.value(),
            first.quantity(),
            details,
            all.stream().flatMap(one -> one.denied().stream()).distinct().toList(),
            all.stream().allMatch(Finding::group),
            first.source());
    return new StandingFinding(base, merged, all.stream().anyMatch(one -> one.denied().isEmpty()));
  }

  /** The answers that the history comes to, in the order of the protocol. */
  static List<Answer> answers(Protocol protocol, List<RecordedFinding> history) {
    Map<String, List<StandingFinding>> bySteps = new LinkedHashMap<>();
    for (StandingFinding standing : of(protocol, history, Status.STANDS)) {
      bySteps.computeIfAbsent(standing.finding().step(), key -> new ArrayList<>()).add(standing);
    }
    return protocol
        .steps()
        .flatMap(
            step ->
                new StepAnswers(step, bySteps.getOrDefault(step.id(), List.of())).list().stream())
        .toList();
  }

  /** The details with those said later added to them. */
  private static Map<String, String> merge(
      Step step, Map<String, String> old, Map<String, String> later) {
    Map<String, String> merged = new TreeMap<>(old);
    later.forEach(
        (id, value) ->
            merged.merge(id, value, (was, is) -> isMany(step, id) ? union(was, is) : is));
    return merged;
  }

  /** Whether the same detail was said to be different things. */
  static boolean conflictingDetails(Step step, Map<String, String> old, Map<String, String> later) {
    return later.entrySet().stream()
        .anyMatch(
            entry -> {
              String was = old.get(entry.getKey());
              return was != null
                  && step.detail(entry.getKey()).isPresent()
                  && differ(isMany(step, entry.getKey()), was, entry.getValue());
            });
  }

  private static boolean differ(boolean many, String was, String is) {
    return many ? !was.equals(is) && was.equals(NONE) != is.equals(NONE) : !was.equals(is);
  }

  private static boolean isMany(Step step, String id) {
    return step.detail(id).map(Detail::many).orElse(false);
  }

  private static String union(String was, String is) {
    if (was.equals(NONE) || is.equals(NONE)) {
      return is;
    }
    Set<String> all = new LinkedHashSet<>(List.of(was.split(",")));
    all.addAll(Arrays.asList(is.split(",")));
    return String.join(",", all);
  }
}
