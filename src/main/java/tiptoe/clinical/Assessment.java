package tiptoe.clinical;

import java.util.List;
import tiptoe.protocol.Caution;

/**
 * Everything that follows from a set of findings.
 *
 * @param flags the most pressing first, then in the order of the rules
 * @param sizes weight, length and head circumference with their centiles
 * @param results screens and classes
 * @param plan what to do later, the soonest first
 * @param needs what must be stated about the baby before some rules can judge
 * @param missing steps and details that the findings make necessary
 * @param ruleSets the configured rules where sources differ, for people
 * @param caution what the tool is and is not
 */
public record Assessment(
    List<Flag> flags,
    List<Size> sizes,
    List<Result> results,
    List<PlanItem> plan,
    List<Need> needs,
    List<MissingItem> missing,
    List<String> ruleSets,
    String caution) {
  public Assessment {
    flags = List.copyOf(flags);
    sizes = List.copyOf(sizes);
    results = List.copyOf(results);
    plan = List.copyOf(plan);
    needs = List.copyOf(needs);
    missing = List.copyOf(missing);
    ruleSets = List.copyOf(ruleSets);
  }

  Assessment(
      List<Flag> flags,
      List<Size> sizes,
      List<Result> results,
      List<PlanItem> plan,
      List<Need> needs,
      List<MissingItem> missing,
      List<String> ruleSets) {
    this(flags, sizes, results, plan, needs, missing, ruleSets, Caution.TEXT);
  }

  /** The result with this id; null where it could not be computed. */
  public Result result(String id) {
    return results.stream().filter(result -> result.id().equals(id)).findFirst().orElse(null);
  }
}
