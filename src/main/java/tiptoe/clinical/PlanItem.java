package tiptoe.clinical;

import com.fasterxml.jackson.annotation.JsonIgnore;
import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import tiptoe.exam.Handled;

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
  PlanItem with(Handled now) {
    return new PlanItem(id, what, due, from, to, reason, source, now);
  }

  /** Whether it was done, so that it is due no more. */
  @JsonIgnore
  public boolean isDone() {
    return handled != null && handled.done();
  }

  /**
   * The one item of this name, or the one whose name or words hold it.
   *
   * @throws IllegalArgumentException when there is none or more
   */
  public static PlanItem named(List<PlanItem> plan, String named) {
    List<PlanItem> meant = plan.stream().filter(item -> item.id().equals(named)).toList();
    if (meant.isEmpty()) {
      String part = named.toLowerCase(Locale.ROOT);
      meant =
          plan.stream()
              .filter(item -> !part.isBlank())
              .filter(
                  item -> (item.id() + " " + item.what()).toLowerCase(Locale.ROOT).contains(part))
              .toList();
    }
    if (meant.size() != 1) {
      String items =
          (meant.isEmpty() ? plan : meant)
              .stream().map(PlanItem::id).collect(Collectors.joining(", "));
      throw new IllegalArgumentException(
          "expected one item of its plan, found %s called %s%s"
              .formatted(
                  meant.isEmpty() ? "none" : meant.size(),
                  named,
                  items.isEmpty() ? "" : ": " + items));
    }
    return meant.get(0);
  }
}
