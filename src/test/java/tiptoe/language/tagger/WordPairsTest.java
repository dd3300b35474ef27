package tiptoe.language.tagger;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import tiptoe.grammar.GrammarSet;
import tiptoe.grammar.PhraseNetwork;
import tiptoe.grammar.WordAutomaton;
import tiptoe.language.TypedText;
import tiptoe.protocol.Protocol;

/** Which word follows which; the sentences are common practice, no source. */
class WordPairsTest {
  private static PhraseNetwork network;
  private static TypedText typed;
  private static WordAutomaton pairs;

  @BeforeAll
  static void count() throws IOException {
    network = PhraseNetwork.of(GrammarSet.load(Path.of("grammars"), "exam.gram"));
    typed = TypedText.load(Path.of("grammars/spellings.txt"));
    pairs = automaton(word -> true);
  }

  private static WordAutomaton automaton(java.util.function.Predicate<String> sayable)
      throws IOException {
    return WordPairs.automaton(network, Protocol.standard(), typed, sayable);
  }

  private static Set<String> words(WordAutomaton automaton) {
    return automaton.states().get(0).arcs().stream()
        .map(WordAutomaton.Arc::word)
        .collect(Collectors.toSet());
  }

  @Test
  void holdsTheWordsOfTheGrammarsOfTheLayLexiconAndCommonOnes() throws IOException {
    Set<String> words = words(pairs);
    assertTrue(words.containsAll(network.words()));
    assertTrue(words.containsAll(WordPairs.commonWords()));
    assertTrue(words.containsAll(List.of("tummy", "droops", "bloated")));
  }

  @Test
  void leavesOutWhatNobodyCanSay() throws IOException {
    assertFalse(words(automaton(word -> !word.equals("clavicle"))).contains("clavicle"));
  }

  /** As a probability: the ways out of a state add up to 1, ending being one of them. */
  @Test
  void theWaysOutOfEachWordAddUpToOne() {
    List<WordAutomaton.State> states = pairs.states();
    double first = 0;
    for (WordAutomaton.Arc arc : states.get(0).arcs()) {
      first += Math.exp(-arc.cost());
    }
    assertEquals(1, first, 1e-3);
    for (WordAutomaton.State state : states.subList(1, states.size())) {
      double seen = 0;
      double again = 0;
      for (WordAutomaton.Arc arc : state.arcs()) {
        seen += Math.exp(-arc.cost());
        again += Math.exp(-cost(arc.word())) * Math.exp(-state.finalCost());
      }
      // A word that was seen behind another can also be reached by backing off.
      assertEquals(1, seen - again + Math.exp(-state.finalCost()), 1e-3);
    }
  }

  private static double cost(String word) {
    return pairs.states().get(0).arcs().stream()
        .filter(arc -> arc.word().equals(word))
        .findFirst()
        .orElseThrow()
        .cost();
  }

  @Test
  void aWordThatOftenFollowsIsLikelierThanOneThatDoesNot() {
    assertTrue(behind("left", "clavicle") < behind("left", "grams"));
  }

  private static double behind(String word, String next) {
    WordAutomaton.State state =
        pairs
            .states()
            .get(
                pairs.states().get(0).arcs().stream()
                    .filter(arc -> arc.word().equals(word))
                    .findFirst()
                    .orElseThrow()
                    .next());
    return state.arcs().stream()
        .filter(arc -> arc.word().equals(next))
        .mapToDouble(WordAutomaton.Arc::cost)
        .findFirst()
        .orElse(state.finalCost() + cost(next));
  }

  @Test
  void isTheSameEachTime() throws IOException {
    assertEquals(pairs, automaton(word -> true));
  }
}
