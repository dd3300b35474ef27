package tiptoe.clinical;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import tiptoe.exam.Answer;

/**
 * A dimple over the sacrum. It is simple when it is one, in the midline, smaller than 5 mm, at most
 * 2.5 cm from the anus, its base is visible and there is no other mark (Am Fam Physician
 * 2014;90:297). Exactly 5 mm is not simple.
 */
final class Dimple {
  private static final double SIMPLE_BELOW_MM = 5;
  private static final double SIMPLE_TO_CM = 2.5;
  private static final Set<String> OTHER_MARKS =
      Set.of("hair-tuft", "haemangioma", "skin-tag", "sinus", "leaking");
  private static final Set<String> SKIN_MARKS = Set.of("haemangioma", "port-wine-stain");

  private Dimple() {}

  /** Everything that makes it simple was stated. */
  static ConditionResult simple(AssessedBaby baby) {
    return judged(baby, true);
  }

  /** Something that was stated makes it more than simple. */
  static ConditionResult notSimple(AssessedBaby baby) {
    return judged(baby, false);
  }

  private static ConditionResult judged(AssessedBaby baby, boolean wanted) {
    List<Answer> dimples = find(baby, "lumbosacral", Set.of("dimple"));
    List<Answer> marks = otherMarks(baby);
    for (Answer dimple : dimples) {
      boolean simple = marks.isEmpty() && stated(dimple).allMatch(is -> is.orElse(false));
      boolean more = !marks.isEmpty() || stated(dimple).anyMatch(is -> !is.orElse(true));
      if (wanted ? simple : more) {
        return ConditionResult.yes(Stream.concat(Stream.of(dimple), marks.stream()).toList());
      }
    }
    return ConditionResult.NO;
  }

  // Each of the things that make a dimple simple: whether it does; empty where it was not stated.
  // A dimple is one and in the midline unless it is said to be otherwise: that is what the word
  // means at the bedside.
  private static Stream<Optional<Boolean>> stated(Answer dimple) {
    return Stream.of(
        detail(dimple, "base-visible").map(said -> said.equals("yes")),
        number(dimple, "size").map(mm -> mm < SIMPLE_BELOW_MM),
        number(dimple, "from-anus").map(cm -> cm <= SIMPLE_TO_CM),
        Optional.of(number(dimple, "count").orElse(1.0) == 1),
        Optional.of(detail(dimple, "position").orElse("midline").equals("midline")));
  }

  private static List<Answer> otherMarks(AssessedBaby baby) {
    Stream<Answer> onSkin =
        find(baby, "skin", SKIN_MARKS).stream()
            .filter(mark -> detail(mark, "place").orElse("").matches("(.*,)?(sacrum|back)(,.*)?"));
    return Stream.of(
            find(baby, "lumbosacral", OTHER_MARKS).stream(),
            find(baby, "spine", Set.of("mass")).stream(),
            onSkin)
        .flatMap(marks -> marks)
        .toList();
  }

  private static List<Answer> find(AssessedBaby baby, String step, Set<String> values) {
    return baby.answers(step).stream()
        .filter(answer -> answer.value() != null && values.contains(answer.value()))
        .toList();
  }

  private static Optional<String> detail(Answer answer, String id) {
    return Optional.ofNullable(answer.details().get(id));
  }

  private static Optional<Double> number(Answer answer, String id) {
    return detail(answer, id).map(TermReader::numberIn).filter(number -> !number.isNaN());
  }
}
