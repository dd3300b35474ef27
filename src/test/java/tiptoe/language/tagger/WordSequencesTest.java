package tiptoe.language.tagger;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import tiptoe.FullOnly;
import tiptoe.TestExtent;
import tiptoe.grammar.PhraseNetwork;
import tiptoe.grammar.WordAutomaton;
import tiptoe.language.Shipped;
import tiptoe.language.TypedText;
import tiptoe.protocol.Protocol;

/** Which word follows which; the sentences are common practice, no source. */
class WordSequencesTest {
  private static final String UNKNOWN = "kidney";

  private static PhraseNetwork network;
  private static TypedText typed;
  private static WordAutomaton pairs;

  @BeforeAll
  static void count() throws IOException {
    network = Shipped.network();
    typed = Shipped.typed();
    pairs = automaton();
  }

  /** Of all words that can be said, which one cannot. */
  private static WordAutomaton automaton() throws IOException {
    return WordSequences.automaton(
        network,
        Protocol.standard(),
        typed,
        word -> !word.equals(UNKNOWN),
        TestExtent.some(WordSequences.said(), 16));
  }

  private static Set<String> words(WordAutomaton automaton) {
    return automaton.states().get(0).arcs().stream()
        .map(WordAutomaton.Arc::word)
        .collect(Collectors.toSet());
  }

  @Test
  void holdsTheWordsOfTheGrammarsOfTheLayLexiconAndCommonOnes() throws IOException {
    Set<String> words = new HashSet<>(words(pairs));
    words.add(UNKNOWN);
    assertTrue(words.containsAll(network.words()));
    assertTrue(words.containsAll(WordShares.shipped().shares().keySet()));
    assertTrue(words.containsAll(List.of("tummy", "droops", "bloated")));
  }

  @Test
  void leavesOutWhatNobodyCanSay() {
    assertTrue(network.words().contains(UNKNOWN));
    assertFalse(words(pairs).contains(UNKNOWN));
  }

  /** As a probability: the ways out of a state add up to 1, backing off being one of them. */
  @Test
  void theWaysOutOfEachStateAddUpToOne() {
    Map<Integer, Map<String, Double>> likely = new HashMap<>();
    for (int number = 0; number < pairs.states().size(); number++) {
      likely.put(number, likely(number));
    }
    assertEquals(1, sum(likely.get(0)), 1e-3);
    for (int number = 1; number < pairs.states().size(); number++) {
      WordAutomaton.State state = pairs.states().get(number);
      boolean backsOff = state.backOff() != null;
      double rest = Math.exp(-(backsOff ? state.backOff().cost() : state.finalCost()));
      int less = backsOff ? state.backOff().next() : 0;
      double again = 0;
      for (String word : likely.get(number).keySet()) {
        again += rest * chance(likely, less, word);
      }
      // A word that was seen behind another can also be reached by backing off.
      double all = sum(likely.get(number)) - again + rest;
      assertTrue(all < 1 + 1e-3);
      // Backing off costs nothing rather than less than that.
      assertTrue(rest == 1 || all > 1 - 1e-3);
    }
  }

  private static Map<String, Double> likely(int state) {
    return pairs.states().get(state).arcs().stream()
        .collect(Collectors.toMap(WordAutomaton.Arc::word, arc -> Math.exp(-arc.cost())));
  }

  private static double sum(Map<String, Double> likely) {
    return likely.values().stream().mapToDouble(Double::doubleValue).sum();
  }

  private static double chance(Map<Integer, Map<String, Double>> likely, int state, String word) {
    Double known = likely.get(state).get(word);
    WordAutomaton.State from = pairs.states().get(state);
    return known != null ? known : Math.exp(-from.finalCost()) * likely.get(0).get(word);
  }

  @Test
  void aWordThatOftenFollowsIsLikelierThanOneThatDoesNot() {
    assertTrue(cost("on the left clavicle") < cost("on the left grams"));
    assertTrue(cost("there is no murmur") < cost("there is no mum"));
  }

  private static float cost(String words) {
    return new WordAutomaton(sentences(), pairs.opening()).cost(List.of(words.split(" ")));
  }

  // Where a word can end a phrase, any other may follow.
  private static List<WordAutomaton.State> sentences() {
    return pairs.states().stream()
        .map(
            state ->
                state.isFinal()
                    ? new WordAutomaton.State(
                        0, state.arcs(), new WordAutomaton.BackOff(state.finalCost(), 0))
                    : new WordAutomaton.State(0, state.arcs(), state.backOff()))
        .toList();
  }

  @Test
  @FullOnly("it is made once")
  void isTheSameEachTime() throws IOException {
    assertEquals(pairs, automaton());
  }
}
