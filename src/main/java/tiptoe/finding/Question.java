package tiptoe.finding;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import java.util.Objects;
import tiptoe.protocol.Identified;

/**
 * Something the tool must be told before a finding can stand, or to complete it. Two are equal when
 * they ask the same, in whatever words.
 *
 * @param kind what is missing
 * @param detail id of the detail asked for, of the fact about the baby that cannot be what was
 *     heard, or of the command; else null
 * @param about the finding that raised it, with what was said so far; null where there is none
 * @param against the older finding it contradicts, as that stands; null unless the kind is {@code
 *     CONTRADICTION}
 * @param steps ids of the steps that may be meant; empty unless the kind is {@code STEP}
 * @param meant what it may state that is not normal, one for each step and side; empty unless the
 *     kind is {@code STEP}
 * @param heard what was heard of a fact about the baby; else null
 * @param text as it was put to people; null until it is asked
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record Question(
    Kind kind,
    String detail,
    Finding about,
    Finding against,
    @JsonInclude(JsonInclude.Include.NON_EMPTY) List<String> steps,
    @JsonInclude(JsonInclude.Include.NON_EMPTY) List<Finding> meant,
    String heard,
    String text) {
  public Question {
    // Older records do not tell these.
    steps = steps == null ? List.of() : List.copyOf(steps);
    meant = meant == null ? List.of() : List.copyOf(meant);
  }

  public static Question side(Finding about) {
    return new Question(Kind.SIDE, null, about, null, List.of(), List.of(), null, null);
  }

  public static Question detail(Finding about, String detail) {
    return new Question(Kind.DETAIL, detail, about, null, List.of(), List.of(), null, null);
  }

  public static Question number(Finding about) {
    return new Question(Kind.NUMBER, null, about, null, List.of(), List.of(), null, null);
  }

  /** Asks again for a fact about the baby that cannot be what was heard. */
  public static Question fact(String id, String heard) {
    return new Question(Kind.NUMBER, id, null, null, List.of(), List.of(), heard, null);
  }

  /** Reads a fact about the baby back that a yes is to record. */
  public static Question readBack(String id, String value) {
    return new Question(Kind.FACT, id, null, null, List.of(), List.of(), value, null);
  }

  /**
   * Which of two is right.
   *
   * @param about null when two values of a fact contradict each other
   * @param against null when it is not a finding that {@code about} contradicts
   */
  public static Question contradiction(Finding about, Finding against) {
    return new Question(Kind.CONTRADICTION, null, about, against, List.of(), List.of(), null, null);
  }

  public static Question step(List<String> steps) {
    return step(steps, List.of());
  }

  /**
   * Of which step something was said.
   *
   * @param meant what it may state that is not normal; it waits until one of the steps is stated
   */
  public static Question step(List<String> steps, List<Finding> meant) {
    return new Question(Kind.STEP, null, null, null, steps, meant, null, null);
  }

  /** Whether only a yes right behind it counts, and anything else lets go what waits for it. */
  public boolean lapsesByAll() {
    return kind == Kind.COMMAND || kind == Kind.FACT;
  }

  /** Whether a bare no lets go what waits for the answer. */
  public boolean lapsesByNo() {
    return kind == Kind.NUMBER || kind == Kind.STEP && !meant.isEmpty();
  }

  /** Findings that wait for the answer and of which one may be right. */
  public List<Finding> waiting() {
    return switch (kind) {
      case SIDE, NUMBER -> about == null ? List.of() : List.of(about);
      case STEP -> meant;
      case DETAIL, CONTRADICTION, COMMAND, FACT -> List.of();
    };
  }

  /** Whether a command that could be talk is to be carried out. */
  public static Question command(Command command) {
    return new Question(Kind.COMMAND, command.id(), null, null, List.of(), List.of(), null, null);
  }

  public Question withText(String newText) {
    return new Question(kind, detail, about, against, steps, meant, heard, newText);
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Question that
        && kind == that.kind
        && Objects.equals(detail, that.detail)
        && Objects.equals(about, that.about)
        && Objects.equals(against, that.against)
        && steps.equals(that.steps)
        && meant.equals(that.meant)
        && Objects.equals(heard, that.heard);
  }

  @Override
  public int hashCode() {
    return Objects.hash(kind, detail, about, against, steps, meant, heard);
  }

  public enum Kind implements Identified {
    /** The side was not said: the statement is not recorded until it is. */
    SIDE,
    /** The statement stands, but a detail it needs was not said. */
    DETAIL,
    /** The number cannot be right: the statement is not recorded; it is said again or dropped. */
    NUMBER,
    /** An older statement says something else: the older one stands until this is answered. */
    CONTRADICTION,
    /** A short answer fits several steps: nothing is recorded; {@code about} is null. */
    STEP,
    /** What was said could be a command or talk: yes carries it out, all else lets it go. */
    COMMAND,
    /** A fact was heard that may be another: yes records it, all else lets it go. */
    FACT;
  }
}
