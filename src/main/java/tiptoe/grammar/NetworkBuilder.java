package tiptoe.grammar;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import tiptoe.grammar.Expansion.Alternative;
import tiptoe.grammar.Expansion.Alternatives;
import tiptoe.grammar.Expansion.Repeat;
import tiptoe.grammar.Expansion.RuleReference;
import tiptoe.grammar.Expansion.Sequence;
import tiptoe.grammar.Expansion.TagText;
import tiptoe.grammar.Expansion.Token;
import tiptoe.grammar.GrammarSet.Target;
import tiptoe.grammar.PhraseNetwork.Arc;

/**
 * Expands a rule to arcs from state 0 to state 1. Every reference is expanded in its place, which
 * ends because recursion is refused.
 */
final class NetworkBuilder {
  static final int MOST_ARCS = 1_000_000;

  /** What is never or always repeated would cost without end; this keeps it below 9.3. */
  private static final double LEAST_PROBABILITY = 1e-4;

  private final GrammarSet set;
  private final List<Arc> arcs = new ArrayList<>();
  private final Map<String, Boolean> silentRules = new HashMap<>();
  private int states = 2;

  private NetworkBuilder(GrammarSet set) {
    this.set = set;
  }

  static PhraseNetwork build(GrammarSet set, Target root) {
    NetworkBuilder builder = new NetworkBuilder(set);
    builder.connect(root.grammar(), root.rule().expansion(), 0, 1);
    return PhraseNetwork.trimmed(builder.states, builder.arcs);
  }

  private void connect(Grammar grammar, Expansion expansion, int from, int to) {
    if (expansion instanceof Token token) {
      words(token.words(), from, to);
    } else if (expansion instanceof RuleReference reference) {
      Target target = set.target(grammar, reference).orElseThrow();
      connect(target.grammar(), target.rule().expansion(), from, to);
    } else if (expansion instanceof TagText tag) {
      add(new Arc(from, to, null, tag.text(), 0));
    } else if (expansion instanceof Expansion.Null) {
      empty(from, to, 0);
    } else if (expansion instanceof Sequence sequence) {
      sequence(grammar, sequence.parts(), from, to);
    } else if (expansion instanceof Alternatives one) {
      alternatives(grammar, one, from, to);
    } else if (expansion instanceof Repeat repeat) {
      repeat(grammar, repeat, from, to);
    } else if (!(expansion instanceof Expansion.Void)) {
      throw new IllegalArgumentException("expected a checked grammar, found " + expansion);
    }
  }

  private void words(List<String> words, int from, int to) {
    int at = from;
    for (int i = 0; i < words.size(); i++) {
      int next = i == words.size() - 1 ? to : states++;
      add(new Arc(at, next, words.get(i), null, 0));
      at = next;
    }
  }

  private void sequence(Grammar grammar, List<Expansion> parts, int from, int to) {
    int at = from;
    for (int i = 0; i < parts.size(); i++) {
      int next = i == parts.size() - 1 ? to : states++;
      connect(grammar, parts.get(i), at, next);
      at = next;
    }
  }

  private void alternatives(Grammar grammar, Alternatives one, int from, int to) {
    double total = one.totalWeight();
    for (Alternative choice : one.choices()) {
      int start = states++;
      empty(from, start, cost(choice.weight() / total));
      connect(grammar, choice.expansion(), start, to);
    }
  }

  private void repeat(Grammar grammar, Repeat repeat, int from, int to) {
    if (repeat.most() == 0) {
      empty(from, to, 0);
      return;
    }
    // repeating what says nothing is the same as having it once (section 2.5)
    boolean silent = isSilent(grammar, repeat.expansion());
    int most = silent ? 1 : repeat.most();
    int at = from;
    for (int i = 0; i < Math.min(repeat.least(), most); i++) {
      int next = states++;
      connect(grammar, repeat.expansion(), at, next);
      at = next;
    }
    double share =
        Math.min(Math.max(repeat.probability(), LEAST_PROBABILITY), 1 - LEAST_PROBABILITY);
    double again = cost(share);
    double stop = cost(1 - share);
    if (most == Repeat.UNBOUNDED) {
      int loop = states++;
      int start = states++;
      empty(at, loop, 0);
      empty(loop, start, again);
      connect(grammar, repeat.expansion(), start, loop);
      empty(loop, to, stop);
      return;
    }
    for (int i = repeat.least(); i < most; i++) {
      int start = states++;
      int next = states++;
      empty(at, to, stop);
      empty(at, start, again);
      connect(grammar, repeat.expansion(), start, next);
      at = next;
    }
    empty(at, to, 0);
  }

  /** Whether no word can be said in it. */
  private boolean isSilent(Grammar grammar, Expansion expansion) {
    if (expansion instanceof RuleReference reference) {
      Target target = set.target(grammar, reference).orElseThrow();
      Boolean known = silentRules.get(target.key());
      boolean silent =
          known != null ? known : isSilent(target.grammar(), target.rule().expansion());
      silentRules.put(target.key(), silent);
      return silent;
    }
    if (expansion instanceof Sequence sequence) {
      return sequence.parts().stream().allMatch(part -> isSilent(grammar, part));
    }
    if (expansion instanceof Alternatives one) {
      return one.choices().stream().allMatch(choice -> isSilent(grammar, choice.expansion()));
    }
    if (expansion instanceof Repeat repeat) {
      return repeat.most() == 0 || isSilent(grammar, repeat.expansion());
    }
    return !(expansion instanceof Token);
  }

  private static double cost(double share) {
    return -Math.log(share);
  }

  private void empty(int from, int to, double cost) {
    add(new Arc(from, to, null, null, (float) cost));
  }

  private void add(Arc arc) {
    arcs.add(arc);
  }
}
