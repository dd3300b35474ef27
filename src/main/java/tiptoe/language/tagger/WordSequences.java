package tiptoe.language.tagger;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Predicate;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;
import tiptoe.files.Shipped;
import tiptoe.grammar.PhraseNetwork;
import tiptoe.grammar.WordAutomaton;
import tiptoe.grammar.WordAutomaton.Arc;
import tiptoe.grammar.WordAutomaton.BackOff;
import tiptoe.grammar.WordAutomaton.State;
import tiptoe.language.Interpreter;
import tiptoe.language.TypedText;
import tiptoe.protocol.Protocol;

/**
 * How likely a word is behind the two before it when someone examines a newborn in words of his
 * own: a trigram (Witten and Bell 1991, interpolated), counted in sentences as clinicians say them
 * and in those the tagger learns from, over everyday speech. It holds the words of the grammars, of
 * the lay lexicon, and common ones.
 *
 * <p>As an automaton: a state for each word and for each pair that something is known to follow,
 * left by the words that tell most; the others are reached by backing off. Ending a phrase is
 * backing off from a word, since any word can begin the next one.
 */
public final class WordSequences {
  private static final long SEED = 11;

  /** Changed whenever words are counted in another way. */
  private static final String VERSION = "6 ";

  /** Stands before the first word of a sentence. */
  private static final String START = "";

  /** Sentences made of each that was said, and the share that itself counts of them all. */
  private static final int LIKE_IT = 20;

  private static final double ITSELF = 0.7;

  /**
   * What a sentence of a template or a phrase, and a word of a list count beside one that was said.
   */
  private static final double MADE = 0.05;

  private static final double LISTED = 0.1;

  /** Share of everyday speech in what is likely with no word before, and with one that is rare. */
  private static final double EVERYDAY = 0.3;

  private static final double EVERYDAY_PAIRS = 0.3;

  /** Nats that all occurrences of a sequence must gain, to be kept. */
  private static final double GAIN = 1.78;

  private final Counts words = new Counts();

  /** Each word, and what is counted behind it, looked up once where it is said. */
  private final Map<String, Said> met = new HashMap<>();

  private final Said start = new Said(START, new Counts(), new HashMap<>());

  /** How likely a word is anywhere, once all is counted. */
  private final Map<String, Double> alone = new HashMap<>();

  /** How likely a word is behind another, once all is counted; each of thousands of pairs asks. */
  private final Map<String, ToDoubleFunction<String>> behind = new HashMap<>();

  private final Predicate<String> sayable;
  private final WordShares everyday;
  private double everydayAll;

  /** Weighted counts of what follows something: millions are added, and put in order once. */
  private static final class Counts {
    private final Map<String, double[]> of = new HashMap<>();
    private List<String> words;
    private double all;

    void add(String word, double times) {
      double[] count = of.get(word);
      if (count == null) {
        count = new double[1];
        of.put(word, count);
        words = null;
      }
      count[0] += times;
      all += times;
    }

    double of(String word) {
      double[] count = of.get(word);
      return count == null ? 0 : count[0];
    }

    boolean holds(String word) {
      return of.containsKey(word);
    }

    /** In the order of the alphabet, so that all sums are the same each time. */
    List<String> words() {
      if (words == null) {
        words = of.keySet().stream().sorted().toList();
      }
      return words;
    }

    /** How much the words not seen count: as much as how many different ones were. */
    double unseen() {
      return words().stream().mapToDouble(word -> Math.min(1, of(word))).sum();
    }
  }

  /**
   * A word that can be said, or the start of a sentence.
   *
   * @param behind what follows it
   * @param behindPair what follows it and the word that is named
   */
  private record Said(String word, Counts behind, Map<String, Counts> behindPair) {}

  private WordSequences(Predicate<String> sayable, WordShares everyday) {
    this.sayable = sayable;
    this.everyday = everyday;
    met.put(START, start);
  }

  /**
   * Counts the words and makes an automaton of them, the same for the same grammars and texts.
   *
   * @param sayable whether there is a pronunciation of a word; others are left out
   */
  public static WordAutomaton automaton(
      PhraseNetwork network, Protocol protocol, TypedText typed, Predicate<String> sayable)
      throws IOException {
    return automaton(network, protocol, typed, sayable, said());
  }

  /** The same of other sentences than are shipped. */
  static WordAutomaton automaton(
      PhraseNetwork network,
      Protocol protocol,
      TypedText typed,
      Predicate<String> sayable,
      List<String> said)
      throws IOException {
    return counted(network, protocol, typed, sayable, said).automaton();
  }

