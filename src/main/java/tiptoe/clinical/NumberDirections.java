package tiptoe.clinical;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.DoublePredicate;
import tiptoe.exam.Answer;
import tiptoe.finding.Quantity;
import tiptoe.protocol.Measure;
import tiptoe.protocol.Protocol;

/**
 * Finds out on which side of what is expected a number lies, from the rules themselves: the number
 * is moved up and down over all it could plausibly be, and the rule that was raised asked again.
 */
final class NumberDirections {
  /** How finely a number is moved, in parts of its plausible range. */
  private static final int PARTS = 128;

  private final Protocol protocol;
  private final Rules rules;
  private final AssessedBaby baby;
  private final Set<String> raised;

  NumberDirections(Protocol protocol, Rules rules, AssessedBaby baby, Set<String> raised) {
    this.protocol = protocol;
    this.rules = rules;
    this.baby = baby;
    this.raised = raised;
  }

  /** The numbers that this rule, which was raised, rests on. */
  List<AbnormalNumber> of(Rules.FlagRule rule, List<Answer> evidence) {
    List<Answer> all = evidence.stream().filter(one -> one.quantity() != null).toList();
    List<Answer> numbers = all.stream().filter(one -> isUnusual(one, all)).toList();
    if (numbers.isEmpty()) {
      return all.stream().map(one -> abnormal(one, AbnormalNumber.Direction.ABNORMAL)).toList();
    }
    List<AbnormalNumber> found = new ArrayList<>();
    for (Answer answer : numbers) {
      direction(rule, List.of(answer)).ifPresent(one -> found.add(abnormal(answer, one)));
    }
    if (found.isEmpty() && numbers.size() > 1) {
      // Each of two low saturations alone leaves the screen failed: both are low.
      direction(rule, numbers)
          .ifPresent(one -> numbers.forEach(answer -> found.add(abnormal(answer, one))));
    }
    return found;
  }

  // 99 % in the hand is no high saturation because the foot has 95 %: neither is unusual alone.
  private boolean isUnusual(Answer number, List<Answer> all) {
    if (all.size() < 2) {
      return true;
    }
    List<Answer> without =
        baby.answers().stream().filter(one -> one.equals(number) || !all.contains(one)).toList();
    AssessedBaby alone = baby.withAnswers(without);
    return rules.flags().stream()
        .map(rule -> rule.when().of(alone))
        .filter(ConditionResult::isYes)
        .anyMatch(verdict -> verdict.evidence().contains(number));
  }

  private static AbnormalNumber abnormal(Answer answer, AbnormalNumber.Direction direction) {
    return new AbnormalNumber(answer.step(), answer.statement(), direction);
  }

  private Optional<AbnormalNumber.Direction> direction(Rules.FlagRule rule, List<Answer> numbers) {
    DoublePredicate holds = part -> rule.when().of(moved(numbers, part)).isYes();
    double down = lastThatHolds(holds, -1.0 / PARTS);
    double up = lastThatHolds(holds, 1.0 / PARTS);
    if (down > -1 && worse(rule, moved(numbers, down - 1.0 / PARTS), numbers)) {
      return Optional.of(AbnormalNumber.Direction.LOW);
    }
    if (up < 1 && worse(rule, moved(numbers, up + 1.0 / PARTS), numbers)) {
      return Optional.of(AbnormalNumber.Direction.HIGH);
    }
    if (down <= -1 && up >= 1) {
      return Optional.empty();
    }
    return Optional.of(
        down <= -1
            ? AbnormalNumber.Direction.LOW
            : up >= 1 ? AbnormalNumber.Direction.HIGH : AbnormalNumber.Direction.ABNORMAL);
  }

  private static double lastThatHolds(DoublePredicate holds, double by) {
    int steps = 0;
    while (steps < PARTS && holds.test((steps + 1) * by)) {
      steps++;
    }
    return steps * by;
  }

  private boolean worse(Rules.FlagRule rule, AssessedBaby other, List<Answer> numbers) {
    return rules.flags().stream()
        .filter(one -> one.level().compareTo(rule.level()) < 0)
        .map(one -> one.when().of(other))
        .filter(ConditionResult::isYes)
        .flatMap(verdict -> verdict.evidence().stream())
        .anyMatch(
            answer -> numbers.stream().anyMatch(number -> number.step().equals(answer.step())));
  }

  /**
   * The baby with these numbers elsewhere.
   *
   * @param part from -1, the smallest that is plausible, over 0, as it is, to 1, the largest
   */
  private AssessedBaby moved(List<Answer> numbers, double part) {
    List<Answer> answers =
        baby.answers().stream()
            .map(answer -> numbers.contains(answer) ? moved(answer, part) : answer)
            .toList();
    return baby.withAnswers(answers).withRaised(raised);
  }

  private Answer moved(Answer answer, double part) {
    Measure measure = protocol.step(answer.step()).measure();
    double now = answer.quantity().number();
    double to = part < 0 ? measure.min() : measure.max();
    double number = now + Math.abs(part) * (to - now);
    Quantity there = new Quantity(number, answer.quantity().unit());
    return new Answer(answer.finding().withQuantity(there), answer.statement());
  }
}
