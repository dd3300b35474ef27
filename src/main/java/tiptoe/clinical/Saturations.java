package tiptoe.clinical;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import tiptoe.exam.Answer;

/** Finds the readings of the pulse-oximetry screen in a case and judges them. */
final class Saturations {
  static final String HAND = "saturation-right-hand";
  static final String FOOT = "saturation-foot";

  private Saturations() {}

  /** The outcome by the configured rules; empty while only one limb was read and it is not low. */
  static Optional<SaturationScreen.Outcome> outcome(Case subject) {
    SaturationRules rules = SaturationRules.of(subject.settings());
    List<SaturationScreen.Reading> readings = readings(subject, rules);
    return readings.isEmpty()
        ? Optional.empty()
        : Optional.of(SaturationScreen.outcome(rules, readings));
  }

  static Verdict verdict(Case subject, SaturationScreen.Outcome... any) {
    Optional<SaturationScreen.Outcome> outcome = outcome(subject);
    return outcome.isPresent() && List.of(any).contains(outcome.get())
        ? Verdict.yes(answers(subject))
        : Verdict.NO;
  }

  private static List<Answer> answers(Case subject) {
    return Stream.of(HAND, FOOT).flatMap(step -> subject.numbers(step).stream()).toList();
  }

  // The first of each limb belong together, then the second of each, and so on. A reading without
  // its partner counts only where it fails whatever the partner is.
  private static List<SaturationScreen.Reading> readings(Case subject, SaturationRules rules) {
    List<Answer> hand = subject.numbers(HAND);
    List<Answer> foot = subject.numbers(FOOT);
    List<SaturationScreen.Reading> readings = new ArrayList<>();
    int pairs = Math.min(hand.size(), foot.size());
    for (int i = 0; i < pairs; i++) {
      readings.add(new SaturationScreen.Reading(number(hand.get(i)), number(foot.get(i))));
    }
    List<Answer> alone = hand.size() > pairs ? hand : foot;
    for (Answer answer : alone.subList(pairs, alone.size())) {
      if (number(answer) < rules.fail()) {
        readings.add(new SaturationScreen.Reading(number(answer), number(answer)));
      }
    }
    return readings;
  }

  private static double number(Answer answer) {
    return answer.quantity().number();
  }
}
