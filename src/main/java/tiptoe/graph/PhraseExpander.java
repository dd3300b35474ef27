package tiptoe.graph;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.IntUnaryOperator;
import tiptoe.grammar.WordAutomaton;
import tiptoe.graph.DecodingGraph.Arc;
import tiptoe.graph.DecodingGraph.State;
import tiptoe.graph.WordTree.Ending;
import tiptoe.graph.WordTree.Node;

/**
 * Expands the words of one phrase to phones in context. A word state is expanded once for each
 * phone that may precede it; behind a word's first phone, only the transition-id that entered it
 * still tells the contexts apart.
 */
final class PhraseExpander {
  /** Up to so many arcs are copied to where they are needed; more are put behind an empty arc. */
  private static final int MOST_COPIED = 6;

  private record Context(int wordState, int left) {}

  private final PhoneContexts contexts;
  private final SharedStates states;
  private final GraphSettings settings;
  private final IntUnaryOperator phraseEnd;
  private final Map<Context, List<Arc>> expanded = new HashMap<>();
  private final Map<Context, Integer> reserved = new HashMap<>();
  private final Map<Node, List<Arc>> inside = new HashMap<>();

  /**
   * @param phraseEnd gives the state at the end of a phrase for its last phone
   */
  PhraseExpander(
      PhoneContexts contexts,
      SharedStates states,
      GraphSettings settings,
      IntUnaryOperator phraseEnd) {
    this.contexts = contexts;
    this.states = states;
    this.settings = settings;
    this.phraseEnd = phraseEnd;
  }

  /**
   * Expands what follows in a word state after each of the phones.
   *
   * @param words the words that leave the state
   * @param lefts the phones that may end the word before
   */
  void expand(int number, WordAutomaton.State state, WordTree words, Collection<Integer> lefts) {
    boolean goesOn = !state.arcs().isEmpty() && !lefts.isEmpty();
    List<Arc> pause = goesOn ? List.of(pauseBefore(words)) : List.of();
    for (int left : lefts) {
      List<Arc> onward = new ArrayList<>();
      if (goesOn) {
        onward.addAll(compact(begin(words, left)));
        onward.addAll(pause);
      }
      if (state.backOff() != null) {
        float cost = state.backOff().cost() * settings.grammarScale();
        onward.add(Arc.empty(cost, at(state.backOff().next(), left)));
      }
      if (state.isFinal()) {
        float cost = state.finalCost() * settings.grammarScale() + settings.phrase();
        onward.add(Arc.empty(cost, phraseEnd.applyAsInt(left)));
      }
      keep(new Context(number, left), onward);
    }
    inside.clear();
  }

  private Arc pauseBefore(WordTree words) {
    int silence = contexts.forward(Phone.SILENCE, Phone.SILENCE);
    int pausing = states.sounding(silence, compact(begin(words, Phone.SILENCE)));
    return new Arc(silence, 0, settings.silence() + PhoneCosts.TRANSITION, pausing);
  }

  private void keep(Context context, List<Arc> onward) {
    expanded.put(context, onward);
    Integer hub = reserved.get(context);
    if (hub != null) {
      states.fill(hub, State.of(onward));
    }
  }

  private List<Arc> compact(List<Arc> arcs) {
    return arcs.size() <= MOST_COPIED ? arcs : List.of(Arc.empty(0, states.share(State.of(arcs))));
  }

  /** The arcs that begin the words of a tree after a phone. */
  List<Arc> begin(WordTree words, int left) {
    List<Arc> arcs = new ArrayList<>();
    for (Node child : words.root().children.values()) {
      addInto(child, left, 0, 0, arcs);
    }
    return arcs;
  }

  private void addInto(Node node, int left, float paid, int said, List<Arc> arcs) {
    int in = contexts.forward(left, node.phone);
    for (Ending ending : node.endings) {
      float cost = ending.cost() - paid + PhoneCosts.TRANSITION;
      int behind = states.sounding(in, onward(new Context(ending.next(), node.phone)));
      arcs.add(new Arc(in, said == 0 ? ending.word() : 0, cost, behind));
    }
    if (!node.children.isEmpty()) {
      float cost = node.least() - paid + PhoneCosts.TRANSITION;
      int out = said == 0 ? node.word() : 0;
      arcs.add(new Arc(in, out, cost, states.sounding(in, inside(node))));
    }
  }

  private List<Arc> inside(Node node) {
    List<Arc> known = inside.get(node);
    if (known == null) {
      known = new ArrayList<>();
      for (Node child : node.children.values()) {
        addInto(child, node.phone, node.least(), node.word(), known);
      }
      inside.put(node, known);
    }
    return known;
  }

  /** The state in which what follows in a word state after a phone is said. */
  int at(int wordState, int left) {
    Context context = new Context(wordState, left);
    List<Arc> known = expanded.get(context);
    return known == null || reserved.containsKey(context)
        ? reserved.computeIfAbsent(context, c -> states.reserve())
        : states.share(State.of(known));
  }

  /** What follows a word; where that is not expanded yet, the phrase has a loop there. */
  private List<Arc> onward(Context context) {
    List<Arc> known = expanded.get(context);
    return known != null
        ? known
        : List.of(Arc.empty(0, reserved.computeIfAbsent(context, c -> states.reserve())));
  }
}
