package tiptoe.exam;

import java.util.List;

/**
 * A clinical rule that applies, as the record keeps it.
 *
 * @param level {@code emergency}, {@code urgent}, {@code arrange} or {@code note}
 * @param rule id of the rule
 * @param text what to consider
 * @param statements numbers of the statements that raised it
 * @param provisional true where it rests on what is not settled or was heard unsurely; else null,
 *     so that records of earlier versions read and write the same
 */
public record RecordedFlag(
    String level, String rule, String text, List<Integer> statements, Boolean provisional) {
  public RecordedFlag {
    statements = List.copyOf(statements);
    provisional = Boolean.TRUE.equals(provisional) ? Boolean.TRUE : null;
  }
}
