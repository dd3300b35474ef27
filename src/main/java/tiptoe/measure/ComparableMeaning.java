package tiptoe.measure;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import tiptoe.exam.Changes;
import tiptoe.exam.Event;
import tiptoe.finding.Finding;
import tiptoe.finding.Question;
import tiptoe.finding.Source;

/**
 * One thing an utterance did, in a form that can be compared: two are the same when their texts
 * are. What follows from earlier utterances, such as a contradiction, is left out.
 *
 * @param kind what it is
 * @param text for people: {@code clavicle.left crepitus}
 */
public record ComparableMeaning(Kind kind, String text) {
  public enum Kind {
    FINDING,
    FACT,
    QUESTION,
    COMMAND,
    HEADING
  }

  /** All that an utterance did, in order. */
  public static List<ComparableMeaning> of(Changes changes) {
    List<ComparableMeaning> all = new ArrayList<>();
    changes.entries().stream().flatMap(entry -> of(entry.event())).forEach(all::add);
    changes
        .commands()
        .forEach(command -> all.add(new ComparableMeaning(Kind.COMMAND, command.id())));
    if (all.isEmpty()) {
      changes
          .of(Event.UtteranceHeard.class)
          .filter(heard -> heard.region() != null)
          .forEach(heard -> all.add(new ComparableMeaning(Kind.HEADING, heard.region())));
    }
    return List.copyOf(all);
  }

  private static Stream<ComparableMeaning> of(Event event) {
    if (event instanceof Event.StatementMade made) {
      String text = text(made.statement());
      return Stream.of(
          new ComparableMeaning(Kind.FINDING, made.correction() ? "correction: " + text : text));
    }
    if (event instanceof Event.ContextStated stated) {
      return Stream.of(new ComparableMeaning(Kind.FACT, stated.fact() + " " + stated.value()));
    }
    if (event instanceof Event.QuestionAsked asked
        && asked.question().kind() != Question.Kind.CONTRADICTION) {
      return Stream.of(new ComparableMeaning(Kind.QUESTION, text(asked.question())));
    }
    return Stream.empty();
  }

  private static String text(Question question) {
    return Stream.of(
            question.kind().id(),
            question.detail() == null ? "" : question.detail(),
            question.about() == null ? "" : text(question.about()))
        .filter(part -> !part.isEmpty())
        .collect(Collectors.joining(" "));
  }

  /** A finding, however it was understood. */
  static String text(Finding said) {
    return said.withSource(Source.GRAMMAR).toString();
  }
}
