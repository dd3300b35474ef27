package tiptoe.finding;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonValue;
import java.util.Locale;

/**
 * Something the tool must be told before a finding can stand, or to complete it.
 *
 * @param kind what is missing
 * @param detail id of the detail asked for; null unless the kind is {@code DETAIL}
 * @param about the statement that raised it, with what was said so far
 * @param against the older statement it contradicts; null unless the kind is {@code CONTRADICTION}
 * @param text the question for people
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record Question(Kind kind, String detail, Finding about, Finding against, String text) {

  /** What is missing. */
  public enum Kind {
    /** The side was not said: the statement is not recorded until it is. */
    SIDE,
    /** The statement stands, but a detail it needs was not said. */
    DETAIL,
    /** The number cannot be right: the statement is not recorded; it is said again or dropped. */
    NUMBER,
    /** An older statement says something else: the older one stands until this is answered. */
    CONTRADICTION,
    /** A short answer fits several steps: nothing is recorded; {@code about} is null. */
    STEP;

    @JsonValue
    public String id() {
      return name().toLowerCase(Locale.ROOT);
    }
  }
}
