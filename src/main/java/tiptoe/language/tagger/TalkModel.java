package tiptoe.language.tagger;

import de.bwaldvogel.liblinear.Feature;
import de.bwaldvogel.liblinear.FeatureNode;
import de.bwaldvogel.liblinear.Linear;
import de.bwaldvogel.liblinear.Model;
import de.bwaldvogel.liblinear.Parameter;
import de.bwaldvogel.liblinear.Problem;
import de.bwaldvogel.liblinear.SolverType;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Function;
import tiptoe.files.Shipped;
import tiptoe.language.Interpreter;
import tiptoe.language.TypedText;

/**
 * How probable it is that a sentence is talk: said beside the examination, and stating nothing of
 * this baby. A logistic regression (LIBLINEAR: Fan et al., J Mach Learn Res 2008; 9: 1871–1874) on
 * runs of up to three words, in which what is found, structures and numbers are each one kind,
 * since talk is full of them too, on the words themselves and their pairs, and on how many there
 * are. It learns from {@code said.txt}, {@code talk.txt} and more of either until nothing improves,
 * so that a sentence more or less changes little, and the same sentences give the same model.
 */
final class TalkModel {
  static final String SAID = "said.txt";
  static final String TALK = "talk.txt";

  /** What it learns from, and whether that is talk. */
  static final Map<String, Boolean> SOURCES =
      new TreeMap<>(Map.of(SAID, false, "said-more.txt", false, TALK, true, "talk-more.txt", true));

  private static final int LONGEST_RUN = 3;
  private static final int LONGEST_OF_WORDS = 2;
  private static final int[] LENGTHS = {3, 5, 8, 11, 14, 18, 24};

  /** What stands in fewer sentences tells nothing. */
  private static final int LEAST = 2;

  /** Weight of the sentences against that of small weights; of those tried on left-out speakers. */
  private static final double FIT = 1;

  /** Share of the first slope at which learning ends. */
  private static final double END = 1e-3;

  private final LayLexicon lexicon;

  /** By how much each run of words changes the log odds of talk. */
  private final Map<String, Float> weights;

  private TalkModel(LayLexicon lexicon, Map<String, Float> weights) {
    this.lexicon = lexicon;
    this.weights = weights;
  }

  /**
   * A sentence to learn from.
   *
   * @param author the heading it stands under
   * @param words as typed, with {@link TypedText#BREAK}
   */
  record Line(String author, boolean talk, List<String> words) {}

  /**
   * All that is shipped.
   *
   * @param utterance turns a line into words
   */
  static List<Line> lines(Function<String, List<String>> utterance) {
    List<Line> lines = new ArrayList<>();
    for (Map.Entry<String, Boolean> source : SOURCES.entrySet()) {
      String author = "";
      for (String line : Shipped.lines(Interpreter.class, source.getKey())) {
        if (line.startsWith("#")) {
          author = line;
        } else if (!line.isBlank()) {
          lines.add(new Line(author, source.getValue(), utterance.apply(line)));
        }
      }
    }
    return lines;
  }

  /** A sentence as it is learned. */
  private record Example(boolean talk, Set<String> runs) {}

  /** What is typed has commas, what is heard has not: each sentence is learned both ways. */
  static TalkModel train(List<Line> lines, LayLexicon lexicon) {
    List<Example> examples = new ArrayList<>();
    for (Line line : lines) {
      List<String> tokens = tokens(line.words(), lexicon);
      List<String> unbroken = TypedText.plain(tokens);
      Set<String> ofWords = ofWords(TypedText.plain(line.words()));
      examples.add(example(line.talk(), tokens, ofWords));
      if (!unbroken.equals(tokens)) {
        examples.add(example(line.talk(), unbroken, ofWords));
      }
    }
    return new TalkModel(lexicon, weights(examples));
  }

  private static Example example(boolean talk, List<String> tokens, Set<String> ofWords) {
    Set<String> all = runs(tokens, LONGEST_RUN, "");
    all.addAll(ofWords);
    return new Example(talk, all);
  }

