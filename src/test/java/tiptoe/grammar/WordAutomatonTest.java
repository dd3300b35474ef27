package tiptoe.grammar;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;

class WordAutomatonTest {
  /** Costs are whole 1/1024, rounded on every arc. */
  private static final double TOLERANCE = 0.01;

  private static WordAutomaton automaton(String rules) {
    return Grammars.network(rules).automaton();
  }

  @Test
  void sharesBeginningsAndEndings() {
    // red|green|dark green, then lamp|light: 1 start, 1 behind dark, 1 behind the colour, 1 end
    assertEquals(
        4, automaton("$main = (red | green | dark green) (lamp | light);").states().size());
    assertEquals(
        automaton("$main = a b c | x b c;").states().size(),
        automaton("$main = (a | x) b c;").states().size());
  }

  @Test
  void sharesEndingsOfDifferentCost() {
    WordAutomaton automaton = automaton("$main = a (/9/ c | d) | b (/1/ c | d) | e (/9/ c | d);");
    // a and e go on alike, b does not
    assertEquals(4, automaton.states().size());
    assertEquals(-Math.log(0.9 / 3), automaton.cost(List.of("e", "c")), TOLERANCE);
    assertEquals(-Math.log(0.5 / 3), automaton.cost(List.of("b", "c")), TOLERANCE);
  }

  @Test
  void keepsTheWeightOfPhrasesThatBeginAlike() {
    WordAutomaton automaton = automaton("$main = /10/ a b | /1/ a c | /5/ a;");
    assertEquals(-Math.log(10 / 16.), automaton.cost(List.of("a", "b")), TOLERANCE);
    assertEquals(-Math.log(1 / 16.), automaton.cost(List.of("a", "c")), TOLERANCE);
    assertEquals(-Math.log(5 / 16.), automaton.cost(List.of("a")), TOLERANCE);
    assertTrue(Float.isInfinite(automaton.cost(List.of("b"))));
  }

  @Test
  void keepsTheCheapestOfTwoReadings() {
    WordAutomaton automaton = automaton("$main = /3/ a {x} | /1/ a {y};");
    assertEquals(-Math.log(3 / 4.), automaton.cost(List.of("a")), TOLERANCE);
  }

  @Test
  void endsOnLoopsWhoseReadingsDriftApart() {
    WordAutomaton automaton = automaton("$main = (a<1- /.9/> b) | (a<1- /.1/> c);");
    assertTrue(automaton.states().size() < 100, () -> automaton.states().size() + " states");
    assertEquals(
        -Math.log(.5 * .1 * .1 * .9), automaton.cost(List.of("a", "a", "a", "c")), TOLERANCE);
    assertEquals(
        -Math.log(.5 * .9 * .9 * .1), automaton.cost(List.of("a", "a", "a", "b")), TOLERANCE);
    List<String> many = new ArrayList<>(Collections.nCopies(60, "a"));
    many.add("c");
    assertTrue(Float.isFinite(automaton.cost(many)));
  }

  @Test
  void hasCostsOfZeroOrMoreAndWordsInOrder() {
    for (WordAutomaton.State state :
        automaton("$main = (/2/ b | /7/ a | c)<1-3 /.3/> [d] | a a;").states()) {
      assertTrue(state.finalCost() >= 0);
      List<String> words = state.arcs().stream().map(WordAutomaton.Arc::word).toList();
      assertEquals(words.stream().sorted().distinct().toList(), words);
      state.arcs().forEach(arc -> assertTrue(arc.cost() >= 0));
    }
  }

  @Test
  void splitsQuotedTokensAndLowersCase() {
    assertTrue(
        Float.isFinite(
            automaton("$main = \"  New \n York\" O'Hare;").cost(List.of("new", "york", "o'hare"))));
  }
}
