package tiptoe.grammar;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import tiptoe.grammar.Expansion.Repeat;

/**
 * What an expansion means by the Recommendation, spelt out as a list of word sequences up to a
 * length with the cost of each: slow and plain, to check the automata against.
 */
final class Meaning {
  private final GrammarSet set;
  private final int longest;

  private Meaning(GrammarSet set, int longest) {
    this.set = set;
    this.longest = longest;
  }

  /** Every phrase of the root rule of at most so many words, with its least cost. */
  static Map<List<String>, Double> of(GrammarSet set, int longest) {
    GrammarSet.Target root = set.root().orElseThrow();
    return new Meaning(set, longest).of(root.grammar(), root.rule().expansion());
  }

  private Map<List<String>, Double> of(Grammar grammar, Expansion expansion) {
    if (expansion instanceof Expansion.Token token) {
      return Map.of(token.words(), 0.0);
    }
    if (expansion instanceof Expansion.RuleReference reference) {
      GrammarSet.Target target = set.target(grammar, reference).orElseThrow();
      return of(target.grammar(), target.rule().expansion());
    }
    if (expansion instanceof Expansion.Sequence sequence) {
      Map<List<String>, Double> all = Map.of(List.of(), 0.0);
      for (Expansion part : sequence.parts()) {
        all = product(all, of(grammar, part));
      }
      return all;
    }
    if (expansion instanceof Expansion.Alternatives one) {
      Map<List<String>, Double> all = new HashMap<>();
      for (Expansion.Alternative choice : one.choices()) {
        double share = choice.weight() / one.totalWeight();
        add(all, of(grammar, choice.expansion()), -Math.log(share));
      }
      return all;
    }
    if (expansion instanceof Repeat repeat) {
      return repeated(of(grammar, repeat.expansion()), repeat, holdsWords(grammar, repeat));
    }
    return expansion instanceof Expansion.Void ? Map.of() : Map.of(List.of(), 0.0);
  }

  private Map<List<String>, Double> repeated(
      Map<List<String>, Double> once, Repeat repeat, boolean holdsWords) {
    double again = -Math.log(repeat.probability());
    double stop = -Math.log(1 - repeat.probability());
    // section 2.5: repeating what says nothing is the same as having it once
    int most = holdsWords ? repeat.most() : Math.min(1, repeat.most());
    int least = Math.min(most, repeat.least());
    Map<List<String>, Double> all = new HashMap<>();
    Map<List<String>, Double> sofar = Map.of(List.of(), 0.0);
    // more than so many repeats say either too many words or nothing new
    for (int count = 0; count <= Math.min(most, least + longest); count++) {
      if (count >= least) {
        add(all, sofar, (count - least) * again + (count < most ? stop : 0));
      }
      sofar = product(sofar, once);
    }
    return all;
  }

  private boolean holdsWords(Grammar grammar, Repeat repeat) {
    List<Boolean> found = new ArrayList<>();
    collectWords(grammar, repeat, found);
    return !found.isEmpty();
  }

  private void collectWords(Grammar grammar, Expansion expansion, List<Boolean> found) {
    if (expansion instanceof Expansion.Token) {
      found.add(true);
    } else if (expansion instanceof Expansion.RuleReference reference) {
      GrammarSet.Target target = set.target(grammar, reference).orElseThrow();
      collectWords(target.grammar(), target.rule().expansion(), found);
    } else if (expansion instanceof Expansion.Sequence sequence) {
      sequence.parts().forEach(part -> collectWords(grammar, part, found));
    } else if (expansion instanceof Expansion.Alternatives one) {
      one.choices().forEach(choice -> collectWords(grammar, choice.expansion(), found));
    } else if (expansion instanceof Repeat repeat && repeat.most() > 0) {
      collectWords(grammar, repeat.expansion(), found);
    }
  }

  private static void add(
      Map<List<String>, Double> all, Map<List<String>, Double> more, double cost) {
    more.forEach((words, own) -> all.merge(words, own + cost, Math::min));
  }

  private Map<List<String>, Double> product(
      Map<List<String>, Double> left, Map<List<String>, Double> right) {
    Map<List<String>, Double> all = new HashMap<>();
    left.forEach(
        (first, cost) ->
            right.forEach(
                (second, more) -> {
                  List<String> words = new ArrayList<>(first);
                  words.addAll(second);
                  if (words.size() <= longest) {
                    all.merge(words, cost + more, Math::min);
                  }
                }));
    return all;
  }
}
