package tiptoe.graph;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import tiptoe.grammar.PhraseNetwork;
import tiptoe.grammar.WordAutomaton;
import tiptoe.graph.DecodingGraph.Arc;
import tiptoe.language.Shipped;

class DecodingGraphBuilderTest {
  private static final double TRANSITION = 0.69; // ln 2, each frame
  private static final GraphSettings COSTS = new GraphSettings(1, 0.5f, 6, 3, 1);

  private static AcousticModel model;

  @BeforeAll
  static void readModel() throws IOException {
    model = StockModel.read();
  }

  @Test
  void hearsAPhraseThatIsSpelledPhoneByPhoneInContext() {
    GraphWalker walker = walker("left clavicle intact", "right clavicle intact");

    assertEquals("left clavicle intact", heard(walker, speller("left clavicle intact")));
    assertEquals("right clavicle intact", heard(walker, speller("right clavicle intact")));
    assertEquals("[unk] [unk]", heard(walker, speller("left clavicle")));
  }

  @Test
  void backsOffWithoutAWordAndBeginsWhereUtterancesDo() {
    WordAutomaton words =
        new WordAutomaton(
            List.of(
                new WordAutomaton.State(
                    Float.POSITIVE_INFINITY, List.of(new WordAutomaton.Arc("lift", 8, 1))),
                new WordAutomaton.State(0, List.of(new WordAutomaton.Arc("intact", 1, 3))),
                new WordAutomaton.State(
                    Float.POSITIVE_INFINITY,
                    List.of(new WordAutomaton.Arc("lift", 2, 4)),
                    new WordAutomaton.BackOff(1, 0)),
                new WordAutomaton.State(0, List.of()),
                new WordAutomaton.State(
                    Float.POSITIVE_INFINITY, List.of(), new WordAutomaton.BackOff(0.5f, 1))),
            2);
    GraphWalker walker = new GraphWalker(build(words, COSTS));

    List<Integer> lift = speller("lift").word(first("intact")).ids();
    assertEquals(
        2 + 0.5 + 1 + 1 + TRANSITION * lift.size(), walker.said(lift).get("lift intact"), 1e-4);
  }

  @Test
  void chargesTheGrammarThePhraseAndEveryPauseOnce() {
    WordAutomaton words =
        new WordAutomaton(
            List.of(
                new WordAutomaton.State(
                    Float.POSITIVE_INFINITY,
                    List.of(
                        new WordAutomaton.Arc("left", 2, 1), new WordAutomaton.Arc("lift", 3, 1))),
                new WordAutomaton.State(0.25f, List.of(new WordAutomaton.Arc("intact", 1, 2))),
                new WordAutomaton.State(0, List.of())));
    GraphWalker walker = new GraphWalker(build(words, COSTS));

    List<Integer> left = speller("left").ids();
    assertEquals(2 + 0.25 + 1 + TRANSITION * left.size(), walker.said(left).get("left"), 1e-4);
    List<Integer> lift = speller("lift").ids();
    assertEquals(3 + 0.25 + 1 + TRANSITION * lift.size(), walker.said(lift).get("lift"), 1e-4);
    List<Integer> both = speller("left").silence().word(first("intact")).ids();
    assertEquals(
        2 + 0.5 + 1 + 1 + TRANSITION * both.size(), walker.said(both).get("left intact"), 1e-4);
  }

  @Test
  void hearsPausesBetweenWordsAndAroundThem() {
    GraphWalker walker = walker("skin pink");

    Speller slowly =
        new Speller(model).silence().word(first("skin")).silence().word(first("pink")).silence();
    assertEquals("skin pink", heard(walker, slowly));
  }

  @Test
  void hearsSeveralPhrasesInOneUtterance() {
    GraphWalker walker = walker("skin pink", "tone normal");

    Speller phrase = speller("skin pink").word(first("tone")).word(first("normal")).silence();
    assertEquals("skin pink tone normal", heard(walker, phrase));
  }

  @Test
  void hearsEveryPronunciationOfAWord() {
    GraphWalker walker = walker("a");

    List<Pronunciation> both = model.lexicon().of("a");
    assertEquals(2, both.size(), "AH and EY");
    for (Pronunciation one : both) {
      assertEquals("a", heard(walker, new Speller(model).word(one)));
    }
  }

  @Test
  void givesEachOfTwoWordsThatSoundAlike() {
    GraphWalker walker = walker("to the left", "two vessels");

    assertEquals("to the left", heard(walker, speller("to the left")));
    assertEquals("two vessels", heard(walker, speller("two vessels")));
  }

  @Test
  void hearsOtherSpeechAsFillerBetweenPhrasesOnly() {
    GraphWalker walker = walker("skin pink");

    Pronunciation lovely = first("lovely");
    assertEquals("[unk]", heard(walker, new Speller(model).word(lovely)));
    Speller beside = new Speller(model).word(lovely).word(first("skin")).word(first("pink"));
    assertTrue(walker.said(beside.ids()).containsKey("[unk] skin pink"));
    Speller within = new Speller(model).word(first("skin")).word(lovely).word(first("pink"));
    assertTrue(walker.said(within.ids()).keySet().stream().noneMatch(s -> s.contains("skin pink")));
  }

