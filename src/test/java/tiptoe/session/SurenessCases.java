package tiptoe.session;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.Stream;
import tiptoe.finding.Outcome;
import tiptoe.finding.Source;
import tiptoe.language.Dialogue;
import tiptoe.language.Interpretation;
import tiptoe.language.Meaning;
import tiptoe.speech.Hypothesis;

/**
 * Prints the statements that {@link Sureness} rates in what {@link HearAll} heard, each with what
 * speaks for it and whether it was said, one JSON object a line: what {@code fit/sureness.py} fits
 * on.
 *
 * <pre>
 * SurenessCases KEPT SETS
 * </pre>
 *
 * <p>Their kinds are {@code phrases} that fit, are {@code unfit} and would be offered, or are
 * {@code ignored}, and what is heard {@code freely}, {@code badly} where no words fit well, and
 * {@code beside} phrases that fit.
 *
 * <p>What was said is {@code name.key} beside a recording, or what the text beside it means; talk
 * has neither and states nothing.
 */
final class SurenessCases {
  private static final ObjectMapper JSON = new ObjectMapper();

  private final Understanding understanding;
  private final Path sets;
  private final UtteranceVerifier limits = new UtteranceVerifier(VerifierLimits.shipped());
  private final Sureness sureness = Sureness.shipped();
  private final Map<List<String>, Interpretation> known = new HashMap<>();

  private SurenessCases(Understanding understanding, Path sets) {
    this.understanding = understanding;
    this.sets = sets;
  }

  /** Prints all. */
  public static void main(String[] args) throws IOException {
    Understanding understanding = Understanding.load(Home.locate());
    understanding.getReady(System.err);
    SurenessCases cases = new SurenessCases(understanding, Path.of(args[1]));
    try (Stream<Path> kept = Files.list(Path.of(args[0]))) {
      for (Path file : kept.filter(one -> one.toString().endsWith(".jsonl")).sorted().toList()) {
        for (String line : Files.readAllLines(file)) {
          cases.print(JSON.readTree(line));
        }
      }
    }
    System.exit(0);
  }

  private void print(JsonNode row) throws IOException {
    Set<String> said = said(row);
    for (JsonNode heard : row.path("heard")) {
      Hypothesis utterance = KeptHearing.kept(heard).utterance();
      Function<List<String>, Interpretation> interpret = this::interpret;
      Outcome outcome = limits.decide(utterance, interpret, false).outcome();
      boolean fits = outcome == Outcome.ACCEPTED || outcome == Outcome.COMMAND;
      String phrases = outcome == Outcome.UNSURE ? "unfit" : fits ? "phrases" : "ignored";
      print(row, phrases, sureness.ofPhrases(utterance, interpret), said);
      if (utterance.freely().isPresent()) {
        Hypothesis free = utterance.freely().get();
        boolean offered = limits.offered(utterance).isPresent();
        String freely = fits ? "beside" : offered ? "freely" : "badly";
        print(row, freely, sureness.ofFreeWordings(utterance, free, interpret), said);
      }
    }
  }

  private static void print(
      JsonNode row, String kind, List<Sureness.Case> cases, Set<String> said) {
    for (Sureness.Case one : cases) {
      Optional<String> says = HeardFigures.key(one.meaning());
      if (says.isPresent()) {
        ObjectNode line = JSON.createObjectNode().put("kind", kind);
        for (String name : List.of("set", "split", "file", "condition")) {
          line.set(name, row.get(name));
        }
        line.put("says", says.get()).put("right", HeardFigures.isIn(says.get(), said));
        line.put("normal", Sureness.isNormal(one.meaning()));
        ArrayNode features = line.putArray("features");
        for (double feature : one.features()) {
          features.add(feature);
        }
        System.out.println(line);
      }
    }
  }

  private Set<String> said(JsonNode row) throws IOException {
    Path base = sets.resolve(row.path("set").asText());
    String name = row.path("file").asText().replaceFirst("\\.wav$", "");
    if (Files.exists(base.resolve(name + ".key"))) {
      return HeardFigures.keys(Files.readString(base.resolve(name + ".key")).strip());
    }
    Set<String> said = new TreeSet<>();
    if (Files.exists(base.resolve(name + ".txt"))) {
      for (String line : Files.readAllLines(base.resolve(name + ".txt"))) {
        for (Meaning one : interpret(understanding.typed().words(line)).meanings()) {
          HeardFigures.key(one).ifPresent(said::add);
        }
      }
    }
    return said;
  }

  private Interpretation interpret(List<String> words) {
    return known.computeIfAbsent(
        words, all -> understanding.interpreter().interpret(all, Dialogue.START, Source.GRAMMAR));
  }
}
