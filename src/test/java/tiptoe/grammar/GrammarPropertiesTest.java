package tiptoe.grammar;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.EdgeCasesMode;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.Tuple;

/** Whatever the grammar, network and automaton say the same as the Recommendation. */
class GrammarPropertiesTest {
  private static final List<String> WORDS = List.of("a", "b", "c");
  private static final int LONGEST = 4;

  /** Rounding to 1/1024 on every arc. */
  private static final double TOLERANCE = 0.02;

  @Property(edgeCases = EdgeCasesMode.NONE)
  void acceptsExactlyWhatTheGrammarMeansAtItsCost(@ForAll("texts") String text) {
    Map<List<String>, Double> meaning = Meaning.of(Grammars.set(text), LONGEST);
    PhraseNetwork network = Grammars.network(text);
    WordAutomaton automaton = network.automaton();
    // where loops drift apart costs may be too low; never so below the bound on remainders
    boolean exact = Determiniser.automaton(network, 1, Determiniser.ENOUGH_STATES).isPresent();
    for (List<String> words : sequences()) {
      double cost = meaning.getOrDefault(words, Double.POSITIVE_INFINITY);
      float found = automaton.cost(words);
      assertEquals(Double.isFinite(cost), Float.isFinite(found), () -> "automaton: " + words);
      assertTrue(found <= cost + TOLERANCE, () -> "automaton: " + words);
      if (exact && cost < Determiniser.MOST_REMAINDER / Determiniser.UNITS) {
        assertEquals(cost, found, TOLERANCE, () -> "automaton: " + words);
      }
      if (!words.isEmpty()) {
        boolean possible = Double.isFinite(cost);
        assertEquals(possible, Grammars.accepts(network, words), () -> "network: " + words);
        if (possible) {
          assertEquals(cost, network.parse(words).phrases().get(0).cost(), 1e-4);
        }
      }
    }
  }

  @Property(edgeCases = EdgeCasesMode.NONE)
  void acceptsEveryPathAndWalksEveryArc(@ForAll("texts") String text, @ForAll long seed) {
    PhraseNetwork network = Grammars.network(text);
    WordAutomaton automaton = network.automaton();
    for (PhraseNetwork.Path path : network.paths(new Random(seed), 1000)) {
      assertTrue(Float.isFinite(automaton.cost(path.words())), path::toString);
      assertTrue(path.words().isEmpty() || Grammars.accepts(network, path.words()), path::toString);
    }
    Set<PhraseNetwork.Arc> walked = Collections.newSetFromMap(new IdentityHashMap<>());
    new PathSampler(network, new Random(seed)).walks(1000).forEach(walked::addAll);
    assertEquals(network.arcCount(), walked.size());
  }

  @Property(edgeCases = EdgeCasesMode.NONE)
  void coversAnyWordsOnceAndInOrder(
      @ForAll("texts") String text, @ForAll("utterances") List<String> words) {
    PhraseNetwork network = Grammars.network(text);
    Parse parse = network.parse(words);
    List<Integer> covered = new ArrayList<>();
    for (Parse.Phrase phrase : parse.phrases()) {
      assertTrue(Grammars.accepts(network, words.subList(phrase.from(), phrase.to())));
      int from = covered.size();
      phrase.items().stream()
          .filter(Parse.WordItem.class::isInstance)
          .forEach(item -> covered.add(((Parse.WordItem) item).index()));
      assertEquals(phrase.to() - phrase.from(), covered.size() - from);
    }
    assertEquals(covered.stream().sorted().distinct().toList(), covered);
    parse.uncovered().forEach(run -> addAll(covered, run));
    assertEquals(words.size(), covered.stream().distinct().count());
    assertEquals(words.size(), covered.size());
    assertEquals(fewestUncovered(network, words), uncovered(parse));
  }

  @Property(edgeCases = EdgeCasesMode.NONE)
  void foretellsExactlyTheWordsThatCanFollow(@ForAll("texts") String text) {
    PhraseNetwork network = Grammars.network(text);
    WordAutomaton automaton = network.automaton();
    for (List<String> phrase : Meaning.of(Grammars.set(text), LONGEST).keySet()) {
      for (int i = 1; i < phrase.size(); i++) {
        List<String> begun = phrase.subList(0, i);
        Set<String> possible = new TreeSet<>();
        for (String word : WORDS) {
          if (carriesOn(network, automaton, begun, word)) {
            possible.add(word);
          }
        }
        assertEquals(possible, network.following(begun).words(), begun::toString);
      }
    }
  }

  /** Whether some last words carry on with this one, and phrases cover all words before them. */
  private static boolean carriesOn(
      PhraseNetwork network, WordAutomaton automaton, List<String> words, String next) {
    for (int from = 0; from < words.size(); from++) {
      List<String> last = new ArrayList<>(words.subList(from, words.size()));
      last.add(next);
      if (begins(automaton, last) && fewestUncovered(network, words.subList(0, from)) == 0) {
        return true;
      }
    }
    return false;
  }

