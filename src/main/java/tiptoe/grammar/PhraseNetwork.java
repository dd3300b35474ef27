package tiptoe.grammar;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import java.util.Random;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.function.ToIntFunction;

/**
 * The phrases of a grammar's root rule as a network of words and tags, with every rule reference
 * and repeat expanded in place. Safe to use from several threads.
 */
public final class PhraseNetwork {
  static final int START = 0;

  /**
   * One step of the network: a word, a tag, or neither.
   *
   * @param word lower case, or null
   * @param tag text of a tag, or null
   * @param cost natural-log penalty, 0 or more
   */
  record Arc(int from, int to, String word, String tag, float cost) {}

  /**
   * What can be said after some words.
   *
   * @param words words that carry on a phrase already begun, in alphabetical order
   * @param mayEnd whether the words so far may stand as complete phrases, so that a new phrase can
   *     begin
   */
  public record Following(SortedSet<String> words, boolean mayEnd) {}

  /** A phrase as words with its tags in place. */
  public record Path(List<String> words, List<Parse.Item> items) {
    public Path {
      words = List.copyOf(words);
      items = List.copyOf(items);
    }
  }

  private final List<List<Arc>> arcs;
  private final int end;
  private final Closures closures = new Closures(this);

  private PhraseNetwork(List<List<Arc>> arcs, int end) {
    this.arcs = arcs;
    this.end = end;
  }

  /**
   * The network of the root rule.
   *
   * @throws IllegalArgumentException if the set has problems
   */
  public static PhraseNetwork of(GrammarSet set) {
    checkSound(set);
    return NetworkBuilder.build(set, set.root().orElseThrow());
  }

  /**
   * The network of any rule of the set.
   *
   * @param file name of the grammar file
   * @param rule name of the rule without {@code $}
   * @throws IllegalArgumentException if the set has problems or no such rule
   */
  public static PhraseNetwork of(GrammarSet set, String file, String rule) {
    checkSound(set);
    return set.target(file, rule)
        .map(target -> NetworkBuilder.build(set, target))
        .orElseThrow(
            () -> new IllegalArgumentException("expected a rule of " + file + ", found $" + rule));
  }

  private static void checkSound(GrammarSet set) {
    if (!set.problems().isEmpty()) {
      throw new IllegalArgumentException(
          "expected a grammar without problems, found " + set.problems().get(0));
    }
  }

  /** The same network without states that no phrase can pass through, numbered anew. */
  static PhraseNetwork trimmed(int states, List<Arc> arcs) {
    BitSet useful = reach(states, arcs, START, Arc::from, Arc::to);
    useful.and(reach(states, arcs, 1, Arc::to, Arc::from));
    useful.set(START);
    int[] number = new int[states];
    Arrays.fill(number, -1);
    int next = 0;
    for (int state = useful.nextSetBit(0); state >= 0; state = useful.nextSetBit(state + 1)) {
      number[state] = next++;
    }
    List<List<Arc>> kept = new ArrayList<>();
    for (int i = 0; i < next; i++) {
      kept.add(new ArrayList<>(1));
    }
    for (Arc arc : arcs) {
      int from = number[arc.from];
      int to = number[arc.to];
      if (from >= 0 && to >= 0) {
        kept.get(from).add(new Arc(from, to, arc.word, arc.tag, arc.cost));
      }
    }
    return new PhraseNetwork(kept, number[1]);
  }

  private static BitSet reach(
      int states, List<Arc> arcs, int start, ToIntFunction<Arc> tail, ToIntFunction<Arc> head) {
    List<List<Arc>> byTail = new ArrayList<>();
    for (int i = 0; i < states; i++) {
      byTail.add(new ArrayList<>(1));
    }
    arcs.forEach(arc -> byTail.get(tail.applyAsInt(arc)).add(arc));
    BitSet reached = new BitSet(states);
    List<Integer> waiting = new ArrayList<>(List.of(start));
    while (!waiting.isEmpty()) {
      int state = waiting.remove(waiting.size() - 1);
      if (!reached.get(state)) {
        reached.set(state);
        byTail.get(state).forEach(arc -> waiting.add(head.applyAsInt(arc)));
      }
    }
    return reached;
  }

  /** Number of states. */
  public int stateCount() {
    return arcs.size();
  }

  /** Number of arcs, with empty ones and tags. */
  public int arcCount() {
    return arcs.stream().mapToInt(List::size).sum();
  }

  /** Every word that can be said, in alphabetical order. */
  public SortedSet<String> words() {
    SortedSet<String> words = new TreeSet<>();
    arcs.forEach(from -> from.stream().filter(a -> a.word != null).forEach(a -> words.add(a.word)));
    return words;
  }

  /**
   * The best division of the words into phrases: fewest uncovered words, then fewest phrases, then
   * lowest cost; of equals, what the grammar names first. Case does not matter.
   */
  public Parse parse(List<String> words) {
    return new PhraseParser(this, words).parse();
  }

  /** What can be said after these words, whose last ones may be the beginning of a phrase. */
  public Following following(List<String> words) {
    return new PhraseParser(this, words).following();
  }

  /** Words that can begin a phrase, in alphabetical order. */
  public SortedSet<String> firstWords() {
    return new TreeSet<>(closures.of(START).exits().keySet());
  }

  /**
   * Phrases that together walk every arc at least once, unless the limit stops them first; the same
   * for the same random numbers.
   *
   * @param limit most phrases, 1 or more
   */
  public List<Path> paths(Random random, int limit) {
    return new PathSampler(this, random).cover(limit);
  }

  /** One phrase at random: at every branch each arc is as likely as its cost says. */
  public Path samplePath(Random random) {
    return new PathSampler(this, random).sample();
  }

  /**
   * The same phrases without tags, deterministic and minimal. The cost of a phrase is that of its
   * cheapest reading, to 1/1024 an arc; only where loops of different cost cover the same words can
   * an unlikely reading be rated cheaper than it is.
   *
   * @throws IllegalArgumentException if it would have more than half a million states
   */
  public WordAutomaton automaton() {
    return Determiniser.automaton(this);
  }

  List<Arc> arcsFrom(int state) {
    return arcs.get(state);
  }

  /** The state in which a phrase ends; −1 when there is no phrase at all. */
  int end() {
    return end;
  }

  Closures closures() {
    return closures;
  }
}
