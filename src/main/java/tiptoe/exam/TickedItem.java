package tiptoe.exam;

import java.time.Instant;

/**
 * An item of the plan that was ticked off, or found not done after all.
 *
 * @param item its id
 * @param done whether it was done
 * @param note in the words of whoever ticked it off; may be null
 * @param by who did
 */
public record TickedItem(String item, boolean done, String note, Instant at, String by) {}