  private static boolean begins(WordAutomaton automaton, List<String> words) {
    int state = 0;
    for (String word : words) {
      var arc = automaton.states().get(state).arcs().stream().filter(a -> a.word().equals(word));
      state = arc.mapToInt(WordAutomaton.Arc::next).findFirst().orElse(-1);
      if (state < 0) {
        return false;
      }
    }
    return true;
  }

  @Property(edgeCases = EdgeCasesMode.NONE)
  void neverThrowsOnMangledText(@ForAll("texts") String text, @ForAll long seed) {
    Random random = new Random(seed);
    StringBuilder mangled = new StringBuilder(Grammars.HEADER + text);
    String noise = "$<>{}!()[]|/\"';=*~#-01 \n\u0000\uD800é";
    for (int i = 0; i < 3; i++) {
      int at = random.nextInt(mangled.length());
      switch (random.nextInt(3)) {
        case 0 -> mangled.deleteCharAt(at);
        case 1 -> mangled.setCharAt(at, noise.charAt(random.nextInt(noise.length())));
        default -> mangled.insert(at, noise.charAt(random.nextInt(noise.length())));
      }
    }
    GrammarSet set = GrammarSet.of(Map.of("main.gram", mangled.toString()), "main.gram");
    long lines = mangled.chars().filter(c -> c == '\n').count() + 1;
    for (Problem problem : set.problems()) {
      assertTrue(problem.line() >= 1 && problem.line() <= lines, problem::toString);
      assertTrue(problem.column() >= 1, problem::toString);
    }
    if (set.problems().isEmpty()) {
      PhraseNetwork.of(set).automaton();
    }
  }

  private static void addAll(List<Integer> covered, Parse.Span run) {
    for (int i = run.from(); i < run.to(); i++) {
      covered.add(i);
    }
  }

  private static int uncovered(Parse parse) {
    return parse.uncovered().stream().mapToInt(run -> run.to() - run.from()).sum();
  }

  /** By trying every stretch as a phrase. */
  private static int fewestUncovered(PhraseNetwork network, List<String> words) {
    int[] fewest = new int[words.size() + 1];
    for (int to = 1; to <= words.size(); to++) {
      fewest[to] = fewest[to - 1] + 1;
      for (int from = 0; from < to; from++) {
        if (Grammars.accepts(network, words.subList(from, to))) {
          fewest[to] = Math.min(fewest[to], fewest[from]);
        }
      }
    }
    return fewest[words.size()];
  }

  private static List<List<String>> sequences() {
    List<List<String>> all = new ArrayList<>(List.of(List.of()));
    for (int i = 0; i < all.size(); i++) {
      List<String> shorter = all.get(i);
      for (String word : shorter.size() < LONGEST ? WORDS : List.<String>of()) {
        List<String> longer = new ArrayList<>(shorter);
        longer.add(word);
        all.add(longer);
      }
    }
    return all;
  }

  @Provide
  Arbitrary<List<String>> utterances() {
    return Arbitraries.of("a", "b", "c", "[unk]").list().ofMaxSize(8);
  }

  /** Three rules, each of which may use the later ones. */
  @Provide
  Arbitrary<String> texts() {
    Arbitrary<String> main = expansion(3, List.of("$one", "$two"));
    Arbitrary<String> one = expansion(2, List.of("$two"));
    Arbitrary<String> two = expansion(2, List.of());
    // the last alternative makes sure that every rule is used
    return Combinators.combine(main, one, two)
        .as(
            (m, o, t) ->
                "$main = %s | /.5/ $one;\n$one = (%s) | $two;\n$two = %s;\n".formatted(m, o, t));
  }

  private static Arbitrary<String> expansion(int depth, List<String> rules) {
    List<String> leaves = new ArrayList<>(List.of("a", "b", "c", "\"a b\"", "{t}", "$NULL", "()"));
    leaves.addAll(List.of("a", "b", "$VOID"));
    leaves.addAll(rules);
    Arbitrary<String> leaf = Arbitraries.of(leaves);
    if (depth == 0) {
      return leaf;
    }
    Arbitrary<String> inner = expansion(depth - 1, rules);
    Arbitrary<String> weight = Arbitraries.of("", "/2/ ", "/.5/ ", "/10/ ");
    Arbitrary<String> repeat =
        Arbitraries.of("<0>", "<2>", "<0-1>", "<0-2>", "<1->", "<0->", "<1-3 /.8/>", "<0- /.1/>");
    return Arbitraries.frequencyOf(
        Tuple.of(2, leaf),
        Tuple.of(
            3, inner.list().ofMinSize(2).ofMaxSize(3).map(p -> "(" + String.join(" ", p) + ")")),
        Tuple.of(
            3,
            Combinators.combine(weight, inner, weight, inner)
                .as((v, l, w, r) -> "(" + v + l + " | " + w + r + ")")),
        Tuple.of(2, Combinators.combine(inner, repeat).as((e, r) -> "(" + e + ")" + r)),
        Tuple.of(1, inner.map(e -> "[" + e + "]")));
  }
}
