package tiptoe.clinical;

import java.util.List;
import java.util.Optional;
import tiptoe.exam.Answer;
import tiptoe.protocol.Protocol;
import tiptoe.protocol.Step;

/**
 * The twelve signs of the New Ballard score, six of nerve and muscle and six of the body (Ballard
 * et al., J Pediatr 1991;119:417), each a step of its own.
 */
final class MaturitySigns {
  static final List<String> STEPS =
      List.of(
          "maturity-posture",
          "maturity-square-window",
          "maturity-arm-recoil",
          "maturity-popliteal-angle",
          "maturity-scarf-sign",
          "maturity-heel-to-ear",
          "maturity-skin",
          "maturity-lanugo",
          "maturity-plantar-surface",
          "maturity-breast",
          "maturity-eye-ear",
          "maturity-genitals");

  private MaturitySigns() {}

  /** The signs that were scored. */
  static List<Answer> scored(AssessedBaby baby) {
    return STEPS.stream().flatMap(step -> baby.number(step).stream()).toList();
  }

  /** The total as it was stated, else the sum where every sign was scored. */
  static Optional<Integer> total(AssessedBaby baby) {
    Optional<Answer> stated = baby.number("maturity-score");
    if (stated.isPresent()) {
      return stated.map(MaturitySigns::score);
    }
    List<Answer> scored = scored(baby);
    return scored.size() == STEPS.size()
        ? Optional.of(scored.stream().mapToInt(MaturitySigns::score).sum())
        : Optional.empty();
  }

  /** What the total rests on. */
  static List<Answer> evidence(AssessedBaby baby) {
    Optional<Answer> stated = baby.number("maturity-score");
    return stated.isPresent() ? List.of(stated.get()) : scored(baby);
  }

  /** Names of the signs that are not scored, where some are; for people. */
  static List<String> open(AssessedBaby baby) {
    List<Answer> scored = scored(baby);
    return scored.isEmpty() || baby.number("maturity-score").isPresent()
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
