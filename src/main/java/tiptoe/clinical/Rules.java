package tiptoe.clinical;

import java.util.List;
import java.util.stream.Stream;
import tiptoe.protocol.Protocol;

/**
 * All rules, in the order of their file.
 *
 * @param flags what raises a flag
 * @param nothingToRaise abnormal findings that need no flag while a condition holds
 * @param missing what makes a step or detail necessary
 * @param plan what is planned
 */
record Rules(
    List<FlagRule> flags,
    List<Condition> nothingToRaise,
    List<MissingRule> missing,
    List<PlanRule> plan) {
  /**
   * When a flag is raised and what it says.
   *
   * @param id unique among the rules
   * @param level how soon
   * @param consider what to think of; null where nothing particular
   * @param advice what to do
   * @param actBy when to act, for people
   * @param asks what is asked when a fact the condition needs was not stated; null to ask nothing
   * @param steps ids of the steps it is about where it rests on no finding
   * @param insteadOf ids of the rules whose flags this one makes superfluous
   * @param handledBy when its action is done
   * @param source what it rests on
   */
  record FlagRule(
      String id,
      Condition when,
      Level level,
      String consider,
      String advice,
      String actBy,
      String asks,
      List<String> steps,
      List<String> insteadOf,
      HandledBy handledBy,
      String source) {}

  /**
   * When a step or detail becomes necessary.
   *
   * @param missing what is then missing, with the reason
   */
  record MissingRule(MissingItem missing, Condition when) {}

  /**
   * What is planned when a condition holds.
   *
   * @param id unique in the plan
   * @param ofAGirl what is planned for a girl
   * @param due when it is due
   * @param actsOn ids of the rules whose action it is, so that their flags need no item of their
   *     own
   * @param follows ids of the rules that it is to be done for beside their own action
   * @param handledBy when it is done
   * @param source what the date rests on
   */
  record PlanRule(
      String id,
      Condition when,
      String what,
      String ofAGirl,
      Due due,
      String reason,
      List<String> actsOn,
      List<String> follows,
      HandledBy handledBy,
      String source) {}

  Rules {
    flags = List.copyOf(flags);
    nothingToRaise = List.copyOf(nothingToRaise);
    missing = List.copyOf(missing);
    plan = List.copyOf(plan);
  }

  static Rules standard() {
    return Shipped.RULES;
  }

  /** The same, and what the abnormal values of a ward ask for. */
  static Rules of(Protocol protocol) {
    Rules ours = standard();
    return protocol
        .local()
        .map(
            local ->
                new Rules(
                    Stream.concat(ours.flags.stream(), RulesReader.ofWard(protocol, local).stream())
                        .toList(),
                    ours.nothingToRaise,
                    ours.missing,
                    ours.plan))
        .orElse(ours);
  }

  private static final class Shipped {
    static final Rules RULES = RulesReader.readShipped();
  }
}
