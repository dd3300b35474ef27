package tiptoe.language;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import tiptoe.finding.Finding;
import tiptoe.finding.Quantity;
import tiptoe.finding.Question;
import tiptoe.finding.Source;
import tiptoe.protocol.Protocol;

/**
 * Numbers that no phrase of the grammars lets be said, such as a saturation of 10 %: the words are
 * read with a number that can be said in the place of each, and the finding is told with its own.
 *
 * @param words with the numbers that can be said
 * @param meant what was said instead of each of these
 */
record UnsayableNumber(List<String> words, Map<Double, Double> meant) {
  private static final List<List<String>> SAYABLE =
      List.of(List.of("ninety one", "ninety two"), List.of("nine", "eight"));

  /** Words from here to before there that are a number. */
  private record Run(int from, int to, double number) {}

  /** The ways to say it with numbers of the grammars: one number changed, or both of two. */
  static List<UnsayableNumber> in(List<String> words) {
    List<Run> runs = runs(words);
    List<List<Run>> changes = new ArrayList<>(runs.stream().map(List::of).toList());
    if (runs.size() == 2) {
      changes.add(runs);
    }
    return changes.stream()
        .flatMap(changed -> SAYABLE.stream().map(sayable -> with(words, changed, sayable)))
        .toList();
  }

  private static List<Run> runs(List<String> words) {
    List<Run> runs = new ArrayList<>();
    int from = 0;
    while (from < words.size()) {
      int to = words.size();
      while (to > from && NumberWords.readings(words.subList(from, to)).isEmpty()) {
        to--;
      }
      if (to > from) {
        runs.add(new Run(from, to, NumberWords.readings(words.subList(from, to)).get(0)));
      }
      from = Math.max(to, from + 1);
    }
    return runs;
  }

  private static UnsayableNumber with(List<String> words, List<Run> runs, List<String> sayable) {
    List<String> changed = new ArrayList<>(words);
    Map<Double, Double> meant = new TreeMap<>();
    for (int i = runs.size() - 1; i >= 0; i--) {
      List<String> said = List.of(sayable.get(i).split(" "));
      List<String> run = changed.subList(runs.get(i).from(), runs.get(i).to());
      run.clear();
      run.addAll(said);
      meant.put(NumberWords.readings(said).get(0), runs.get(i).number());
    }
    return new UnsayableNumber(changed, meant);
  }

  /**
   * What was said, of what the changed words mean; a changed number is asked about or, where it may
   * be right, only offered. Empty where a changed number is that of no finding, or of more than
   * one, or something else was said beside it.
   */
  Optional<List<Meaning>> said(List<Meaning> read, Protocol protocol) {
    boolean each =
        meant.keySet().stream()
            .allMatch(
                number -> read.stream().filter(one -> holds(one.findings(), number)).count() == 1);
    boolean measures =
        read.stream()
            .flatMap(one -> one.findings().stream())
            .allMatch(finding -> finding.quantity() != null);
    return each && measures
        ? Optional.of(read.stream().map(one -> said(one, protocol)).toList())
        : Optional.empty();
  }

  private static boolean holds(List<Finding> findings, double number) {
    return findings.stream()
        .anyMatch(one -> one.quantity() != null && one.quantity().number() == number);
  }

  private Meaning said(Meaning read, Protocol protocol) {
    if (read instanceof Meaning.Asks asks && !asks.question().meant().isEmpty()) {
      List<Finding> findings = asks.findings().stream().map(this::said).toList();
      return new Meaning.Asks(Question.step(asks.question().steps(), findings), asks.correction());
    }
    if (!(read instanceof Meaning.States states) || states.statement().quantity() == null) {
      return read;
    }
    Finding finding = said(states.statement());
    if (finding.equals(states.statement())) {
      return read;
    }
    return protocol.step(finding.step()).measure().plausible(finding.quantity().number())
        ? new Meaning.States(finding.withSource(Source.TAGGER), states.correction())
        : new Meaning.Asks(Question.number(finding), states.correction());
  }

  private Finding said(Finding read) {
    Quantity quantity = read.quantity();
    Double number = quantity == null ? null : meant.get(quantity.number());
    return number == null
        ? read
        : new Finding(
            read.step(),
            read.side(),
            read.value(),
            new Quantity(number, quantity.unit(), quantity.comparator()),
            read.details(),
            read.denied(),
            read.group(),
            read.source());
  }
}
