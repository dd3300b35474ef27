package tiptoe.exam;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Stream;

/**
 * Takes back what the last utterance left: statements, questions, facts. What a struck correction
 * had replaced does not come back, since the clinician had called it wrong: the step is missing
 * again, and asked for.
 */
final class Retraction {
  private static final Set<Status> LIVE = Set.of(Status.STANDS, Status.CONFIRMS, Status.WAITS);

  private final ExamRecord record;
  private final Map<String, Deque<Event.ContextStated>> facts = new HashMap<>();

  private Retraction(ExamRecord record) {
    this.record = record;
    record.entries().forEach(entry -> follow(entry.event()));
  }

  /**
   * What to take back; empty when nothing is left to take back.
   *
   * @param current number of the utterance that asks for it; null when a key did
   */
  static Optional<Event.Struck> last(ExamRecord record, Integer current) {
    Retraction retraction = new Retraction(record);
    return retraction
        .utterances()
        .filter(number -> number != null && (current == null || number < current))
        .max(Comparator.naturalOrder())
        .map(retraction::of);
  }

  private void follow(Event event) {
    if (event instanceof Event.ContextStated stated) {
      facts.computeIfAbsent(stated.fact(), fact -> new ArrayDeque<>()).push(stated);
    } else if (event instanceof Event.Struck struck) {
      Stream.concat(struck.facts().keySet().stream(), struck.cleared().stream())
          .filter(facts::containsKey)
          .forEach(fact -> facts.get(fact).poll());
    }
  }

  /** Numbers of those that left something; null for what was left by none. */
  private Stream<Integer> utterances() {
    return Stream.of(
            live().map(RecordedFinding::utterance),
            record.openQuestions().stream().map(Asked::utterance),
            facts.values().stream()
                .map(Deque::peek)
                .filter(Objects::nonNull)
                .map(Event.ContextStated::utterance))
        .flatMap(numbers -> numbers);
  }

  private Stream<RecordedFinding> live() {
    return record.statements().stream().filter(said -> LIVE.contains(said.status()));
  }

  private Event.Struck of(int utterance) {
    List<Integer> statements =
        live()
            .filter(said -> Objects.equals(said.utterance(), utterance))
            .map(RecordedFinding::number)
            .toList();
    List<Integer> questions =
        record.openQuestions().stream()
            .filter(
                asked ->
                    asked.statement() == null
                        ? Objects.equals(asked.utterance(), utterance)
                        : statements.contains(asked.statement()))
            .map(Asked::number)
            .toList();
    Map<String, String> back = new TreeMap<>();
    List<String> cleared = new ArrayList<>();
    facts.forEach(
        (fact, stated) -> {
          if (stated.peek() != null && Objects.equals(stated.peek().utterance(), utterance)) {
            Optional<Event.ContextStated> before = stated.stream().skip(1).findFirst();
            before.ifPresentOrElse(one -> back.put(fact, one.value()), () -> cleared.add(fact));
          }
        });
    return new Event.Struck(utterance, statements, questions, back, cleared);
  }
}
