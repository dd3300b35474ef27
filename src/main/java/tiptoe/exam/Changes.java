package tiptoe.exam;

import java.util.List;
import java.util.stream.Stream;
import tiptoe.finding.Command;

/**
 * What one step of the examination changed.
 *
 * @param entries what was kept, in order; empty when nothing changed
 * @param commands spoken commands, for whoever has to carry them out
 * @param record the record after it
 */
public record Changes(List<Entry> entries, List<Command> commands, ExamRecord record) {
  public Changes {
    entries = List.copyOf(entries);
    commands = List.copyOf(commands);
  }

  /** Statements that were made, with the status they have after it. */
  public List<RecordedFinding> statements() {
    return of(Event.StatementMade.class)
        .flatMap(made -> record.statement(made.number()).stream())
        .toList();
  }

  /** Questions that were asked and still want an answer. */
  public List<Asked> questions() {
    List<Integer> asked = of(Event.QuestionAsked.class).map(Event.QuestionAsked::number).toList();
    return record.openQuestions().stream()
        .filter(question -> asked.contains(question.number()))
        .toList();
  }

  /** These and those of the step behind it. */
  public Changes then(Changes next) {
    return new Changes(
        Stream.concat(entries.stream(), next.entries.stream()).toList(),
        Stream.concat(commands.stream(), next.commands.stream()).toList(),
        next.record);
  }

  public boolean isEmpty() {
    return entries.isEmpty();
  }

  /** The events of one kind, in order. */
  public <E extends Event> Stream<E> of(Class<E> kind) {
    return entries.stream().map(Entry::event).filter(kind::isInstance).map(kind::cast);
  }
}
