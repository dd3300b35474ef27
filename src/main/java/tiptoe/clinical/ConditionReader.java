package tiptoe.clinical;

import static tiptoe.clinical.TermReader.expect;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import tiptoe.protocol.Protocol;

/**
 * Reads the conditions of the rules file.
 *
 * <pre>
 * condition = term | "any:" list | "all:" list | "not:" condition | "check:" name | "raised:" id
 *           | "at-least:" n "of:" list | "known:" condition .
 * list      = "[" condition { "," condition } "]" .
 * </pre>
 */
final class ConditionReader {
  private final TermReader terms;
  private final Set<String> flagIds;

  /**
   * A reader for one rule.
   *
   * @param flagIds ids that {@code raised} may name
   */
  ConditionReader(Protocol protocol, Set<String> flagIds) {
    this.terms = new TermReader(protocol);
    this.flagIds = flagIds;
  }

  /** The facts about the baby that what was read depends on. */
  Set<String> facts() {
    return terms.facts();
  }

  Condition read(JsonNode node) {
    if (node.isTextual()) {
      return terms.read(node.asText());
    }
    String kind = node.isObject() && !node.isEmpty() ? node.fieldNames().next() : "nothing";
    RulesReader.onlyKeys("a condition", node, node.has("at-least") ? "at-least of" : kind);
    JsonNode operand = node.path(kind);
    return switch (kind) {
      case "any" -> atLeast(1, list(operand));
      case "all" -> {
        List<Condition> parts = list(operand);
        yield atLeast(parts.size(), parts);
      }
      case "at-least", "of" -> atLeast(node.path("at-least").asInt(), list(node.path("of")));
      case "not" -> {
        Condition part = read(operand);
        yield baby -> part.of(baby).negated();
      }
      case "known" -> {
        Condition part = read(operand);
        yield subject -> part.of(subject).isYes() ? part.of(subject) : ConditionResult.NO;
      }
      case "check" -> Check.named(operand.asText());
      case "raised" -> {
        String id = known(operand.asText(), flagIds);
        yield baby -> ConditionResult.of(baby.isRaised(id));
      }
      default -> throw new IllegalArgumentException("expected a condition, found " + kind);
    };
  }

  static String known(String id, Set<String> flagIds) {
    expect(flagIds.contains(id), "expected the id of an earlier flag, found " + id);
    return id;
  }

  private static Condition atLeast(int least, List<Condition> parts) {
    return baby ->
        ConditionResult.atLeast(least, parts.stream().map(part -> part.of(baby)).toList());
  }

  private List<Condition> list(JsonNode operand) {
    expect(
        operand.isArray() && !operand.isEmpty(), "expected a list of conditions, found " + operand);
    List<Condition> parts = new ArrayList<>();
    operand.forEach(part -> parts.add(read(part)));
    return parts;
  }
}
