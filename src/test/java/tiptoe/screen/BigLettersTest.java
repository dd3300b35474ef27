package tiptoe.screen;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import tiptoe.protocol.Protocol;

class BigLettersTest {
  private static final String ALL = "ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789?!.,:;-/'%()";

  private static Stream<Glyphs> glyphs() {
    return Stream.of(Glyphs.BLOCKS, Glyphs.ASCII);
  }

  // O and 0, S and 5 stand in words and numbers only, but still must not be the same.
  @ParameterizedTest
  @MethodSource("glyphs")
  void noTwoLettersLookTheSame(Glyphs glyphs) {
    long shapes =
        ALL.chars()
            .mapToObj(letter -> BigLetters.fit(Character.toString(letter), 4, 5, glyphs))
            .distinct()
            .count();
    assertEquals(ALL.length(), shapes);
  }

  @Test
  void drawsTwoDotsToACellWhereThereAreHalfBlocks() {
    assertEquals(
        List.of("█   ▀█▀", "█    █", "▀▀▀ ▀▀▀"), BigLetters.fit("li", 8, 3, Glyphs.BLOCKS));
  }

  @Test
  void drawsOneDotToACellInAscii() {
    assertEquals(
        List.of("#   ###", "#    #", "#    #", "#    #", "### ###"),
        BigLetters.fit("li", 8, 5, Glyphs.ASCII));
  }

  @Test
  void breaksBetweenWordsAndGivesUpWhereThereIsNoRoom() {
    assertEquals(7, BigLetters.fit("left hip", 19, 7, Glyphs.BLOCKS).size());
    assertEquals(List.of(), BigLetters.fit("left hip", 19, 6, Glyphs.BLOCKS));
    assertEquals(List.of(), BigLetters.fit("ortolani", 19, 20, Glyphs.BLOCKS));
  }

  @Test
  void everyNameOfAStepCanBeDrawn() {
    Protocol.standard()
        .steps()
        .forEach(
            step -> assertTrue(BigLetters.fit(step.label(), 80, 20, Glyphs.BLOCKS).size() >= 3));
  }
}
