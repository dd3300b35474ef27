package tiptoe.screen;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class PagesTest {
  private static List<List<Line>> blocks(String... blocks) {
    return Arrays.stream(blocks)
        .map(block -> block.chars().mapToObj(letter -> new Line("" + (char) letter, Ink.PLAIN)))
        .map(lines -> lines.toList())
        .toList();
  }

  private static String at(int second, int rows, String... blocks) {
    return String.join(
        "", Pages.at(blocks(blocks), rows, second).stream().map(Line::text).toList());
  }

  @Test
  void whatFitsStaysAsItIs() {
    assertEquals("abcd", at(0, 4, "ab", "cd"));
    assertEquals("abcd", at(7 * Pages.SECONDS, 4, "ab", "cd"));
  }

  @Test
  void whatDoesNotFitTakesTurnsWithoutPartingABlock() {
    assertEquals("ab  page 1 of 2", at(0, 4, "ab", "cd", "e"));
    assertEquals("cde  page 2 of 2", at(Pages.SECONDS, 4, "ab", "cd", "e"));
    assertEquals("ab  page 1 of 2", at(2 * Pages.SECONDS, 4, "ab", "cd", "e"));
  }

  @Test
  void aBlockThatIsTooLongIsPartedAndLosesNothing() {
    String read =
        String.join(
            "",
            IntStream.range(0, 3)
                .mapToObj(
                    page -> at(page * Pages.SECONDS, 3, "abcde").substring(0, page == 2 ? 1 : 2))
                .toList());
    assertEquals("abcde", read);
  }

  @Test
  void noRoomGivesNothing() {
    assertEquals("", at(0, 0, "ab"));
    assertEquals("a", at(0, 1, "ab"));
  }
}
