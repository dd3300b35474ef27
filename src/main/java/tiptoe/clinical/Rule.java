package tiptoe.clinical;

import java.util.List;

/**
 * When a flag is raised and what it says.
 *
 * @param id unique among the rules
 * @param when the condition
 * @param level how soon
 * @param consider what to think of; null where nothing particular
 * @param advice what to do
 * @param actBy when to act, for people
 * @param asks what is asked when a fact the condition needs was not stated; null to ask nothing
 * @param steps ids of the steps it is about where it rests on no finding
 * @param insteadOf ids of the rules whose flags this one makes superfluous
 * @param source what it rests on
 */
record Rule(
    String id,
    Condition when,
    Level level,
    String consider,
    String advice,
    String actBy,
    String asks,
    List<String> steps,
    List<String> insteadOf,
    String source) {}
