package tiptoe.language.tagger;

import com.fasterxml.jackson.annotation.JsonProperty;
import java.util.HashMap;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import tiptoe.files.Shipped;
import tiptoe.language.Interpreter;

/**
 * How likely it is that a clinician meant a claim that was read word by word, by what stands around
 * it: a logistic regression whose weights, few enough to read, stand in {@code likelihood.txt}. It
 * is evidence beside the rules that read the claim, and never makes one.
 *
 * @param weights by how much each feature changes the log odds
 */
record Likelihood(Map<String, Float> weights) {
  /** In every claim. */
  static final String ALWAYS = "always";

  private static final String FILE = "likelihood.txt";

  /**
   * From which likelihood on what becomes of a claim.
   *
   * @param offeredFrom what the rules offer is offered from here on
   * @param offeredDoubtfulFrom what they do not, since the sentence holds a doubt, a plan or
   *     another person
   * @param recordedFrom what the rules record is recorded from here on, else offered
   * @param recordedOpenFrom what words left open may change is recorded from here on
   * @param keyNormalFrom the same for what makes a key step normal, and for what the rules do not
   *     even offer
   */
  record Limits(
      @JsonProperty("offered-from") double offeredFrom,
      @JsonProperty("offered-doubtful-from") double offeredDoubtfulFrom,
      @JsonProperty("recorded-from") double recordedFrom,
      @JsonProperty("recorded-open-from") double recordedOpenFrom,
      @JsonProperty("key-normal-from") double keyNormalFrom) {
    static Limits shipped() {
      return Shipped.yaml(Interpreter.class, "likelihood.yaml", Limits.class);
    }
  }

  static Likelihood shipped() {
    return new Likelihood(
        Shipped.lines(Interpreter.class, FILE).stream()
            .filter(line -> !line.startsWith("#"))
            .map(line -> line.split("\t"))
            .collect(
                Collectors.toMap(
                    field -> field[1],
                    field -> Float.valueOf(field[0]),
                    (one, other) -> other,
                    HashMap::new)));
  }

  /** From 0 to 1. */
  double of(Set<String> features) {
    double odds = weights.getOrDefault(ALWAYS, 0f);
    for (String feature : features) {
      odds += weights.getOrDefault(feature, 0f);
    }
    return 1 / (1 + Math.exp(-odds));
  }
}
