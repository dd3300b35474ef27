package tiptoe.clinical;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import tiptoe.protocol.Side;

/**
 * Something in the findings that wants attention. It holds for as long as the findings stand.
 *
 * @param level how soon
 * @param rule id of the rule that raised it
 * @param steps ids of the steps it is about, in the order of the rule
 * @param sides the sides it was found on; empty where there are none
 * @param statements numbers of the statements that raised it, in order; empty where it rests on
 *     what is known of the baby alone
 * @param when when to act, for people
 * @param advice what to do, beginning with what to consider; never a diagnosis
 * @param consider what to think of; null where nothing particular
 * @param source what the rule rests on
 * @param provisional whether it holds only with readings that are not settled; then they are to be
 *     confirmed now
 */
@JsonInclude(JsonInclude.Include.NON_EMPTY)
public record Flag(
    Level level,
    String rule,
    List<String> steps,
    List<Side> sides,
    List<Integer> statements,
    String when,
    String advice,
    String consider,
    String source,
    @JsonInclude(JsonInclude.Include.NON_DEFAULT) boolean provisional) {
  public Flag {
    steps = List.copyOf(steps);
    sides = List.copyOf(sides);
    statements = List.copyOf(statements);
  }

  /** The same, holding only with readings that are not settled. */
  Flag asProvisional() {
    return new Flag(level, rule, steps, sides, statements, when, advice, consider, source, true);
  }

  public tiptoe.exam.RecordedFlag recorded() {
    return new tiptoe.exam.RecordedFlag(level.id(), rule, advice, statements, provisional);
  }
}
