package tiptoe.graph;

import java.io.IOException;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;

/**
 * The pronunciations of the model's own vocabulary. The lexicon is not among its files, but its
 * run-time graph spells every word in phones, so they are read off that graph.
 */
public final class Lexicon {
  private static final int LONGEST = 30;
  private static final long MOST_STEPS_PER_ARC = 100;

  private final Map<String, List<Pronunciation>> words;
  private final Map<String, Integer> sounds;
  private final int pronunciations;

  private Lexicon(Map<String, List<Pronunciation>> words, Map<String, Integer> sounds) {
    this.words = words;
    this.sounds = sounds;
    this.pronunciations = words.values().stream().mapToInt(List::size).sum();
  }

  static Lexicon recover(ConstFst graph, SymbolTable symbols, TransitionModel transitions)
      throws IOException {
    Walk walk = new Walk(graph, symbols, transitions);
    walk.run();
    return new Lexicon(walk.words, walk.sounds);
  }

  /** The pronunciations of a word, none for a word that the model does not have. */
  public List<Pronunciation> of(String word) {
    return words.getOrDefault(word, List.of());
  }

  public Set<String> words() {
    return words.keySet();
  }

  /**
   * The entries that are no speech, such as {@code [unk]}, with the noise phone each stands for.
   */
  public Map<String, Integer> sounds() {
    return sounds;
  }

  /** How many pronunciations there are over all words. */
  public int pronunciations() {
    return pronunciations;
  }

  /** A place on the way through one word. */
  private record Step(int state, Spelled phones, int label, boolean complete) {}

  /** Phones so far, last one first. */
  private record Spelled(Phone last, Spelled before, int length) {
    Pronunciation pronunciation() {
      Phone[] phones = new Phone[length];
      for (Spelled s = this; s != null; s = s.before) {
        phones[s.length - 1] = s.last;
      }
      return new Pronunciation(List.of(phones));
    }
  }

  /** The walk over every word, from the state behind the initial silence. */
  private static final class Walk {
    private final ConstFst graph;
    private final SymbolTable symbols;
    private final TransitionModel transitions;
    private final Map<String, List<Pronunciation>> words = new HashMap<>(1 << 18);
    private final Map<String, Integer> sounds = new TreeMap<>();
    private final Deque<Step> open = new ArrayDeque<>();

    Walk(ConstFst graph, SymbolTable symbols, TransitionModel transitions) {
      this.graph = graph;
      this.symbols = symbols;
      this.transitions = transitions;
    }

    void run() throws IOException {
      open.push(new Step(behindSilence(), null, 0, false));
      // A damaged graph may lead round in circles without a phone.
      for (long left = MOST_STEPS_PER_ARC * graph.arcs(); !open.isEmpty(); left--) {
        if (left == 0) {
          throw new UnusableModelException(
              "expected %s to spell a word at a time, found no end of one"
                  .formatted(ModelFolder.GRAPH));
        }
        Step step = open.pop();
        if (step.complete && step.label != 0) {
          keep(symbols.symbol(step.label), step.phones.pronunciation());
        } else {
          for (int arc = graph.firstArc(step.state); arc < graph.endArc(step.state); arc++) {
            follow(step, arc);
          }
        }
      }
    }

    private int behindSilence() throws IOException {
      for (int arc = graph.firstArc(graph.start()); arc < graph.endArc(graph.start()); arc++) {
        int label = graph.inLabel(arc);
        if (transitions.isTransitionId(label) && transitions.phoneOf(label) == Phone.SILENCE) {
          return graph.target(arc);
        }
      }
      throw new UnusableModelException(
          "expected a silence at the start of %s, found none".formatted(ModelFolder.GRAPH));
    }

    private void follow(Step from, int arc) {
      int out = graph.outLabel(arc);
      if (out != 0 && !symbols.isWord(out)) {
        return; // #0 leads back to where words start
      }
      int label = from.label != 0 ? from.label : out;
      int in = graph.inLabel(arc);
      if (!transitions.isTransitionId(in)) {
        open.push(new Step(graph.target(arc), from.phones, label, from.complete));
        return;
      }
      // behind the last phone only disambiguation symbols can still bring the word
      if (from.complete || TransitionModel.isSelfLoop(in)) {
        return;
      }
      int id = transitions.phoneOf(in);
      Phone phone = Phone.of(id).orElse(null);
      if (phone == null && from.phones == null && label != 0) {
        sounds.put(symbols.symbol(label), id);
      }
      int length = from.phones == null ? 1 : from.phones.length + 1;
      if (phone != null && length <= LONGEST) {
        boolean last = phone.at(Phone.Place.END) == id || phone.at(Phone.Place.SINGLE) == id;
        Spelled phones = new Spelled(phone, from.phones, length);
        open.push(new Step(graph.target(arc), phones, label, last));
      }
    }

    private void keep(String word, Pronunciation pronunciation) {
      List<Pronunciation> all = words.computeIfAbsent(word, w -> new ArrayList<>(1));
      if (!all.contains(pronunciation)) {
        all.add(pronunciation);
      }
    }
  }
}
