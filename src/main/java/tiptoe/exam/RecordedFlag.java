package tiptoe.exam;

import java.util.List;

/**
 * A clinical rule that applies, as the record keeps it.
 *
 * @param level {@code emergency}, {@code urgent}, {@code arrange} or {@code note}
 * @param rule id of the rule
 * @param text what to consider
 * @param statements numbers of the statements that raised it
 */
public record RecordedFlag(String level, String rule, String text, List<Integer> statements) {
  public RecordedFlag {
    statements = List.copyOf(statements);
  }
}
