package tiptoe.exam;

import com.fasterxml.jackson.annotation.JsonInclude;

/**
 * What became of an item of the plan.
 *
 * @param done whether it is done; else it was only set going and stays due
 * @param how for people: {@code referral to cardiology: made}
 * @param at when that was said, ISO 8601 in UTC; null where it is not known
 * @param by who said it; null where nobody was named
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record Handled(boolean done, String how, String at, String by) {}
