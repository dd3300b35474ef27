package tiptoe.clinical;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import tiptoe.exam.Answer;
import tiptoe.files.Shipped;
import tiptoe.protocol.Protocol;

/**
 * What speaks for an infection that begins within 72 hours of birth, by NICE NG195.
 *
 * @param redFlags names of the red flags that were found
 * @param riskFactors names of the other risk factors
 * @param indicators names of the other clinical indicators
 * @param evidence the findings that they rest on
 * @param open facts that were not stated and of which each could add to these
 */
record EarlyInfection(
    List<String> redFlags,
    List<String> riskFactors,
    List<String> indicators,
    List<Answer> evidence,
    Set<String> open) {
  /** The framework is for infection that begins before this age in hours. */
  static final double UNTIL_HOURS = 72;

  private static final int ENOUGH_TO_TREAT = 2;

  enum Recommendation {
    /** Investigate and start antibiotics. */
    TREAT,
    /** Judge whether antibiotics can be withheld, and whether to watch the baby. */
    JUDGE,
    NOTHING
  }

  static EarlyInfection of(AssessedBaby baby) {
    List<Answer> evidence = new ArrayList<>();
    Set<String> open = new TreeSet<>();
    return new EarlyInfection(
        found(Framework.SHIPPED.redFlags, baby, evidence, open),
        found(Framework.SHIPPED.riskFactors, baby, evidence, open),
        found(Framework.SHIPPED.indicators, baby, evidence, open),
        List.copyOf(evidence),
        open);
  }

  static String version() {
    return Framework.SHIPPED.version;
  }

  Recommendation recommendation() {
    int others = riskFactors.size() + indicators.size();
    if (!redFlags.isEmpty() || others >= ENOUGH_TO_TREAT) {
      return Recommendation.TREAT;
    }
    return others == 1 ? Recommendation.JUDGE : Recommendation.NOTHING;
  }

  /** Everything that counts, the gravest first. */
  List<String> names() {
    return Stream.of(redFlags, riskFactors, indicators).flatMap(List::stream).toList();
  }

  static ConditionResult hasRedFlag(AssessedBaby baby) {
    EarlyInfection found = of(baby);
    return ConditionResult.of(!found.redFlags.isEmpty(), found.evidence);
  }

  /** Where one thing was found, a fact that was not stated could be the second. */
  static ConditionResult isToBeTreated(AssessedBaby baby) {
    EarlyInfection found = of(baby);
    return switch (found.recommendation()) {
      case TREAT -> ConditionResult.yes(found.evidence);
      case JUDGE -> found.open.isEmpty() ? ConditionResult.NO : ConditionResult.unknown(found.open);
      case NOTHING -> ConditionResult.NO;
    };
  }

  /** Whether a risk factor is all that was found; a finding has a flag of its own. */
  static ConditionResult isOneRiskFactor(AssessedBaby baby) {
    EarlyInfection found = of(baby);
    return ConditionResult.of(
        found.recommendation() == Recommendation.JUDGE && found.riskFactors.size() == 1);
  }

  private static List<String> found(
      List<Item> items, AssessedBaby baby, List<Answer> evidence, Set<String> open) {
    List<String> names = new ArrayList<>();
    for (Item item : items) {
      ConditionResult result = item.when.of(baby);
      if (result.isYes()) {
        names.add(item.name);
        result.evidence().stream().filter(one -> !evidence.contains(one)).forEach(evidence::add);
      } else {
        open.addAll(result.needs());
      }
    }
    return names;
  }

  private record Item(String name, Condition when) {}

  private record Framework(
      String version, List<Item> redFlags, List<Item> riskFactors, List<Item> indicators) {
    static final Framework SHIPPED = read();

    private static Framework read() {
      JsonNode file = Shipped.yaml(EarlyInfection.class, "early-infection.yaml", JsonNode.class);
      Set<String> rules =
          Rules.standard().flags().stream().map(Rules.FlagRule::id).collect(Collectors.toSet());
      ConditionReader reader = new ConditionReader(Protocol.standard(), rules);
      return new Framework(
          file.path("version").asText(),
          items(file.path("red-flags"), reader),
          items(file.path("risk-factors"), reader),
          items(file.path("clinical-indicators"), reader));
    }

    private static List<Item> items(JsonNode list, ConditionReader reader) {
      List<Item> items = new ArrayList<>();
      list.forEach(
          one -> items.add(new Item(one.path("name").asText(), reader.read(one.path("when")))));
      return items;
    }
  }
}
