package tiptoe.language;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import tiptoe.finding.Bound;
import tiptoe.grammar.Parse;
import tiptoe.grammar.Tag;
import tiptoe.protocol.Side;

/**
 * The tags of one finding, sorted by what they say. A phrase holds one clause or several; the tag
 * {@code ;} ends one.
 */
final class Clause {
  final List<String> steps = new ArrayList<>();
  final Set<Side> sides = new LinkedHashSet<>();
  final List<String> values = new ArrayList<>();
  final List<String> denied = new ArrayList<>();
  final List<SpokenNumber> numbers = new ArrayList<>();
  final List<Meaning.Fact> facts = new ArrayList<>();

  /** Every other key: marks such as {@code heading}, details such as {@code grade}. */
  final Map<String, List<String>> others = new LinkedHashMap<>();

  Optional<String> mark(String key) {
    return Optional.ofNullable(others.get(key)).map(values -> values.get(0));
  }

  boolean isEmpty() {
    return steps.isEmpty()
        && sides.isEmpty()
        && values.isEmpty()
        && denied.isEmpty()
        && numbers.isEmpty()
        && facts.isEmpty()
        && others.isEmpty();
  }

  /** The clauses of a phrase, in order. */
  static List<Clause> of(Parse.Phrase phrase, List<String> words) {
    return new Reader(words).read(phrase);
  }

  private static final class Reader {
    private final List<String> words;
    private final List<Clause> clauses = new ArrayList<>();
    private Clause clause = new Clause();
    private List<String> number;
    private String of;
    private Bound bound;

    Reader(List<String> words) {
      this.words = words;
    }

    List<Clause> read(Parse.Phrase phrase) {
      for (Parse.Item item : phrase.items()) {
        if (item instanceof Parse.WordItem word) {
          if (number != null) {
            number.add(words.get(word.index()));
          }
        } else if (item instanceof Parse.TagItem tags) {
          Tag.parse(tags.text()).forEach(this::take);
        }
      }
      close();
      return clauses;
    }

    private void close() {
      if (!clause.isEmpty()) {
        clauses.add(clause);
      }
      clause = new Clause();
      of = null;
    }

    private void take(Tag tag) {
      if (tag.endsClause()) {
        close();
        return;
      }
      switch (tag.key()) {
        case "step" -> takeStep(tag.value());
        case "side" -> takeSide(tag.value());
        case "value" -> clause.values.add(tag.value());
        case "deny" -> clause.denied.add(tag.value());
        case "of" -> of = tag.value();
        case "bound" -> bound = Bound.ofId(tag.value());
        case "number" -> takeNumber(tag.value());
        case "unit" -> takeUnit(tag.value());
        case "fact" -> clause.facts.add(new Meaning.Fact(tag.value(), null));
        case "is" -> takeFactValue(tag.value());
        default ->
            clause.others.computeIfAbsent(tag.key(), key -> new ArrayList<>()).add(tag.value());
      }
    }

    // A list may name its step again and again: "no caput, no cephalohaematoma".
    private void takeStep(String id) {
      if (!clause.steps.contains(id)) {
        clause.steps.add(id);
      }
    }

    private void takeSide(String id) {
      if (id.equals("both")) {
        clause.sides.addAll(List.of(Side.LEFT, Side.RIGHT));
      } else {
        clause.sides.add(Side.of(id));
      }
    }

    private void takeNumber(String edge) {
      if (edge.equals("begin")) {
        number = new ArrayList<>();
      } else {
        clause.numbers.add(new SpokenNumber(of, number, null, bound));
        bound = null;
        number = null;
        of = null;
      }
    }

    private void takeUnit(String unit) {
      int last = clause.numbers.size() - 1;
      clause.numbers.set(last, clause.numbers.get(last).withUnit(unit));
    }

    private void takeFactValue(String value) {
      int last = clause.facts.size() - 1;
      clause.facts.set(last, new Meaning.Fact(clause.facts.get(last).id(), value));
    }
  }
}
