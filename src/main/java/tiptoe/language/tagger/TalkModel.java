package tiptoe.language.tagger;

import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.Iterator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Function;
import opennlp.tools.ml.maxent.quasinewton.QNTrainer;
import opennlp.tools.ml.model.AbstractModel;
import opennlp.tools.ml.model.Context;
import opennlp.tools.ml.model.DataIndexer;
import opennlp.tools.ml.model.Event;
import opennlp.tools.ml.model.OnePassDataIndexer;
import opennlp.tools.util.ObjectStream;
import opennlp.tools.util.TrainingParameters;
import tiptoe.files.Shipped;
import tiptoe.language.Interpreter;
import tiptoe.language.TypedText;

/**
 * How probable it is that a sentence is talk: said beside the examination, and stating nothing of
 * this baby. A maximum-entropy model (Apache OpenNLP) on runs of up to three words, in which what
 * is found, structures and numbers are each one kind, since talk is full of them too, on the words
 * themselves and their pairs, and on how many there are. It learns from {@code said.txt} and {@code
 * talk.txt}, on one thread, so that the same sentences give the same model.
 */
final class TalkModel {
  static final String SAID = "said.txt";
  static final String TALK = "talk.txt";

  private static final int LONGEST_RUN = 3;
  private static final int LONGEST_OF_WORDS = 2;
  private static final int[] LENGTHS = {3, 5, 8, 11, 14, 18, 24};
  private static final int ITERATIONS = 100;
  private static final int CUTOFF = 2;

  /** Share of the squared weights in what is made least; of those tried on left-out speakers. */
  private static final double SQUARES = 1;

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
    for (String file : List.of(SAID, TALK)) {
      String author = "";
      for (String line : Shipped.lines(Interpreter.class, file)) {
        if (line.startsWith("#")) {
          author = line;
        } else if (!line.isBlank()) {
          lines.add(new Line(author, file.equals(TALK), utterance.apply(line)));
        }
      }
    }
    return lines;
  }

  /** What is typed has commas, what is heard has not: each sentence is learned both ways. */
  static TalkModel train(List<Line> lines, LayLexicon lexicon) throws IOException {
    List<Event> events = new ArrayList<>();
    for (Line line : lines) {
      String outcome = line.talk() ? TALK : SAID;
      List<String> tokens = tokens(line.words(), lexicon);
      List<String> unbroken = TypedText.plain(tokens);
      Set<String> ofWords = ofWords(TypedText.plain(line.words()));
      events.add(event(outcome, tokens, ofWords));
      if (!unbroken.equals(tokens)) {
        events.add(event(outcome, unbroken, ofWords));
      }
    }
    TrainingParameters parameters = new TrainingParameters();
    parameters.put(TrainingParameters.CUTOFF_PARAM, CUTOFF);
    parameters.put(TrainingParameters.ITERATIONS_PARAM, ITERATIONS);
    DataIndexer indexer = new OnePassDataIndexer();
    indexer.init(parameters, Map.of());
    indexer.index(new Events(events));
    parameters.put(QNTrainer.L1COST_PARAM, 0.0);
    parameters.put(QNTrainer.L2COST_PARAM, SQUARES);
    QNTrainer trainer = new QNTrainer();
    trainer.init(parameters, Map.of());
    return new TalkModel(lexicon, weights(trainer.trainModel(ITERATIONS, indexer)));
  }

  private static Event event(String outcome, List<String> tokens, Set<String> ofWords) {
    Set<String> all = runs(tokens, LONGEST_RUN, "");
    all.addAll(ofWords);
    return new Event(outcome, all.toArray(new String[0]));
  }

  private static Set<String> ofWords(List<String> words) {
    Set<String> all = runs(words, LONGEST_OF_WORDS, "=");
    Arrays.stream(LENGTHS)
        .filter(length -> words.size() > length)
        .forEach(length -> all.add(">" + length));
    return all;
  }

  // Of two outcomes only the difference counts.
  private static Map<String, Float> weights(AbstractModel model) {
    Map<String, Float> weights = new HashMap<>();
    @SuppressWarnings("unchecked")
    Map<String, Context> contexts = (Map<String, Context>) model.getDataStructures()[1];
    contexts.forEach(
        (run, context) -> {
          double weight = 0;
          for (int i = 0; i < context.getOutcomes().length; i++) {
            boolean talk = model.getOutcome(context.getOutcomes()[i]).equals(TALK);
            weight += talk ? context.getParameters()[i] : -context.getParameters()[i];
          }
          weights.put(run, (float) weight);
        });
    return weights;
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

  private record Events(Iterator<Event> left) implements ObjectStream<Event> {
    Events(List<Event> events) {
      this(events.iterator());
    }

    @Override
    public Event read() {
      return left.hasNext() ? left.next() : null;
    }

    @Override
    public void reset() {
      throw new UnsupportedOperationException("expected one pass");
    }

    @Override
    public void close() {
      // nothing is open
    }
  }
}