  @Test
  void chargesFillerForItsBeginningAndForEachPhone() {
    GraphWalker walker = walker("skin pink");
    List<Integer> lovely = new Speller(model).word(first("lovely")).ids();

    int phones = lovely.size() / 2;
    double expected = 6 + 3 * phones + TRANSITION * lovely.size();
    assertEquals(expected, walker.said(lovely).get("[unk]"), 1e-4);
  }

  @Test
  void followsPhrasesThatRepeatWithoutEnd() {
    WordAutomaton digits =
        new WordAutomaton(
            List.of(
                new WordAutomaton.State(
                    Float.POSITIVE_INFINITY, List.of(new WordAutomaton.Arc("point", 0, 1))),
                new WordAutomaton.State(
                    0,
                    List.of(
                        new WordAutomaton.Arc("four", 0, 1), new WordAutomaton.Arc("eight", 0, 2))),
                new WordAutomaton.State(
                    Float.POSITIVE_INFINITY, List.of(new WordAutomaton.Arc("four", 0, 1)))));
    GraphWalker walker = new GraphWalker(build(digits, COSTS));

    String said = "point four four eight four four";
    assertEquals(said, heard(walker, speller(said)));
    assertEquals("point [unk]", heard(walker, speller("point eight")));
  }

  @Test
  void everyStateIsEnteredByOneTransitionIdOnly() {
    DecodingGraph graph = build(Words.of("left clavicle intact", "right clavicle intact"), COSTS);
    Map<Integer, Integer> entered = new HashMap<>();
    graph
        .states()
        .forEach(
            state -> {
              for (Arc arc : state.arcs()) {
                if (arc.in() > 0 && arc.target() != DecodingGraph.SELF) {
                  Integer before = entered.put(arc.target(), arc.in());
                  assertTrue(before == null || before == arc.in());
                }
              }
            });
    entered.forEach(
        (number, forward) ->
            assertEquals(
                TransitionModel.selfLoopOf(forward),
                graph.states().get(number).arcs().stream()
                    .filter(arc -> arc.target() == DecodingGraph.SELF)
                    .mapToInt(Arc::in)
                    .sum()));
  }

  @Test
  void wordsWithOneEndShareItsStates() {
    int one = build(Words.of("left clavicle intact"), COSTS).stateCount();
    int two = build(Words.of("left clavicle intact", "right clavicle intact"), COSTS).stateCount();

    // "clavicle intact" is there once but for its first phones, which follow another phone
    int right = first("right").phones().size();
    assertTrue(two - one < right * 30, "expected few new states, found " + (two - one));
  }

  @Test
  void hearsPhrasesOfTheExaminationAsTheGrammarsHaveThem() throws IOException {
    PhraseNetwork network = network();
    Pronunciations pronunciations =
        Pronunciations.read(Path.of("grammars/pronunciations.txt"), model.lexicon());
    assertEquals(List.of(), pronunciations.problems());
    WordAutomaton automaton = network.automaton();
    DecodingGraph graph =
        DecodingGraphBuilder.build(automaton, pronunciations, model, GraphSettings.DEFAULT);
    GraphWalker walker = new GraphWalker(graph);

    Random random = new Random(7);
    for (int i = 0; i < 100; i++) {
      List<String> words = network.samplePath(random).words();
      Speller speller = new Speller(model);
      words.forEach(
          word -> {
            List<Pronunciation> all = pronunciations.of(word);
            speller.word(all.get(random.nextInt(all.size())));
          });
      Map<String, Double> said = walker.said(speller.ids());
      assertTrue(said.containsKey(String.join(" ", words)), words + " among " + said.keySet());
    }
  }

  @Test
  void theGraphOfTheExaminationIsSmallEnoughForTheBedside() throws IOException {
    Pronunciations pronunciations =
        Pronunciations.read(Path.of("grammars/pronunciations.txt"), model.lexicon());

    DecodingGraph graph =
        DecodingGraphBuilder.build(
            network().automaton(), pronunciations, model, GraphSettings.DEFAULT);

    assertTrue(graph.stateCount() <= 170_000, "found " + graph.stateCount() + " states");
  }

  private static PhraseNetwork network() {
    return Shipped.network();
  }

  private static GraphWalker walker(String... phrases) {
    return new GraphWalker(build(Words.of(phrases), COSTS));
  }

  private static DecodingGraph build(WordAutomaton words, GraphSettings settings) {
    Pronunciations lexiconOnly = Pronunciations.parse("none", List.of(), model.lexicon());
    return DecodingGraphBuilder.build(words, lexiconOnly, model, settings);
  }

  private static Pronunciation first(String word) {
    return model.lexicon().of(word).get(0);
  }

  private static Speller speller(String words) {
    Speller speller = new Speller(model);
    List.of(words.split(" ")).forEach(word -> speller.word(first(word)));
    return speller;
  }

  /** The likeliest words. */
  private static String heard(GraphWalker walker, Speller speller) {
    Map<String, Double> said = walker.said(speller.ids());
    List<String> words = new ArrayList<>(said.keySet());
    words.sort((a, b) -> Double.compare(said.get(a), said.get(b)));
    return words.isEmpty() ? "" : words.get(0);
  }
}
