package tiptoe.clinical;

import java.util.List;
import java.util.Optional;
import tiptoe.exam.Answer;
import tiptoe.protocol.Gestation;
import tiptoe.protocol.Protocol;
import tiptoe.protocol.Step;

/**
 * Gestation from the New Ballard score (Ballard et al., J Pediatr 1991;119:417): twelve signs, six
 * of nerve and muscle and six of the body, each a step of its own.
 */
final class Maturity {
  static final String SOURCE = "New Ballard score, J Pediatr 1991;119:417";
  private static final int FAR_APART_DAYS = 14;
  private static final String TOTAL = "maturity-score";

  static final List<String> STEPS =
      Protocol.standard()
          .steps()
          .map(Step::id)
          .filter(id -> id.startsWith("maturity-") && !id.equals(TOTAL))
          .toList();

  private Maturity() {}

  /** Completed weeks for a total score from -10 to 50. */
  static int weeks(int score) {
    return Math.floorDiv(120 + 2 * score, 5);
  }

  /** The score of which a gestation in completed weeks is the middle. */
  static int expected(Gestation stated) {
    return Math.round((5 * stated.weeks() - 120) / 2f);
  }

  /** Whether score and stated gestation differ, where there is a score. */
  static ConditionResult differs(AssessedBaby baby) {
    return total(baby)
        .map(
            score ->
                baby.gestation()
                    .map(stated -> ConditionResult.of(differs(score, stated), evidence(baby)))
                    .orElse(ConditionResult.unknown("gestation")))
        .orElse(ConditionResult.NO);
  }

  /** Whether score and stated gestation are more than 2 weeks apart. */
  static boolean differs(int score, Gestation stated) {
    return Math.abs(7 * weeks(score) - stated.totalDays()) > FAR_APART_DAYS;
  }

  static List<Answer> scored(AssessedBaby baby) {
    return STEPS.stream().flatMap(step -> baby.number(step).stream()).toList();
  }

  /** The total as it was stated, else the sum where every sign was scored. */
  static Optional<Integer> total(AssessedBaby baby) {
    Optional<Answer> stated = baby.number(TOTAL);
    if (stated.isPresent()) {
      return stated.map(Maturity::score);
    }
    List<Answer> scored = scored(baby);
    return scored.size() == STEPS.size()
        ? Optional.of(scored.stream().mapToInt(Maturity::score).sum())
        : Optional.empty();
  }

  static List<Answer> evidence(AssessedBaby baby) {
    Optional<Answer> stated = baby.number(TOTAL);
    return stated.isPresent() ? List.of(stated.get()) : scored(baby);
  }

  /** Names of the signs that are not scored, where some are; for people. */
  static List<String> open(AssessedBaby baby) {
    List<Answer> scored = scored(baby);
    return scored.isEmpty() || baby.number(TOTAL).isPresent()
        ? List.of()
        : STEPS.stream()
            .filter(step -> baby.number(step).isEmpty())
            .map(step -> Protocol.standard().step(step))
            .map(Step::label)
            .toList();
  }

  private static int score(Answer answer) {
    return (int) Math.round(answer.quantity().number());
  }
}
