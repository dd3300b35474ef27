package tiptoe.grammar;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PhraseNetworkTest {
  private static final PhraseNetwork EXAMINATION =
      Grammars.network(
          """
          $main = $clavicle | $murmur | $side {step=palate value=intact};
          $clavicle = [$side] (clavicle | collar bone) {step=clavicle}
              ([is] intact {value=intact} | crepitus {value=crepitus}) [$side] {;};
          $murmur = no {value=none} murmur {step=murmur}
              | murmur {step=murmur value=present} [grade (one {grade=1} | two {grade=2})];
          $side = left {side=left} | right {side=right};
          """);

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "clavicle intact             | (clavicle {step=clavicle} intact {value=intact} {;})",
        "left collar bone crepitus   | (left {side=left} collar bone {step=clavicle} crepitus"
            + " {value=crepitus} {;})",
        "no murmur                   | (no {value=none} murmur {step=murmur})",
        "no murmur clavicle intact   | (no {value=none} murmur {step=murmur})(clavicle"
            + " {step=clavicle} intact {value=intact} {;})",
        "murmur grade two            | (murmur {step=murmur value=present} grade two {grade=2})",
        "well murmur um grade        | [well](murmur {step=murmur value=present})[um grade]",
        "clavicle                    | [clavicle]",
        "clavicle clavicle intact    | [clavicle](clavicle {step=clavicle} intact {value=intact}"
            + " {;})",
        "`''`                        | `''`",
        // one phrase rather than two, though 'left' alone would be cheaper
        "left clavicle intact        | (left {side=left} clavicle {step=clavicle} intact"
            + " {value=intact} {;})",
        // the side goes with the phrase that it completes when both can take it
        "clavicle intact left clavicle intact | (clavicle {step=clavicle} intact {value=intact}"
            + " {;})(left {side=left} clavicle {step=clavicle} intact {value=intact} {;})",
      })
  void dividesWordsIntoPhrases(String text, String expected) {
    List<String> words = Grammars.words(text.equals("''") ? "" : text);
    String wanted = expected.equals("''") ? "" : expected;
    assertEquals(wanted, Grammars.shown(EXAMINATION.parse(words), words));
  }

  @Test
  void givesSpansOfPhrasesAndOfUncoveredRuns() {
    Parse parse = EXAMINATION.parse(Grammars.words("well now murmur um no murmur"));
    assertEquals(List.of(new Parse.Span(0, 2), new Parse.Span(3, 4)), parse.uncovered());
    assertEquals(2, parse.phrases().get(0).from());
    assertEquals(3, parse.phrases().get(0).to());
    assertEquals(4, parse.phrases().get(1).from());
    assertEquals(6, parse.phrases().get(1).to());
    assertEquals(new Parse.WordItem(4), parse.phrases().get(1).items().get(0));
    assertEquals(new Parse.TagItem("value=none", 5), parse.phrases().get(1).items().get(1));
    assertEquals(List.of("value=none", "step=murmur"), parse.phrases().get(1).tags());
  }

  @Test
  void prefersFewerUncoveredWordsThenFewerPhrasesThenLowerCost() {
    PhraseNetwork network =
        Grammars.network(
            "$main = /9/ a {a} | /9/ b {b} | a b {ab} | /5/ c {cheap} | c {dear} | d e {de} | e"
                + " {e};");
    assertEquals("(a b {ab})", shown(network, "a b"));
    assertEquals("(c {cheap})", shown(network, "c"));
    assertEquals("(d e {de})[x](e {e})", shown(network, "d e x e"));
  }

  @Test
  void takesWhatIsWrittenFirstWhenCostsAreEqual() {
    assertEquals("(a {first})", shown(Grammars.network("$main = a {first} | a {second};"), "a"));
    assertEquals("(a {second})", shown(Grammars.network("$main = a {second} | a {first};"), "a"));
  }

  @Test
  void chargesWeightsAndRepeatProbabilities() {
    PhraseNetwork network = Grammars.network("$main = /3/ a | b<1-2 /.25/>;");
    // SRGS 1.0, sections 2.4.1 (a missing weight is 1) and 2.5.1
    assertEquals(-Math.log(3 / 4.), cost(network, "a"), 1e-6);
    assertEquals(-Math.log(1 / 4. * .75), cost(network, "b"), 1e-6);
    assertEquals(-Math.log(1 / 4. * .25), cost(network, "b b"), 1e-6);
  }

  @Test
  void sharesEquallyWhereNoWeightIsWritten() {
    PhraseNetwork network = Grammars.network("$main = (a | b | c | d) [e];");
    assertEquals(Math.log(8), cost(network, "c"), 1e-6);
    assertEquals(Math.log(8), cost(network, "c e"), 1e-6);
  }

  @Test
  void isBlindToCase() {
    assertTrue(Grammars.accepts(EXAMINATION, List.of("No", "MURMUR")));
  }

  @Test
  void repeatsASilentPartOnce() {
    // SRGS 1.0, section 2.5: repeating what says nothing is the same as having it once
    assertEquals("(a {t})", shown(Grammars.network("$main = a ({t})<2->;"), "a"));
    assertEquals("(a {t})", shown(Grammars.network("$main = a $t<1-9>; $t = $NULL {t};"), "a"));
  }

  @Test
  void endsWhenARepeatedPartMayBeEmpty() {
    PhraseNetwork network = Grammars.network("$main = x [[a] [b]]<0->;");
    assertTrue(Grammars.accepts(network, Grammars.words("x b a a b")));
    assertFalse(Grammars.accepts(network, Grammars.words("a b")));
    assertTrue(Float.isFinite(network.automaton().cost(Grammars.words("x b a a b"))));
  }

  @Test
  void saysWhatCanFollow() {
    assertEquals("[] true", following(""));
    assertEquals("[clavicle, collar] true", following("left"));
    assertEquals("[bone] false", following("left collar"));
    assertEquals("[grade] true", following("clavicle intact murmur"));
    assertEquals("[one, two] false", following("murmur grade"));
    assertEquals("[left, right] true", following("um clavicle intact"));
    assertEquals("[] true", following("um"));
    assertEquals(
        new TreeSet<>(List.of("clavicle", "collar", "left", "murmur", "no", "right")),
        EXAMINATION.firstWords());
  }

  private static String following(String text) {
    PhraseNetwork.Following following = EXAMINATION.following(Grammars.words(text));
    return following.words() + " " + following.mayEnd();
  }

  @Test
  void samplesPathsThatWalkEveryArc() {
    TreeSet<String> seen = new TreeSet<>();
    for (PhraseNetwork.Path path : EXAMINATION.paths(new Random(1), 100)) {
      assertTrue(Grammars.accepts(EXAMINATION, path.words()), path::toString);
      seen.addAll(path.words());
      for (Parse.Item item : path.items()) {
        if (item instanceof Parse.TagItem tag) {
          seen.add("{" + tag.text());
        }
      }
    }
    assertTrue(seen.containsAll(EXAMINATION.words()));
    assertEquals(12, seen.stream().filter(text -> text.startsWith("{")).count());
    assertEquals(2, EXAMINATION.paths(new Random(1), 2).size());
  }

  @Test
  void drawsTheSamePathsFromTheSameRandomNumbers() {
    assertEquals(EXAMINATION.paths(new Random(7), 100), EXAMINATION.paths(new Random(7), 100));
    assertEquals(EXAMINATION.samplePath(new Random(7)), EXAMINATION.samplePath(new Random(7)));
  }

  @Test
  void hasNothingToSayInAVoidGrammar() {
    PhraseNetwork network = Grammars.network("$main = a $VOID;");
    assertEquals("[a]", shown(network, "a"));
    assertEquals(List.of(), network.paths(new Random(1), 10));
    assertEquals(1, network.automaton().states().size());
    assertFalse(network.automaton().states().get(0).isFinal());
    assertThrows(IllegalStateException.class, () -> network.samplePath(new Random(1)));
  }

  private static String shown(PhraseNetwork network, String text) {
    return Grammars.shown(network.parse(Grammars.words(text)), Grammars.words(text));
  }

  private static double cost(PhraseNetwork network, String text) {
    return network.parse(Grammars.words(text)).phrases().get(0).cost();
  }

  @Test
  void expandsAnyRuleByName() {
    GrammarSet set = Grammars.set("$main = x $side;\n$side = left | right;");
    assertTrue(Grammars.accepts(PhraseNetwork.of(set, "main.gram", "side"), List.of("left")));
    var refused =
        assertThrows(
            IllegalArgumentException.class, () -> PhraseNetwork.of(set, "main.gram", "other"));
    assertEquals("expected a rule of main.gram, found $other", refused.getMessage());
  }
}
