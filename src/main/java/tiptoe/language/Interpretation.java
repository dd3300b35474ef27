package tiptoe.language;

import java.util.List;
import java.util.function.Predicate;
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
 * @param certainties how sure the reading of each meaning is, where a sentence was read word by
 *     word; empty where phrases cover it
 * @param talk the probability that it is talk, 0 to 1, where that holds back what it would state;
 *     else 0
 */
public record Interpretation(
    List<Meaning> meanings,
    List<String> uncovered,
    List<SecondReading.Span> spans,
    boolean withheld,
    Dialogue dialogue,
    List<Certainty> certainties,
    double talk) {

  /**
   * How sure the reading of something said is.
   *
   * @param sure whether every word that it may depend on is accounted for
   * @param why in words
   */
  public record Certainty(Meaning meaning, boolean sure, String why) {}

  public Interpretation {
    meanings = List.copyOf(meanings);
    uncovered = List.copyOf(uncovered);
    spans = List.copyOf(spans);
    certainties = List.copyOf(certainties);
  }

  /** Such that is not held back. */
  public Interpretation(
      List<Meaning> meanings,
      List<String> uncovered,
      List<SecondReading.Span> spans,
      boolean withheld,
      Dialogue dialogue,
      List<Certainty> certainties) {
    this(meanings, uncovered, spans, withheld, dialogue, certainties, 0);
  }

  public Interpretation(
      List<Meaning> meanings,
      List<String> uncovered,
      List<SecondReading.Span> spans,
      boolean withheld,
      Dialogue dialogue) {
    this(meanings, uncovered, spans, withheld, dialogue, List.of());
  }

  /** What was understood by the grammars alone. */
  public Interpretation(List<Meaning> meanings, List<String> uncovered, Dialogue dialogue) {
    this(meanings, uncovered, List.of(), false, dialogue);
  }

  /** How sure the reading of each meaning is, in the order they were said. */
  public List<Certainty> howSure() {
    if (!certainties.isEmpty()) {
      return certainties;
    }
    boolean sure = uncovered.isEmpty();
    String why =
        sure ? "words of the phrases" : "not accounted for: " + String.join(" ", uncovered);
    return meanings.stream().map(meaning -> new Certainty(meaning, sure, why)).toList();
  }

  /** What counts though other words of the sentence are not accounted for; may be nothing. */
  public Interpretation certain() {
    List<Certainty> known = certainties.stream().filter(Certainty::sure).toList();
    List<Meaning> sure = known.stream().map(Certainty::meaning).toList();
    Dialogue next =
        new Dialogue(
            dialogue.region(),
            sure.stream()
                .filter(Meaning.States.class::isInstance)
                .map(meaning -> ((Meaning.States) meaning).statement())
                .toList(),
            null);
    return new Interpretation(sure, List.of(), spans, false, next, known);
  }

  /** What is left beside what is certain. */
  public Interpretation doubtful() {
    List<Certainty> open = certainties.stream().filter(one -> !one.sure()).toList();
    List<Meaning> left = open.stream().map(Certainty::meaning).toList();
    return new Interpretation(left, uncovered, spans, withheld, dialogue, open);
  }

  /** Whether only a part of what was said counts. */
  public boolean isParted() {
    return !uncovered.isEmpty() && certainties.stream().anyMatch(Certainty::sure);
  }

  /** The same with these meanings alone. */
  public Interpretation only(Predicate<Meaning> these) {
    return new Interpretation(
        meanings.stream().filter(these).toList(), uncovered, spans, withheld, dialogue);
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
