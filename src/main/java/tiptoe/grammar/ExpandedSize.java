package tiptoe.grammar;

import java.util.HashMap;
import java.util.Map;
import tiptoe.grammar.Expansion.Alternatives;
import tiptoe.grammar.Expansion.Repeat;
import tiptoe.grammar.Expansion.RuleReference;
import tiptoe.grammar.Expansion.Sequence;
import tiptoe.grammar.Expansion.Token;
import tiptoe.grammar.GrammarSet.Target;

/**
 * How many arcs a rule will have once expanded, at most: ten short rules that each use the next one
 * ten times make more than any memory holds, so it is counted before it is done.
 */
final class ExpandedSize {
  private final GrammarSet set;
  private final Map<String, Long> known = new HashMap<>();

  ExpandedSize(GrammarSet set) {
    this.set = set;
  }

  /** The number of arcs; {@link Long#MAX_VALUE} for that many or more. */
  long arcs(Target target) {
    Long before = known.get(target.key());
    if (before != null) {
      return before;
    }
    long arcs = arcs(target.grammar(), target.rule().expansion());
    known.put(target.key(), arcs);
    return arcs;
  }

  private long arcs(Grammar grammar, Expansion expansion) {
    if (expansion instanceof Token token) {
      return token.words().size();
    }
    if (expansion instanceof RuleReference reference) {
      return arcs(set.target(grammar, reference).orElseThrow());
    }
    if (expansion instanceof Sequence sequence) {
      return sequence.parts().stream()
          .mapToLong(part -> arcs(grammar, part))
          .reduce(0, ExpandedSize::sum);
    }
    if (expansion instanceof Alternatives one) {
      return one.choices().stream()
          .mapToLong(choice -> sum(1, arcs(grammar, choice.expansion())))
          .reduce(0, ExpandedSize::sum);
    }
    if (expansion instanceof Repeat repeat) {
      long copies = repeat.most() == Repeat.UNBOUNDED ? repeat.least() + 1L : repeat.most();
      return sum(3, product(copies, sum(2, arcs(grammar, repeat.expansion()))));
    }
    return 1;
  }

  private static long sum(long a, long b) {
    return a > Long.MAX_VALUE - b ? Long.MAX_VALUE : a + b;
  }

  private static long product(long a, long b) {
    return a != 0 && b > Long.MAX_VALUE / a ? Long.MAX_VALUE : a * b;
  }
}
