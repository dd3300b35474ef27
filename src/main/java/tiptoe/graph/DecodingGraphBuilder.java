package tiptoe.graph;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedSet;
import java.util.TreeSet;
import tiptoe.grammar.WordAutomaton;
import tiptoe.graph.DecodingGraph.Arc;
import tiptoe.graph.DecodingGraph.State;

/**
 * Builds the decoding graph of an utterance: phrases and filler in any number and order, with
 * optional silence between words.
 */
public final class DecodingGraphBuilder {
  private final AcousticModel model;
  private final Pronunciations pronunciations;
  private final Map<String, List<Pronunciation>> sayable = new HashMap<>();
  private final GraphSettings settings;
  private final SharedStates states = new SharedStates();
  private final Map<Integer, Integer> boundaries = new LinkedHashMap<>();
  private final Deque<Integer> openBoundaries = new ArrayDeque<>();

  private DecodingGraphBuilder(
      AcousticModel model, Pronunciations pronunciations, GraphSettings settings) {
    this.model = model;
    this.pronunciations = pronunciations;
    this.settings = settings;
  }

  /**
   * Builds the graph.
   *
   * @param phrases the words of one phrase; each must have a pronunciation
   */
  public static DecodingGraph build(
      WordAutomaton phrases,
      Pronunciations pronunciations,
      AcousticModel model,
      GraphSettings settings) {
    return new DecodingGraphBuilder(model, pronunciations, settings).build(phrases);
  }

  private DecodingGraph build(WordAutomaton phrases) {
    List<String> words = labels(phrases);
    Map<String, Integer> labels = new HashMap<>();
    for (int label = 0; label < words.size(); label++) {
      labels.put(words.get(label), label);
    }
    PhraseExpander expander =
        new PhraseExpander(model.contexts(), states, settings, this::boundary);
    List<SortedSet<Integer>> lefts = lastPhonesBefore(phrases);
    WordTree first = null;
    for (int number : endsFirst(phrases)) {
      WordAutomaton.State state = phrases.states().get(number);
      WordTree tree = new WordTree(state, labels::get, this::sayable, settings.grammarScale());
      expander.expand(number, state, tree, lefts.get(number));
      if (number == 0) {
        first = tree;
      }
    }
    int start = closeBoundaries(expander, first);
    return new DecodingGraph(
        phrases.opening() == 0 ? start : expander.at(phrases.opening(), 0), states.states(), words);
  }

  private List<Pronunciation> sayable(String word) {
    return sayable.computeIfAbsent(
        word,
        w -> {
          List<Pronunciation> all = pronunciations.of(w).stream().filter(model::canSay).toList();
          if (all.isEmpty()) {
            throw new IllegalArgumentException("expected a pronunciation of " + w + ", found none");
          }
          return all;
        });
  }

  private static List<String> labels(WordAutomaton phrases) {
    SortedSet<String> said = new TreeSet<>();
    phrases.states().forEach(state -> state.arcs().forEach(arc -> said.add(arc.word())));
    List<String> words = new ArrayList<>(List.of("<eps>", DecodingGraph.FILLER));
    words.addAll(said);
    return words;
  }

  /** The state between phrases behind a phone; 0 stands for the start of the utterance. */
  private int boundary(int left) {
    return boundaries.computeIfAbsent(
        left,
        phone -> {
          openBoundaries.add(phone);
          return states.reserve();
        });
  }

  /** Fills the states between phrases, and gives the first of them. */
  private int closeBoundaries(PhraseExpander expander, WordTree first) {
    int start = boundary(0);
    FillerLoop filler = new FillerLoop(model.contexts(), states, settings, this::boundary);
    int silence = model.contexts().forward(Phone.SILENCE, Phone.SILENCE);
    int pausing = states.sounding(silence, List.of(Arc.empty(0, boundary(Phone.SILENCE))));
    while (!openBoundaries.isEmpty()) {
      int left = openBoundaries.remove();
      List<Arc> arcs = new ArrayList<>(expander.begin(first, left));
      arcs.addAll(filler.begin(left));
      if (left != Phone.SILENCE) {
        float cost = settings.silence() + PhoneCosts.TRANSITION;
        arcs.add(new Arc(silence, 0, cost, pausing));
      }
      states.fill(boundaries.get(left), new State(0, arcs));
    }
    return start;
  }

  /** For each word state, the phones on which a word that leads there may end. */
  private List<SortedSet<Integer>> lastPhonesBefore(WordAutomaton phrases) {
    List<SortedSet<Integer>> lefts = new ArrayList<>();
    phrases.states().forEach(state -> lefts.add(new TreeSet<>()));
    for (WordAutomaton.State state : phrases.states()) {
      for (WordAutomaton.Arc arc : state.arcs()) {
        for (Pronunciation pronunciation : sayable(arc.word())) {
          int[] ids = pronunciation.ids();
          lefts.get(arc.next()).add(ids[ids.length - 1]);
        }
      }
    }
    if (phrases.opening() != 0) {
      lefts.get(phrases.opening()).add(0);
    }
    // What is backed off to comes behind the same words; it may back off itself.
    boolean more = true;
    while (more) {
      more = false;
      for (int number = 0; number < lefts.size(); number++) {
        WordAutomaton.BackOff backOff = phrases.states().get(number).backOff();
        more |= backOff != null && lefts.get(backOff.next()).addAll(lefts.get(number));
      }
    }
    return lefts;
  }

  /** The word states, each behind those it leads to except where a phrase has a loop. */
  private static List<Integer> endsFirst(WordAutomaton phrases) {
    List<Integer> order = new ArrayList<>();
    boolean[] seen = new boolean[phrases.states().size()];
    Deque<int[]> path = new ArrayDeque<>(); // word state, next arc to look at
    path.push(new int[] {0, 0});
    seen[0] = true;
    while (!path.isEmpty() || !seen[phrases.opening()]) {
      if (path.isEmpty()) {
        path.push(new int[] {phrases.opening(), 0});
        seen[phrases.opening()] = true;
      }
      int[] top = path.peek();
      List<WordAutomaton.Arc> arcs = phrases.states().get(top[0]).arcs();
      if (top[1] == arcs.size()) {
        order.add(top[0]);
        path.pop();
      } else {
        int next = arcs.get(top[1]++).next();
        if (!seen[next]) {
          seen[next] = true;
          path.push(new int[] {next, 0});
        }
      }
    }
    return order;
  }
}
