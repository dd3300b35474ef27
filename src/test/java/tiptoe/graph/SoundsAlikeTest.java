package tiptoe.graph;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tiptoe.grammar.WordAutomaton;
import tiptoe.grammar.WordAutomaton.Arc;
import tiptoe.grammar.WordAutomaton.State;

/** Distances counted by hand. */
class SoundsAlikeTest {
  private static final float NEVER = Float.POSITIVE_INFINITY;

  /** "left hip", "lift". */
  private static final WordAutomaton PHRASES =
      new WordAutomaton(
          List.of(
              new State(NEVER, List.of(new Arc("left", 0, 1), new Arc("lift", 0, 2))),
              new State(NEVER, List.of(new Arc("hip", 0, 2))),
              new State(0, List.of())));

  private static Pronunciation sound(String phones) {
    return new Pronunciation(
        Arrays.stream(phones.split(" ")).map(name -> Phone.parse(name).orElseThrow()).toList());
  }

  private static List<Pronunciation> said(String word) {
    return switch (word) {
      case "left" -> List.of(sound("L EH F T"));
      case "lift" -> List.of(sound("L IH F T"));
      default -> List.of(sound("HH IH P"));
    };
  }

  @ParameterizedTest
  @CsvSource({
    "L EH F T, L EH F T, 0",
    "L EH F T, L EH F D, 0.5",
    "L EH F T, L EH F K, 1",
    "L EH F T, L EH F, 1",
    "L EH F T, R IH P, 4",
  })
  void countsPhonesLeftOutAddedOrReplaced(String one, String other, double distance) {
    assertEquals(distance, SoundsAlike.distance(sound(one), sound(other)));
    assertEquals(distance, SoundsAlike.distance(sound(other), sound(one)));
  }

  @Test
  void findsAWordThatCanBeSaidInTheSamePlace() {
    assertEquals(
        List.of(new SoundsAlike.Alike("left", sound("L EH F T"), 0, true)),
        SoundsAlike.find(PHRASES, SoundsAlikeTest::said, "lift", sound("L EH F T")));
  }

  @Test
  void tellsOfAWordThatIsSaidElsewhere() {
    assertEquals(
        List.of(new SoundsAlike.Alike("hip", sound("HH IH P"), 0.5, false)),
        SoundsAlike.find(PHRASES, SoundsAlikeTest::said, "left", sound("HH IH B")));
  }

  @Test
  void isSilentAboutASoundOfItsOwn() {
    assertEquals(
        List.of(), SoundsAlike.find(PHRASES, SoundsAlikeTest::said, "left", sound("K AO Z")));
  }
}
