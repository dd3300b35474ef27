package tiptoe.graph;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;

class MissingWordTest {
  @Test
  void namesEachWordThatCannotBeSaidAndAPhraseThatHoldsIt() {
    List<MissingWord> missing =
        MissingWord.find(
            Words.of("no zzyzy today", "zzyzy present on the left", "skin pink"),
            word -> !word.equals("zzyzy"));

    assertEquals(List.of(new MissingWord("zzyzy", "zzyzy present on the left")), missing);
    assertEquals(
        "expected a pronunciation of \"zzyzy\" in pronunciations.txt or the model"
            + " (phrase: zzyzy present on the left), found none",
        missing.get(0).toString());
  }

  @Test
  void findsNothingWhenAllCanBeSaid() {
    assertEquals(List.of(), MissingWord.find(Words.of("skin pink"), word -> true));
  }
}
