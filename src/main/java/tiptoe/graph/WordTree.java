package tiptoe.graph;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.function.ToIntFunction;
import tiptoe.grammar.WordAutomaton;

/**
 * The words that can follow at one place of a phrase, as a tree of phones: words that begin alike
 * share their beginning. The word label and the word's cost stand as near to the root as they are
 * certain. No word ends inside another, since a last phone has a variant of its own.
 */
final class WordTree {

  /** The end of a word: its label, the cost of the whole word, the word state it leads to. */
  record Ending(int word, float cost, int next) {}

  /** A place in the tree: behind a phone, or the root. */
  static final class Node {
    final int phone;
    final Map<Integer, Node> children = new TreeMap<>();
    final List<Ending> endings = new ArrayList<>(1);
    private float least = Float.POSITIVE_INFINITY;
    private int word = NONE;

    private Node(int phone) {
      this.phone = phone;
    }

    /** Cost of the likeliest word below. */
    float least() {
      return least;
    }

    /** The label of the only word below, 0 if there are several. */
    int word() {
      return Math.max(word, 0);
    }

    private void note(Ending ending) {
      least = Math.min(least, ending.cost);
      word = word == NONE || word == ending.word ? ending.word : SEVERAL;
    }
  }

  private static final int NONE = -1;
  private static final int SEVERAL = 0;

  private final Node root = new Node(0);

  /**
   * Builds the tree of the words that leave a state.
   *
   * @param costScale factor on the words' costs
   */
  WordTree(
      WordAutomaton.State state,
      ToIntFunction<String> labels,
      Function<String, List<Pronunciation>> pronunciations,
      float costScale) {
    List<WordAutomaton.Arc> arcs = new ArrayList<>(state.arcs());
    arcs.sort(Comparator.comparing(WordAutomaton.Arc::word));
    for (WordAutomaton.Arc arc : arcs) {
      Ending ending = new Ending(labels.applyAsInt(arc.word()), arc.cost() * costScale, arc.next());
      pronunciations.apply(arc.word()).forEach(p -> add(p.ids(), ending));
    }
  }

  private void add(int[] phones, Ending ending) {
    Node node = root;
    node.note(ending);
    for (int phone : phones) {
      node = node.children.computeIfAbsent(phone, Node::new);
      node.note(ending);
    }
    node.endings.add(ending);
  }

  Node root() {
    return root;
  }
}
