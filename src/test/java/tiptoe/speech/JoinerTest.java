package tiptoe.speech;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What a short pause tears apart is put together, and nothing else. */
class JoinerTest {
  private static final List<String> NUMBER =
      List.of("weight", "three", "thousand", "four", "hundred");

  private final Joiner joiner =
      new Joiner(
          new Joiner.Phrases() {
            @Override
            public boolean mayGoOn(List<String> words) {
              return words.size() >= 3 && words.size() < NUMBER.size() && isBeginning(words);
            }

            @Override
            public boolean goesOnWith(List<String> words, String next) {
              return isBeginning(words) && NUMBER.indexOf(next) == words.size();
            }

            private boolean isBeginning(List<String> words) {
              return words.size() <= NUMBER.size() && NUMBER.subList(0, words.size()).equals(words);
            }
          });

  private static Hypothesis said(double start, String... texts) {
    List<Word> words = new ArrayList<>();
    for (String text : texts) {
      double at = start + 0.5 * words.size();
      words.add(new Word(text, at, at + 0.5, 1));
    }
    return Hypothesis.of(words);
  }

  private static List<String> texts(List<Hypothesis> utterances) {
    return utterances.stream().map(Hypothesis::text).toList();
  }

  @Test
  void aNumberTornByAPauseIsOneNumber() {
    assertEquals(List.of(), joiner.hear(said(0, "weight", "three", "thousand")));
    assertEquals(
        List.of("weight three thousand four hundred"),
        texts(joiner.hear(said(2.2, "four", "hundred"))));
  }

  @Test
  void whatCannotGoOnIsGivenAtOnce() {
    assertEquals(List.of("anus patent"), texts(joiner.hear(said(0, "anus", "patent"))));
  }

  @Test
  void aNumberThatNothingFollowsIsGivenAfterAMoment() {
    joiner.hear(said(0, "weight", "three", "thousand"));
    assertEquals(List.of(), joiner.wait(2.2, false, false));
    assertEquals(List.of(), joiner.wait(2.4, true, false));
    assertEquals(List.of("weight three thousand"), texts(joiner.wait(2.4, false, false)));
    assertEquals(List.of(), joiner.wait(9, false, false));
  }

  @Test
  void whereAllIsQuietTheMomentIsShorter() {
    joiner.hear(said(0, "weight", "three", "thousand"));
    assertEquals(List.of(), joiner.wait(2, false, true));
    assertEquals(List.of(), joiner.wait(2.2, true, true));
    assertEquals(List.of("weight three thousand"), texts(joiner.wait(2.2, false, true)));
  }

  @Test
  void whatDoesNotBelongToTheNumberLeavesItWhole() {
    joiner.hear(said(0, "weight", "three", "thousand"));
    assertEquals(
        List.of("weight three thousand", "anus patent"),
        texts(joiner.hear(said(2, "anus", "patent"))));
  }

  @Test
  void whatComesTooLateIsSaidForItself() {
    joiner.hear(said(0, "weight", "three", "thousand"));
    assertEquals(
        List.of("weight three thousand", "four hundred"),
        texts(joiner.hear(said(1.5 + Joiner.LONGEST_PAUSE + 0.1, "four", "hundred"))));
  }

  @Test
  void fillerIsNeverJoined() {
    joiner.hear(said(0, "weight", "three", "thousand"));
    assertEquals(
        List.of("weight three thousand", "four hundred"),
        texts(joiner.hear(said(2, Hypothesis.FILLER, "four", "hundred"))));
  }

  @Test
  void whatIsHeldBackIsGivenAtTheEnd() {
    joiner.hear(said(0, "weight", "three", "thousand"));
    assertEquals(List.of("weight three thousand"), texts(joiner.end()));
    assertEquals(List.of(), joiner.end());
  }
}
