package tiptoe.clinical;

import com.fasterxml.jackson.annotation.JsonInclude;

/**
 * A step or a detail that the findings so far make necessary.
 *
 * @param step id of the step
 * @param detail id of the detail of that step; null where the step itself is missing
 * @param reason why, for people
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record MissingItem(String step, String detail, String reason) {}