  private static Map<String, Float> weights(List<Example> examples) {
    Map<String, Integer> counts = new LinkedHashMap<>();
    examples.forEach(one -> one.runs().forEach(run -> counts.merge(run, 1, Integer::sum)));
    counts.values().removeIf(count -> count < LEAST);
    List<String> known = List.copyOf(counts.keySet());
    for (int i = 0; i < known.size(); i++) {
      counts.put(known.get(i), i + 1);
    }
    Problem problem = new Problem();
    problem.l = examples.size();
    problem.n = known.size();
    problem.x = examples.stream().map(one -> features(one, counts)).toArray(Feature[][]::new);
    problem.y = examples.stream().mapToDouble(one -> one.talk() ? 1 : 0).toArray();
    Linear.disableDebugOutput();
    Model model = Linear.train(problem, new Parameter(SolverType.L2R_LR, FIT, END));
    double sign = model.getLabels()[0] == 1 ? 1 : -1;
    Map<String, Float> weights = new HashMap<>();
    for (int i = 0; i < known.size(); i++) {
      weights.put(known.get(i), (float) (sign * model.getFeatureWeights()[i]));
    }
    return weights;
  }

  private static Feature[] features(Example example, Map<String, Integer> places) {
    return example.runs().stream()
        .map(places::get)
        .filter(Objects::nonNull)
        .sorted()
        .map(place -> new FeatureNode(place, 1))
        .toArray(Feature[]::new);
  }

  private static Set<String> ofWords(List<String> words) {
    Set<String> all = runs(words, LONGEST_OF_WORDS, "=");
    Arrays.stream(LENGTHS)
        .filter(length -> words.size() > length)
        .forEach(length -> all.add(">" + length));
    return all;
  }

  static TalkModel read(DataInputStream in, LayLexicon lexicon) throws IOException {
    int count = in.readInt();
    Map<String, Float> weights = new HashMap<>(2 * count);
    for (int i = 0; i < count; i++) {
      weights.put(in.readUTF(), in.readFloat());
    }
    return new TalkModel(lexicon, weights);
  }

  void write(DataOutputStream out) throws IOException {
    out.writeInt(weights.size());
    for (Map.Entry<String, Float> one : new TreeMap<>(weights).entrySet()) {
      out.writeUTF(one.getKey());
      out.writeFloat(one.getValue());
    }
  }

  /** The probability that the words are talk, 0 to 1. */
  double talk(List<String> words) {
    double odds = 0;
    Set<String> all = runs(tokens(words, lexicon), LONGEST_RUN, "");
    all.addAll(ofWords(TypedText.plain(words)));
    for (String one : all) {
      odds += weights.getOrDefault(one, 0f);
    }
    return 1 / (1 + Math.exp(-odds));
  }

  // The words, with one word for each kind of term.
  private static List<String> tokens(List<String> words, LayLexicon lexicon) {
    List<TermMatch> matches = lexicon.matches(words);
    Map<Integer, Integer> ends = new HashMap<>();
    Map<Integer, String> kinds = new HashMap<>();
    for (Numbers.At number : Numbers.in(words, matches)) {
      ends.put(number.from(), number.numberTo());
      kinds.put(number.from(), "<number>");
    }
    for (TermMatch match : matches) {
      boolean value = match.is(Sense.Kind.VALUE);
      if (value || match.is(Sense.Kind.PART)) {
        ends.put(match.from(), match.to());
        kinds.put(
            match.from(),
            value ? lexicon.isAbnormal(match) ? "<abnormal>" : "<value>" : "<structure>");
      }
    }
    List<String> tokens = new ArrayList<>();
    int at = 0;
    while (at < words.size()) {
      tokens.add(kinds.getOrDefault(at, words.get(at)));
      at = Math.max(at + 1, ends.getOrDefault(at, 0));
    }
    return tokens;
  }

  private static Set<String> runs(List<String> tokens, int longest, String kind) {
    List<String> all = new ArrayList<>();
    all.add("<s>");
    all.addAll(tokens);
    all.add("</s>");
    Set<String> runs = new LinkedHashSet<>();
    for (int from = 0; from < all.size(); from++) {
      for (int to = from + 1; to <= Math.min(all.size(), from + longest); to++) {
        runs.add(kind + String.join(" ", all.subList(from, to)));
      }
    }
    return runs;
  }
}
