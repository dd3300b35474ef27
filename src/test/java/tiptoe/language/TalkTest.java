package tiptoe.language;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tiptoe.FullOnly;
import tiptoe.finding.Source;
import tiptoe.language.tagger.TalkModelFit;
import tiptoe.protocol.Protocol;

/** Talk told from statements by authors whom the model of talk has not learned from. */
class TalkTest {
  private static final List<String> LEFT_OUT =
      List.of(
          "six in the room",
          "on the hill",
          "in the lane",
          "in Limerick",
          "in Galway",
          "in Lincoln",
          "in Lagos");

  private static SecondReading reading() throws IOException {
    return TalkModelFit.without(heading -> LEFT_OUT.stream().anyMatch(heading::endsWith));
  }

  private static List<String> lines(String file) throws IOException {
    return Files.readAllLines(
        Path.of("src/test/resources/tiptoe/language/natural/written", file + ".txt"));
  }

  private static SentenceBenchmark benchmark(SecondReading reading) throws IOException {
    return new SentenceBenchmark(
        new Interpreter(Shipped.network(), Protocol.standard(), reading), Shipped.typed());
  }

  @Test
  @FullOnly("SentencesTest holds what becomes of talk to its bounds")
  void tellsTalkOfAuthorsItHasNotMet() throws IOException {
    SecondReading reading = reading();
    SentenceBenchmark benchmark = benchmark(reading);
    for (String file : List.of("talk-room", "talk-hill", "talk-lane")) {
      SentenceBenchmark.Count count = benchmark.count(lines(file));
      assertTrue(count.talkRecorded <= 2, count::toString);
      assertTrue(count.talkAsked <= 1, count::toString);
      assertTrue(count.talkOffered <= 10, count::toString);
      assertEquals(0, count.talkCommanded, count::toString);
    }
    SentenceBenchmark unheld = benchmark(TalkModelFit.like(reading, 0));
    for (String file : List.of("anp-lincoln", "midwife-limerick")) {
      SentenceBenchmark.Count held = benchmark.count(lines(file));
      SentenceBenchmark.Count all = unheld.count(lines(file));
      assertTrue(held.recordedRight >= 0.95 * all.recordedRight, () -> held + " of " + all);
      assertTrue(held.missed() <= all.missed() + 0.02 * all.statements, () -> held + " of " + all);
    }
  }

  @Test
  void keepsBackWhatOnlySoundsLikeTalk() throws IOException {
    Interpreter sure =
        new Interpreter(
            Shipped.network(),
            Protocol.standard(),
            TalkModelFit.like(Shipped.tagger(), TalkLimits.shipped().findings().silentFrom()));
    List<String> words = Shipped.typed().utterance("the left arm just hangs there");
    Interpretation read = sure.interpret(words, Dialogue.START, Source.TYPED);
    assertEquals(List.of(), read.meanings());
    assertEquals(Dialogue.START, read.dialogue());
    Interpreter likely =
        new Interpreter(
            Shipped.network(),
            Protocol.standard(),
            TalkModelFit.like(Shipped.tagger(), TalkLimits.shipped().findings().offeredFrom()));
    read = likely.interpret(words, Dialogue.START, Source.TYPED);
    assertEquals(
        List.of("arm-movement"), read.statements().stream().map(one -> one.step()).toList());
    assertTrue(read.howSure().stream().noneMatch(Interpretation.Certainty::sure));
    words = Shipped.typed().utterance("left clavicle crepitus");
    assertEquals(
        List.of("clavicle"),
        sure.interpret(words, Dialogue.START, Source.TYPED).statements().stream()
            .map(one -> one.step())
            .toList(),
        "a phrase is none");
  }

  @Test
  void asksNothingAboutWhatMayBeTalk() throws IOException {
    List<String> words = Shipped.typed().utterance("there's a bit of crepitus at the clavicle");
    assertEquals(1, asked(0, words));
    assertEquals(0, asked(TalkLimits.shipped().unaskedFrom(), words));
  }

  private static int asked(double talk, List<String> words) throws IOException {
    return interpret(talk, words).questions().size();
  }

  private static Interpretation interpret(double talk, List<String> words) throws IOException {
    return new Interpreter(
            Shipped.network(), Protocol.standard(), TalkModelFit.like(Shipped.tagger(), talk))
        .interpret(words, Dialogue.START, Source.TYPED);
  }

  /** What is told of the baby, or was left out, is told in words that talk has too. */
  @ParameterizedTest
  @ValueSource(
      strings = {"they had to put the forceps on at the finish", "i didn't manage a length today"})
  void keepsBackWhatFindsNothingLess(String text) throws IOException {
    List<String> words = Shipped.typed().utterance(text);
    Interpretation read = interpret(TalkLimits.shipped().findings().silentFrom(), words);
    assertEquals(1, read.meanings().size());
    assertTrue(read.howSure().stream().noneMatch(Interpretation.Certainty::sure));
    read = interpret(TalkLimits.shipped().findings().offeredFrom(), words);
    assertEquals(1, read.howSure().size());
    assertTrue(read.howSure().stream().allMatch(Interpretation.Certainty::sure));
  }

  @Test
  void wantsTheLimitsInTheirOrder() {
    assertEquals(
        "expected offered-from of at most 0.5, found 0.6",
        assertThrows(IllegalArgumentException.class, () -> new TalkLimits.Kind(0.6, 0.5))
            .getMessage());
    assertEquals(
        "expected unasked-from of at most 0.5, found 0.6",
        assertThrows(
                IllegalArgumentException.class,
                () -> new TalkLimits(0.6, new TalkLimits.Kind(0.5, 0.5), new TalkLimits.Kind(1, 1)))
            .getMessage());
  }
}
