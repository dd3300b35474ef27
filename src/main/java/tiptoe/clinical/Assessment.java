package tiptoe.clinical;

import java.util.List;
import java.util.Optional;
import tiptoe.exam.Answer;
import tiptoe.protocol.Caution;

/**
 * Everything that follows from a set of findings.
 *
 * @param flags the most pressing first, then in the order of the rules
 * @param abnormalNumbers the numbers that flags rest on, standing or not settled
 * @param sizes weight, length and head circumference with their centiles
 * @param results screens and classes
 * @param plan what to do later, the soonest first
 * @param programme what the check comes to for eyes, heart, hips and testes
 * @param needs what must be stated about the baby before some rules can judge
 * @param missing steps and details that the findings make necessary
 * @param ruleSets the configured rules where sources differ, for people
 * @param caution what the tool is and is not
 */
public record Assessment(
    List<Flag> flags,
    List<AbnormalNumber> abnormalNumbers,
    List<Size> sizes,
    List<Result> results,
    List<PlanItem> plan,
    List<ProgrammeResult> programme,
    List<Need> needs,
    List<MissingItem> missing,
    List<String> ruleSets,
    String caution) {
  public Assessment {
    flags = List.copyOf(flags);
    abnormalNumbers = List.copyOf(abnormalNumbers);
    sizes = List.copyOf(sizes);
    results = List.copyOf(results);
    plan = List.copyOf(plan);
    programme = List.copyOf(programme);
    needs = List.copyOf(needs);
    missing = List.copyOf(missing);
    ruleSets = List.copyOf(ruleSets);
  }

  Assessment(
      List<Flag> flags,
      List<AbnormalNumber> abnormalNumbers,
      List<Size> sizes,
      List<Result> results,
      List<PlanItem> plan,
      List<ProgrammeResult> programme,
      List<Need> needs,
      List<MissingItem> missing,
      List<String> ruleSets) {
    this(
        flags,
        abnormalNumbers,
        sizes,
        results,
        plan,
        programme,
        needs,
        missing,
        ruleSets,
        Caution.TEXT);
  }

  /** How the number of an answer differs from what is expected; empty where no flag rests on it. */
  public Optional<AbnormalNumber> abnormal(Answer answer) {
    return abnormalNumbers.stream()
        .filter(one -> answer.quantity() != null && one.step().equals(answer.step()))
        .filter(one -> one.statement() == answer.statement())
        .findFirst();
  }

  /** The result with this id; null where it could not be computed. */
  public Result result(String id) {
    return results.stream().filter(result -> result.id().equals(id)).findFirst().orElse(null);
  }
}
