package tiptoe.clinical;

import java.util.List;

/**
 * All rules, in the order of their file.
 *
 * @param flags what raises a flag
 * @param nothingToRaise abnormal findings that need no flag while a condition holds
 * @param missing what makes a step or detail necessary
 * @param plan what is planned
 */
record Rules(
    List<Rule> flags,
    List<Condition> nothingToRaise,
    List<MissingRule> missing,
    List<PlanRule> plan) {
  Rules {
    flags = List.copyOf(flags);
    nothingToRaise = List.copyOf(nothingToRaise);
    missing = List.copyOf(missing);
    plan = List.copyOf(plan);
  }

  /** The rules this project ships. */
  static Rules standard() {
    return Shipped.RULES;
  }

  private static final class Shipped {
    static final Rules RULES = RulesReader.readShipped();
  }
}
