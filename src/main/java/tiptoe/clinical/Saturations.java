package tiptoe.clinical;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;
import tiptoe.exam.Answer;
import tiptoe.protocol.Detail;

/** Finds the readings of the pulse-oximetry screen in a case and judges them. */
final class Saturations {
  static final String HAND = "saturation-right-hand";
  static final String FOOT = "saturation-foot";

  /** Ids of the repeats in their order; the first measurement has none. */
  private static final List<String> REPEATS = List.of("", "first", "second");

  private Saturations() {}

  /** The outcome by the configured rules; empty while only one limb was read and it is not low. */
  static Optional<SaturationScreen.Outcome> outcome(AssessedBaby baby) {
    SaturationRules rules = SaturationRules.of(baby.settings());
    List<SaturationScreen.Reading> readings = readings(baby, rules);
    return readings.isEmpty()
        ? Optional.empty()
        : Optional.of(SaturationScreen.outcome(rules, readings));
  }

  static ConditionResult verdict(AssessedBaby baby, SaturationScreen.Outcome... any) {
    Optional<SaturationScreen.Outcome> outcome = outcome(baby);
    return outcome.isPresent() && List.of(any).contains(outcome.get())
        ? ConditionResult.yes(answers(baby))
        : ConditionResult.NO;
  }

  private static List<Answer> answers(AssessedBaby baby) {
    return Stream.of(HAND, FOOT).flatMap(step -> baby.numbers(step).stream()).toList();
  }

  // Readings of the same repeat belong together; where none is named, the first of each limb do,
  // then the second, and so on. A reading without its partner counts only where it fails whatever
  // the partner is.
  private static List<SaturationScreen.Reading> readings(AssessedBaby baby, SaturationRules rules) {
    SortedMap<Integer, Double> hand = byRepeat(baby.numbers(HAND));
    SortedMap<Integer, Double> foot = byRepeat(baby.numbers(FOOT));
    SortedSet<Integer> times = new TreeSet<>(hand.keySet());
    times.addAll(foot.keySet());
    List<SaturationScreen.Reading> readings = new ArrayList<>();
    for (int time : times) {
      double one = hand.getOrDefault(time, foot.get(time));
      double other = foot.getOrDefault(time, one);
      boolean pair = hand.containsKey(time) && foot.containsKey(time);
      if (pair || one < rules.fail()) {
        readings.add(new SaturationScreen.Reading(one, other));
      }
    }
    return readings;
  }

  private static SortedMap<Integer, Double> byRepeat(List<Answer> answers) {
    SortedMap<Integer, Double> numbers = new TreeMap<>();
    int next = 0;
    for (Answer answer : answers) {
      String repeat = answer.details().get(Detail.REPEAT);
      numbers.put(repeat == null ? next++ : REPEATS.indexOf(repeat), number(answer));
    }
    return numbers;
  }

  private static double number(Answer answer) {
    return answer.quantity().number();
  }
}
