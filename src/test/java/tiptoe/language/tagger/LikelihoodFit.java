package tiptoe.language.tagger;

import de.bwaldvogel.liblinear.Feature;
import de.bwaldvogel.liblinear.FeatureNode;
import de.bwaldvogel.liblinear.Linear;
import de.bwaldvogel.liblinear.Model;
import de.bwaldvogel.liblinear.Parameter;
import de.bwaldvogel.liblinear.Problem;
import de.bwaldvogel.liblinear.SolverType;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.IntStream;
import tiptoe.finding.Source;
import tiptoe.language.Dialogue;
import tiptoe.language.Interpreter;
import tiptoe.language.SecondReading.Claim;
import tiptoe.language.Shipped;
import tiptoe.language.TypedText;
import tiptoe.protocol.Protocol;
import tiptoe.protocol.Step;

/**
 * Fits {@code likelihood.txt} on sentences whose statements are known, with commas and without, and
 * prints what each limit of {@code likelihood.yaml} would record and offer of authors whom the
 * weights in question were not fitted on.
 *
 * <pre>
 * LikelihoodFit OUT FILE…
 * </pre>
 */
public final class LikelihoodFit {
  private static final Protocol PROTOCOL = Protocol.standard();
  private static final int FOLDS = 10;

  /** A feature of fewer claims tells nothing. */
  private static final int LEAST = 3;

  /** Weight of the claims against that of small weights. */
  private static final double FIT = 1;

  private static final double END = 1e-3;

  /** Of what changes less, nothing is kept; left-out authors are read alike without. */
  private static final double SMALLEST = 0.1;

  /** Leaves the rules as they are. */
  private static final double NEUTRAL = 0.8;

  private static final double[] LIMITS = {
    0.3, 0.5, 0.6, 0.7, 0.8, 0.9, 0.95, 0.96, 0.97, 0.98, 0.985, 0.99, 0.995
  };

  private static final List<String> VERDICTS = List.of("sure", "offered", "held", "doubtful");

  /** A claim as it was read: by whom, what stands around it, and whether it was meant. */
  private record Case(
      String author,
      Set<String> features,
      boolean meant,
      boolean talk,
      boolean alone,
      String text) {
    String verdict() {
      return VERDICTS.stream().filter(features::contains).findFirst().orElseThrow();
    }
  }

  private LikelihoodFit() {}

  /** Prints the tables and writes the weights. */
  public static void main(String[] args) throws IOException {
    Reader reader = new Reader();
    for (String file : List.of(args).subList(1, args.length)) {
      for (String line : Files.readAllLines(Path.of(file))) {
        if (!line.isBlank() && !line.startsWith("#")) {
          reader.read(Path.of(file).getFileName().toString(), line);
        }
      }
    }
    List<Case> cases = reader.cases;
    double[] chances = new double[cases.size()];
    List<String> authors = cases.stream().map(Case::author).distinct().sorted().toList();
    for (int fold = 0; fold < FOLDS; fold++) {
      int out = fold;
      List<Case> others =
          cases.stream().filter(one -> authors.indexOf(one.author()) % FOLDS != out).toList();
      Likelihood model = fitted(others);
      for (int i = 0; i < cases.size(); i++) {
        if (authors.indexOf(cases.get(i).author()) % FOLDS == out) {
          chances[i] = model.of(cases.get(i).features());
        }
      }
    }
    for (String verdict : VERDICTS) {
      print(verdict, cases, chances, verdict, false);
      print(verdict + ", standing alone", cases, chances, verdict, true);
    }
    write(fitted(cases), Path.of(args[0]));
  }

  /** Reads sentences, and keeps each claim that comes up. */
  private static final class Reader {
    private final List<Case> cases = new ArrayList<>();
    private final Set<List<Object>> known = new HashSet<>();
    private final Interpreter interpreter;
    private final Set<String> meant = new TreeSet<>();
    private String author;
    private String text;

    Reader() throws IOException {
      interpreter =
          new Interpreter(
              Shipped.network(),
              PROTOCOL,
              Shipped.tagger()
                  .weighing(
                      (claim, features) -> {
                        if (isCounted(claim)
                            && known.add(List.of(key(claim), Set.copyOf(features)))) {
                          cases.add(of(claim, features));
                        }
                        return NEUTRAL;
                      }));
    }

    private Case of(Claim claim, Set<String> features) {
      return new Case(
          author,
          Set.copyOf(features),
          meant.stream().anyMatch(one -> isSame(key(claim), one)),
          meant.isEmpty(),
          features.contains("alone"),
          key(claim) + " " + text);
    }