  private static WordSequences counted(
      PhraseNetwork network,
      Protocol protocol,
      TypedText typed,
      Predicate<String> sayable,
      List<String> said)
      throws IOException {
    LayLexicon lexicon = LayLexiconReader.heard(protocol, typed::words);
    WordSequences all = new WordSequences(sayable, WordShares.shipped());
    SpokenSentences sentences = new SpokenSentences(lexicon, SEED);
    for (String line : said) {
      sentences.like(typed.words(line), LIKE_IT, ITSELF, all::count);
    }
    new TrainingSentences(lexicon, protocol, SEED)
        .all(network)
        .forEach(sentence -> all.count(sentence.words(), MADE));
    network.words().forEach(word -> all.count(word, LISTED));
    lexicon.terms().forEach(term -> all.count(term.words(), LISTED));
    all.everyday.shares().keySet().forEach(word -> all.count(word, 0));
    all.everydayAll =
        all.words.words().stream()
            .mapToDouble(word -> all.everyday.shares().getOrDefault(word, 0.0))
            .sum();
    return all;
  }

  /** What the sequences come from beside grammars, lexicon and protocol. */
  public static String identity() throws IOException {
    return VERSION + String.join("\n", said()) + String.join("\n", WordShares.text());
  }

  /** What is said of findings and what is said beside them. */
  static List<String> said() {
    return Stream.of(TalkModel.SAID, TalkModel.TALK)
        .flatMap(file -> Shipped.lines(Interpreter.class, file).stream())
        .filter(line -> !line.startsWith("#") && !line.isBlank())
        .toList();
  }

  private void count(String word, double times) {
    if (said(word) != null) {
      words.add(word, times);
    }
  }

  /** Null where it cannot be said. */
  private Said said(String word) {
    Said known = met.get(word);
    if (known == null && !met.containsKey(word)) {
      known = sayable.test(word) ? new Said(word, new Counts(), new HashMap<>()) : null;
      met.put(word, known);
    }
    return known;
  }

  private void count(List<String> sentence, double times) {
    Said first = null;
    Said second = start;
    for (String each : sentence) {
      Said said = said(each);
      if (said != null) {
        words.add(said.word(), times);
        if (second != null) {
          second.behind().add(said.word(), times);
        }
        if (second != null && first != null) {
          first
              .behindPair()
              .computeIfAbsent(second.word(), w -> new Counts())
              .add(said.word(), times);
        }
      }
      first = second;
      second = said;
    }
  }

  // How likely a word is

  private double alone(String word) {
    return alone.computeIfAbsent(
        word,
        w ->
            (1 - EVERYDAY) * words.of(w) / words.all
                + EVERYDAY * everyday.shares().getOrDefault(w, 0.0) / everydayAll);
  }

  /** Behind one word, or at the start of a sentence. */
  ToDoubleFunction<String> behind(String before) {
    return behind.computeIfAbsent(before, this::likely);
  }

  private ToDoubleFunction<String> likely(String before) {
    SortedMap<String, Double> usual = everyday.behind(before);
    double listed = 0;
    double listedAlone = 0;
    for (Map.Entry<String, Double> one : usual.entrySet()) {
      if (words.holds(one.getKey())) {
        listed += one.getValue();
        listedAlone += everyday.shares().getOrDefault(one.getKey(), 0.0) / everydayAll;
      }
    }
    double rest = (1 - listed) / (1 - listedAlone);
    double share = usual.isEmpty() ? 0 : EVERYDAY_PAIRS;
    ToDoubleFunction<String> less =
        word ->
            (1 - share) * alone(word)
                + share
                    * usual.getOrDefault(
                        word, rest * everyday.shares().getOrDefault(word, 0.0) / everydayAll);
    return over(pairs(before), less);
  }

  /** What was counted behind a word; null for nothing. */
  private Counts pairs(String before) {
    Said said = met.get(before);
    return said == null || said.behind().words().isEmpty() ? null : said.behind();
  }

  ToDoubleFunction<String> behind(String first, String second) {
    Said said = met.get(first);
    return over(said == null ? null : said.behindPair().get(second), behind(second));
  }

  private static ToDoubleFunction<String> over(Counts seen, ToDoubleFunction<String> less) {
    if (seen == null) {
      return less;
    }
    double unseen = seen.unseen();
    return word -> (seen.of(word) + unseen * less.applyAsDouble(word)) / (seen.all + unseen);
  }

