package tiptoe.clinical;

import com.fasterxml.jackson.annotation.JsonIgnore;
import com.fasterxml.jackson.annotation.JsonInclude;

/**
 * Something to be done later.
 *
 * @param id unique in the plan
 * @param what for people
 * @param due when, in words: {@code at 2 weeks of age}
 * @param from the first day, or the moment where hours count: ISO 8601, such as {@code 2026-12-09}
 *     or {@code 2026-11-25T11:30:00+01:00}; null where there is none or birth is not known
 * @param to the last day or moment, in the same form; null where there is none
 * @param reason why
 * @param source what the date rests on
 * @param handled what became of it; null where nothing was said
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record PlanItem(
    String id,
    String what,
    String due,
    String from,
    String to,
    String reason,
    String source,
    Handled handled) {
  /** The same with what became of it. */
  PlanItem with(Handled now) {
    return new PlanItem(id, what, due, from, to, reason, source, now);
  }

  /** Whether it was done, so that it is due no more. */
  @JsonIgnore
  public boolean isDone() {
    return handled != null && handled.done();
  }
}
