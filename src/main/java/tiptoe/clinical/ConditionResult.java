package tiptoe.clinical;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import tiptoe.exam.Answer;

/**
 * Whether a condition holds: yes, no, or not to be told before something is stated.
 *
 * @param evidence for a yes: the answers it rests on, which may be none
 * @param needs for unknown: ids of the facts that must be stated
 */
record ConditionResult(Truth answer, List<Answer> evidence, Set<String> needs) {
  enum Truth {
    YES,
    NO,
    UNKNOWN
  }

  static final ConditionResult NO = new ConditionResult(Truth.NO, List.of(), Set.of());

  ConditionResult {
    evidence = List.copyOf(evidence);
  }

  static ConditionResult yes(List<Answer> evidence) {
    return new ConditionResult(Truth.YES, evidence, Set.of());
  }

  static ConditionResult unknown(String fact) {
    return unknown(Set.of(fact));
  }

  static ConditionResult unknown(Set<String> facts) {
    return new ConditionResult(Truth.UNKNOWN, List.of(), facts);
  }

  /** Yes where there is evidence, else no. */
  static ConditionResult found(List<Answer> evidence) {
    return evidence.isEmpty() ? NO : yes(evidence);
  }

  static ConditionResult of(boolean holds) {
    return of(holds, List.of());
  }

  static ConditionResult of(boolean holds, List<Answer> evidence) {
    return holds ? yes(evidence) : NO;
  }

  boolean isYes() {
    return answer == Truth.YES;
  }

  boolean isUnknown() {
    return answer == Truth.UNKNOWN;
  }

  /** A yes rests on nothing: it is something that was not found. */
  ConditionResult negated() {
    return switch (answer) {
      case YES -> NO;
      case NO -> yes(List.of());
      case UNKNOWN -> this;
    };
  }

  /** Yes when at least {@code least} of the verdicts are; then it rests on all that are. */
  static ConditionResult atLeast(int least, List<ConditionResult> verdicts) {
    List<ConditionResult> yes = verdicts.stream().filter(ConditionResult::isYes).toList();
    List<ConditionResult> unknown = verdicts.stream().filter(ConditionResult::isUnknown).toList();
    if (yes.size() >= least) {
      return yes(yes.stream().flatMap(one -> one.evidence.stream()).distinct().toList());
    }
    if (yes.size() + unknown.size() < least) {
      return NO;
    }
    Set<String> needs = new LinkedHashSet<>();
    unknown.forEach(verdict -> needs.addAll(verdict.needs));
    return unknown(needs);
  }
}
