package tiptoe.clinical;

/**
 * When a step or detail becomes necessary.
 *
 * @param missing what is then missing, with the reason
 * @param when the condition
 */
record MissingRule(MissingItem missing, Condition when) {}
