package tiptoe.language;

import java.util.List;
import java.util.stream.Stream;
import tiptoe.finding.Finding;
import tiptoe.finding.Question;

/**
 * What an utterance means.
 *
 * @param meanings in the order they were said
 * @param uncovered words that no phrase covers, in order; empty when all was understood
 * @param spans what the words were taken for, where not all of them were covered
 * @param withheld whether phrases were found that do not count as findings, since the sentence is a
 *     doubt, a plan, or about someone else; a person should read it
 * @param dialogue the context for the next utterance
 */
public record Interpretation(
    List<Meaning> meanings,
    List<String> uncovered,
    List<SecondReading.Span> spans,
    boolean withheld,
    Dialogue dialogue) {
  public Interpretation {
    meanings = List.copyOf(meanings);
    uncovered = List.copyOf(uncovered);
    spans = List.copyOf(spans);
  }

  /** What was understood by the grammars alone. */
  public Interpretation(List<Meaning> meanings, List<String> uncovered, Dialogue dialogue) {
    this(meanings, uncovered, List.of(), false, dialogue);
  }

  public List<Finding> statements() {
    return of(Meaning.States.class).map(Meaning.States::statement).toList();
  }

  public List<Question> questions() {
    return of(Meaning.Asks.class).map(Meaning.Asks::question).toList();
  }

  /** The meanings of one kind, in order. */
  public <M extends Meaning> Stream<M> of(Class<M> kind) {
    return meanings.stream().filter(kind::isInstance).map(kind::cast);
  }
}
