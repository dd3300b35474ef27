package tiptoe.clinical;

/**
 * What is planned when a condition holds.
 *
 * @param id unique in the plan
 * @param when the condition
 * @param what for people
 * @param due when it is due
 * @param reason why
 * @param source what the date rests on
 */
record PlanRule(String id, Condition when, String what, Due due, String reason, String source) {}
