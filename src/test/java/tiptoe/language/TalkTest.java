package tiptoe.language;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import tiptoe.FullOnly;
import tiptoe.finding.Source;
import tiptoe.language.tagger.TalkModelFit;
import tiptoe.protocol.Protocol;

/** Talk told from statements by authors whom the model of talk has not learned from. */
class TalkTest {
  private static final List<String> LEFT_OUT =
      List.of("six in the room", "in Limerick", "in Galway", "in Lincoln", "in Lagos");

  private static SecondReading reading() throws IOException {
    return TalkModelFit.without(heading -> LEFT_OUT.stream().anyMatch(heading::endsWith));
  }

  private static List<String> lines(String file) throws IOException {
    return Files.readAllLines(
        Path.of("src/test/resources/tiptoe/language/natural/written", file + ".txt"));
  }

  private static double silent(SecondReading reading, Stream<String> lines) throws IOException {
    TypedText typed = Shipped.typed();
    double limit = TalkLimits.shipped().silentFrom();
    return lines
        .filter(line -> !line.isBlank() && !line.startsWith("#"))
        .map(line -> typed.utterance(line.split("=>")[0]))
        .mapToInt(words -> reading.talk(words) >= limit ? 1 : 0)
        .average()
        .orElseThrow();
  }

  @Test
  @FullOnly("SentencesTest holds what becomes of talk to its bounds")
  void tellsTalkOfAuthorsItHasNotMet() throws IOException {
    SecondReading reading = reading();
    double talk = silent(reading, lines("talk-room").stream());
    assertTrue(talk >= 0.5, () -> "of talk " + talk);
    double said =
        silent(
            reading,
            Stream.concat(lines("anp-lincoln").stream(), lines("midwife-limerick").stream())
                .filter(line -> line.contains("=>") && !line.endsWith("none")));
    assertTrue(said <= 0.01, () -> "of statements " + said);
    SentenceBenchmark.Count count =
        new SentenceBenchmark(
                new Interpreter(Shipped.network(), Protocol.standard(), reading), Shipped.typed())
            .count(lines("talk-room"));
    assertTrue(count.talkRecorded <= 1, count::toString);
    assertTrue(count.talkAsked <= 1, count::toString);
    assertEquals(0, count.talkCommanded, count::toString);
  }

  @Test
  void keepsBackWhatOnlySoundsLikeTalk() throws IOException {
    Interpreter sure =
        new Interpreter(
            Shipped.network(),
            Protocol.standard(),
            TalkModelFit.like(Shipped.tagger(), TalkLimits.shipped().silentFrom()));
    List<String> words = Shipped.typed().utterance("the left arm just hangs there");
    Interpretation read = sure.interpret(words, Dialogue.START, Source.TYPED);
    assertEquals(List.of(), read.meanings());
    assertEquals(Dialogue.START, read.dialogue());
    Interpreter likely =
        new Interpreter(
            Shipped.network(),
            Protocol.standard(),
            TalkModelFit.like(Shipped.tagger(), TalkLimits.shipped().offeredFrom()));
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
    return new Interpreter(
            Shipped.network(), Protocol.standard(), TalkModelFit.like(Shipped.tagger(), talk))
        .interpret(words, Dialogue.START, Source.TYPED)
        .questions()
        .size();
  }

  @Test
  void wantsTheLimitsInTheirOrder() {
    assertEquals(
        "expected offered-from of at most 0.5, found 0.6",
        assertThrows(IllegalArgumentException.class, () -> new TalkLimits(0.1, 0.6, 0.5))
            .getMessage());
    assertEquals(
        "expected unasked-from of at most 0.5, found 0.6",
        assertThrows(IllegalArgumentException.class, () -> new TalkLimits(0.6, 0.5, 0.5))
            .getMessage());
  }
}