    void read(String by, String line) throws IOException {
      String[] parts = line.split("=>");
      author = by;
      meant.clear();
      if (parts.length > 1 && !parts[1].strip().equals("none")) {
        List.of(parts[1].split(";")).forEach(one -> meant.add(one.strip()));
      }
      known.clear();
      for (String way : List.of(parts[0], parts[0].replace(",", ""))) {
        text = way;
        Dialogue dialogue = Dialogue.START;
        for (String sentence : TypedText.sentences(way.strip())) {
          dialogue =
              interpreter
                  .interpret(Shipped.typed().utterance(sentence), dialogue, Source.GRAMMAR)
                  .dialogue();
        }
      }
    }
  }

  private static boolean isCounted(Claim claim) {
    Step step = PROTOCOL.step(claim.step());
    return !step.isMeasured() && (claim.side() != null || !step.sided());
  }

  private static String key(Claim claim) {
    String side = claim.side() == null ? "" : "/" + claim.side().id();
    return claim.step() + side + "=" + claim.value();
  }

  private static boolean isSame(String claim, String meant) {
    String[] one = claim.split("=", 2);
    String[] other = meant.split("=", 2);
    return placed(one[0]).equals(placed(other[0])) && NaturalSentences.same(one[1], other[1]);
  }

  private static String placed(String key) {
    String step = key.replaceAll("/.*", "");
    return PROTOCOL.find(step).filter(Step::sided).isPresent() ? key : step;
  }

  private static Likelihood fitted(List<Case> cases) {
    Map<String, Integer> counts = new TreeMap<>();
    cases.forEach(one -> one.features().forEach(feature -> counts.merge(feature, 1, Integer::sum)));
    counts.values().removeIf(count -> count < LEAST);
    counts.remove("alone");
    List<String> known = List.copyOf(counts.keySet());
    Map<String, Integer> places = new HashMap<>();
    IntStream.range(0, known.size()).forEach(i -> places.put(known.get(i), i + 1));
    Problem problem = new Problem();
    problem.l = cases.size();
    problem.n = known.size() + 1;
    problem.x = cases.stream().map(one -> features(one, places)).toArray(Feature[][]::new);
    problem.y = cases.stream().mapToDouble(one -> one.meant() ? 1 : 0).toArray();
    Linear.disableDebugOutput();
    Model model = Linear.train(problem, new Parameter(SolverType.L2R_LR, FIT, END));
    double sign = model.getLabels()[0] == 1 ? 1 : -1;
    Map<String, Float> weights = new LinkedHashMap<>();
    double[] all = model.getFeatureWeights();
    weights.put(Likelihood.ALWAYS, (float) (sign * all[known.size()]));
    for (int i = 0; i < known.size(); i++) {
      float weight = Math.round(sign * all[i] * 100) / 100f;
      if (Math.abs(weight) >= SMALLEST) {
        weights.put(known.get(i), weight);
      }
    }
    return new Likelihood(weights);
  }

  private static Feature[] features(Case one, Map<String, Integer> places) {
    TreeSet<Integer> all = new TreeSet<>();
    one.features().stream().filter(places::containsKey).map(places::get).forEach(all::add);
    all.add(places.size() + 1);
    return all.stream().map(place -> new FeatureNode(place, 1)).toArray(Feature[]::new);
  }

  private static void print(
      String name, List<Case> cases, double[] chances, String verdict, boolean onlyAlone) {
    System.out.println(name + ": limit, meant and not meant above it, of these in lines of talk");
    for (double limit : LIMITS) {
      List<Case> above =
          IntStream.range(0, chances.length)
              .filter(i -> chances[i] >= limit)
              .mapToObj(cases::get)
              .filter(one -> one.verdict().equals(verdict) && (!onlyAlone || one.alone()))
              .toList();
      System.out.printf(
          Locale.ROOT,
          "%.3f %6d %5d %5d%n",
          limit,
          above.stream().filter(Case::meant).count(),
          above.stream().filter(one -> !one.meant() && !one.talk()).count(),
          above.stream().filter(Case::talk).count());
    }
  }

  private static void write(Likelihood model, Path to) throws IOException {
    List<String> lines = new ArrayList<>();
    lines.add(
        "# By how much what stands around a claim (language.tagger.Surroundings) changes the log"
            + " odds");
    lines.add(
        "# that it was meant: made by LikelihoodFit, see models/README.md. Weight, tab, feature.");
    model.weights().forEach((feature, weight) -> lines.add(weight + "\t" + feature));
    Files.write(to, lines);
    System.out.println(lines.size() + " lines in " + to.getFileName());
  }
}