  // As an automaton

  /** What is kept of what follows something, and what is left for the rest. */
  private record Kept(SortedMap<String, Double> likely, double rest) {
    double of(String word, double less) {
      return likely.getOrDefault(word, rest * less);
    }
  }

  private static Kept kept(
      double times,
      Collection<String> seen,
      ToDoubleFunction<String> likely,
      ToDoubleFunction<String> less) {
    double[] chances = seen.stream().mapToDouble(likely).toArray();
    double[] lesser = seen.stream().mapToDouble(less).toArray();
    double left = 1;
    double lessLeft = 1;
    for (int i = 0; i < chances.length; i++) {
      left -= chances[i];
      lessLeft -= lesser[i];
    }
    double rest = left / lessLeft;
    SortedMap<String, Double> kept = new TreeMap<>();
    int at = 0;
    for (String word : seen) {
      double gain = times * chances[at] * Math.log(chances[at] / (rest * lesser[at]));
      if (gain >= GAIN) {
        kept.put(word, chances[at]);
      }
      at++;
    }
    double keptLeft = 1 - kept.values().stream().mapToDouble(Double::doubleValue).sum();
    double keptLess = 1 - kept.keySet().stream().mapToDouble(less).sum();
    return new Kept(kept, Math.max(1e-9, keptLeft) / Math.max(1e-9, keptLess));
  }

  private WordAutomaton automaton() {
    Map<String, Kept> one = new TreeMap<>();
    for (String before : words.words()) {
      one.put(before, kept(before, alone(before) * words.all));
    }
    one.put(START, kept(START, start.behind().all));
    Map<String, Map<String, Kept>> two = new TreeMap<>();
    Map<String, Integer> numbers = new HashMap<>();
    words.words().forEach(word -> numbers.put(word, numbers.size() + 1));
    numbers.put(START, numbers.size() + 1);
    Map<String, Said> firsts = new TreeMap<>();
    met.values().stream().filter(Objects::nonNull).forEach(word -> firsts.put(word.word(), word));
    firsts.forEach(
        (first, all) ->
            new TreeMap<>(all.behindPair())
                .forEach(
                    (second, seen) -> {
                      Kept less = one.get(second);
                      Kept kept =
                          kept(
                              seen.all,
                              seen.words(),
                              behind(first, second),
                              word -> less.of(word, alone(word)));
                      boolean isReached = one.get(first).likely().containsKey(second);
                      if (isReached && !kept.likely().isEmpty()) {
                        two.computeIfAbsent(first, w -> new TreeMap<>()).put(second, kept);
                        numbers.put(first + " " + second, numbers.size() + 1);
                      }
                    }));
    List<State> states = new ArrayList<>();
    states.add(
        new State(
            Float.POSITIVE_INFINITY,
            words.words().stream()
                .map(word -> new Arc(word, cost(alone(word)), numbers.get(word)))
                .toList()));
    words.words().forEach(word -> states.add(state(word, one.get(word), numbers)));
    states.add(state(START, one.get(START), numbers));
    two.forEach(
        (first, all) ->
            all.forEach(
                (second, kept) -> {
                  BackOff less = new BackOff(cost(kept.rest()), numbers.get(second));
                  State behind = state(second, kept, numbers);
                  states.add(new State(Float.POSITIVE_INFINITY, behind.arcs(), less));
                }));
    return new WordAutomaton(states, numbers.get(START));
  }

  private Kept kept(String before, double times) {
    List<String> seen = new ArrayList<>();
    Counts counts = pairs(before);
    if (counts != null) {
      seen.addAll(counts.words());
    }
    everyday.behind(before).keySet().stream()
        .filter(words::holds)
        .filter(word -> counts == null || !counts.holds(word))
        .forEach(seen::add);
    return kept(times, seen, behind(before), this::alone);
  }

  private static State state(String last, Kept kept, Map<String, Integer> numbers) {
    List<Arc> arcs = new ArrayList<>();
    kept.likely()
        .forEach(
            (word, chance) -> {
              Integer pair = numbers.get(last + " " + word);
              arcs.add(new Arc(word, cost(chance), pair == null ? numbers.get(word) : pair));
            });
    return new State(cost(kept.rest()), arcs);
  }

  private static float cost(double likelihood) {
    return (float) Math.max(0, -Math.log(likelihood));
  }
}
