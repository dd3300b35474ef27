package tiptoe.clinical;

import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.dataformat.yaml.YAMLFactory;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import tiptoe.Golden;
import tiptoe.exam.Answer;
import tiptoe.exam.Baby;
import tiptoe.finding.Finding;
import tiptoe.protocol.Norm;
import tiptoe.protocol.Protocol;
import tiptoe.protocol.Side;
import tiptoe.protocol.Step;
import tiptoe.protocol.Value;
import tiptoe.settings.Settings;

/**
 * levels.md, the page on which a clinician reads what every finding asks for, says what the rules
 * say.
 */
class LevelsPageTest {
  private static final Path RULES = Path.of("src/main/resources/tiptoe/clinical/rules.yaml");
  private static final Path PAGE = RULES.resolveSibling("levels.md");
  private static final Map<String, String> CHECKS =
      Map.ofEntries(
          Map.entry("simple-dimple", "a simple dimple"),
          Map.entry("dimple-not-simple", "a dimple that is not simple"),
          Map.entry("saturation-fails", "the saturation screen fails"),
          Map.entry("saturation-unclear", "the saturation screen is to be repeated"),
          Map.entry("saturation-not-passed", "the saturation screen is not passed"),
          Map.entry("saturation-screened", "the saturation screen was done"),
          Map.entry(
              "maturity-differs", "maturity score and stated gestation more than 2 weeks apart"),
          Map.entry("bilirubin-close", "bilirubin close below the threshold of phototherapy"),
          Map.entry("bilirubin-phototherapy", "bilirubin above the threshold of phototherapy"),
          Map.entry(
              "bilirubin-exchange", "bilirubin above the threshold of an exchange transfusion"),
          Map.entry("bilirubin-rises-fast", "bilirubin rises fast"),
          Map.entry("glucose-severe", "glucose severely low"),
          Map.entry("glucose-low", "glucose low"),
          Map.entry("glucose-borderline", "glucose below the aim"),
          Map.entry("glucose-low-for-signs", "glucose low for a baby with signs"),
          Map.entry("glucose-low-again", "the last two glucoses low"),
          Map.entry("early-infection-red-flag", "a red flag of infection from birth"),
          Map.entry(
              "early-infection-treat",
              "a red flag, or two other risk factors or clinical indicators of infection from"
                  + " birth"),
          Map.entry("early-infection-risk", "one risk factor of infection from birth and no more"));

  private final Set<String> alone = new LinkedHashSet<>();
  private final StringBuilder page = new StringBuilder();

  @Test
  void saysWhatTheRulesSay() throws IOException {
    page.append(
        """
        # What each finding asks for

        Written from rules.yaml and held against it by LevelsPageTest; change the rules, not this page.
        Emergency: call for help now. Urgent: a senior sees the baby by the time given, and the baby
        does not go home before. Arrange: a test, referral or review with a date. Note: to be read.
        "Common practice" means that no published figure was found for the level.

        ## Abnormal values by themselves

        | step | value | level | by when | consider | do | source |
        |---|---|---|---|---|---|---|
        """);
    Protocol.standard().steps().forEach(this::values);
    page.append(
        """

        ## Numbers, facts about the baby and combinations

        A combination stands in place of what its parts would ask for.

        | when | level | by when | consider | do | source |
        |---|---|---|---|---|---|
        """);
    for (JsonNode rule :
        new ObjectMapper(new YAMLFactory()).readTree(RULES.toFile()).path("flags")) {
      String id = rule.path("id").asText();
      boolean combines = rule.path("when").toString().matches(".*\"(all|check)\".*");
      if (combines || !alone.contains(id)) {
        Rules.FlagRule flag =
            Rules.standard().flags().stream()
                .filter(r -> r.id().equals(id))
                .findFirst()
                .orElseThrow();
        row(
            words(rule.path("when")).replaceFirst("^\\((.*)\\)$", "$1"),
            flag.level().id(),
            flag.actBy(),
            flag.consider() == null ? "" : flag.consider(),
            flag.advice(),
            flag.source());
      }
    }
    Golden.check(PAGE, page.toString());
    assertTrue(alone.size() > 100, "rules raised by single values: " + alone.size());
  }

  private void values(Step step) {
    for (Value value : step.values()) {
      if (value.norm() == Norm.ABNORMAL) {
        Finding finding = Finding.of(step.id(), step.sided() ? Side.LEFT : null, value.id());
        List<Flag> flags =
            Assessor.of(Protocol.standard())
                .assess(
                    Baby.UNKNOWN, List.of(new Answer(finding, 1)), Settings.DEFAULT, Bedside.NOW)
                .flags();
        for (Flag flag : flags) {
          alone.add(flag.rule());
          Rules.FlagRule rule =
              Rules.standard().flags().stream()
                  .filter(r -> r.id().equals(flag.rule()))
                  .findFirst()
                  .orElseThrow();
          row(
              step.label(),
              value.label(),
              flag.level().id(),
              flag.when(),
              rule.consider() == null ? "" : rule.consider(),
              rule.advice(),
              rule.source());
        }
      }
    }
  }

  private void row(String... cells) {
    page.append("| ").append(String.join(" | ", cells)).append(" |\n");
  }

  private static String words(JsonNode condition) {
    if (condition.isTextual()) {
      return term(condition.asText());
    }
    String kind = condition.fieldNames().next();
    JsonNode operand = condition.path(kind);
    return switch (kind) {
      case "any" -> joined(operand, " or ");
      case "all" -> joined(operand, " and ");
      case "at-least" ->
          "at least " + operand.asInt() + " of " + joined(condition.path("of"), ", ");
      case "not" -> "not " + words(operand);
      case "known" -> words(operand);
      case "check" -> CHECKS.get(operand.asText());
      case "raised" -> "raised " + operand.asText();
      default -> throw new IllegalArgumentException("expected a condition, found " + kind);
    };
  }

  private static String joined(JsonNode parts, String between) {
    List<String> words = new ArrayList<>();
    parts.forEach(part -> words.add(words(part)));
    return words.stream().collect(Collectors.joining(between, "(", ")"));
  }

  private static String term(String text) {
    return text.replace("|", " or ")
        .replace(">=", " ≥ ")
        .replace("<=", " ≤ ")
        .replaceAll("(?<! [≥≤])([<>])", " $1 ")
        .replaceAll("(?<=[a-z])=", " ")
        .replaceAll("(?<=[a-z])[.-](?=[a-z0-9])", " ");
  }
}
