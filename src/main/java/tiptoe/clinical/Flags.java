package tiptoe.clinical;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Stream;
import tiptoe.exam.Answer;
import tiptoe.protocol.Norm;
import tiptoe.protocol.Protocol;
import tiptoe.protocol.Side;
import tiptoe.protocol.Step;
import tiptoe.protocol.Value;

/** Applies the rules that raise flags to one case. */
final class Flags {
  /** The rule behind every abnormal finding that no other rule rests on. */
  static final String GENERAL = "other-abnormal";

  private final Protocol protocol;
  private final Rules rules;
  private final Map<String, Rules.FlagRule> raised = new LinkedHashMap<>();
  private final Map<String, List<Answer>> evidence = new LinkedHashMap<>();
  private final Map<String, Set<String>> needs = new LinkedHashMap<>();
  private final Map<Rules.FlagRule, List<Answer>> applied = new LinkedHashMap<>();
  private AssessedBaby baby;

  Flags(Protocol protocol, Rules rules, AssessedBaby baby) {
    this.protocol = protocol;
    this.rules = rules;
    this.baby = baby;
    rules.flags().forEach(this::apply);
    raised.values().stream().toList().forEach(this::takeOver);
    this.baby = baby.withRaised(raised.keySet());
  }

  /** The case with what was raised, for the rules that come behind. */
  AssessedBaby baby() {
    return baby;
  }

  /** What was asked: the fact, and what it decides. */
  Map<String, Set<String>> needs() {
    return needs;
  }

  /** The flags, the most pressing first. */
  List<Flag> flags() {
    List<Flag> flags = new ArrayList<>();
    raised.values().forEach(rule -> flags.add(flag(rule)));
    flags.addAll(general());
    flags.sort(Comparator.comparing(Flag::level));
    return flags;
  }

  /** The numbers that flags rest on, each once. */
  List<AbnormalNumber> abnormalNumbers() {
    NumberDirections directions =
        new NumberDirections(protocol, rules, baby, Set.copyOf(raised.keySet()));
    Map<List<Object>, AbnormalNumber> found = new LinkedHashMap<>();
    applied.forEach(
        (rule, answers) -> {
          boolean told =
              answers.stream()
                  .filter(answer -> answer.quantity() != null)
                  .allMatch(answer -> found.containsKey(place(answer.step(), answer.statement())));
          if (!told) {
            directions
                .of(rule, answers)
                .forEach(one -> found.putIfAbsent(place(one.step(), one.statement()), one));
          }
        });
    return List.copyOf(found.values());
  }

  private static List<Object> place(String step, int statement) {
    return List.of(step, statement);
  }

  private void apply(Rules.FlagRule rule) {
    ConditionResult verdict = rule.when().of(baby);
    if (verdict.isYes()) {
      raised.put(rule.id(), rule);
      evidence.put(rule.id(), verdict.evidence());
      applied.put(rule, verdict.evidence());
      baby = baby.withRaised(raised.keySet());
    } else if (verdict.isUnknown() && rule.asks() != null) {
      for (String fact : verdict.needs()) {
        needs.computeIfAbsent(fact, f -> new LinkedHashSet<>()).add(rule.asks());
      }
    }
  }

  // What raised a flag that is superfluous counts for the one that makes it so.
  private void takeOver(Rules.FlagRule rule) {
    for (String lesser : rule.insteadOf()) {
      if (raised.containsKey(rule.id()) && raised.remove(lesser) != null) {
        evidence.put(
            rule.id(),
            Stream.of(evidence.get(rule.id()), evidence.get(lesser))
                .flatMap(List::stream)
                .distinct()
                .toList());
      }
    }
  }

  private Flag flag(Rules.FlagRule rule) {
    List<Answer> answers = evidence.get(rule.id());
    return new Flag(
        rule.level(),
        rule.id(),
        answers.isEmpty() ? rule.steps() : steps(answers),
        sides(answers),
        statements(answers),
        rule.actBy(),
        rule.consider() == null
            ? rule.advice()
            : "consider " + rule.consider() + "; " + rule.advice(),
        rule.consider(),
        rule.source(),
        false);
  }

  // One note for each step, in the order of the protocol.
  private List<Flag> general() {
    Set<Answer> accounted = new LinkedHashSet<>();
    raised.keySet().forEach(id -> accounted.addAll(evidence.get(id)));
    rules.nothingToRaise().forEach(condition -> accounted.addAll(condition.of(baby).evidence()));
    List<Flag> notes = new ArrayList<>();
    protocol
        .steps()
        .forEach(
            step -> {
              List<Answer> left =
                  baby.answers(step.id()).stream()
                      .filter(answer -> step.norm(answer.value()) == Norm.ABNORMAL)
                      .filter(answer -> !accounted.contains(answer))
                      .toList();
              if (!left.isEmpty()) {
                notes.add(note(step, left));
              }
            });
    return notes;
  }

  private static Flag note(Step step, List<Answer> answers) {
    List<String> values =
        answers.stream()
            .map(answer -> step.value(answer.value()).map(Value::label).orElseThrow())
            .distinct()
            .toList();
    return new Flag(
        Level.NOTE,
        GENERAL,
        List.of(step.id()),
        sides(answers),
        statements(answers),
        "at review",
        step.label() + " " + String.join(", ", values) + ": review, and senior opinion if in doubt",
        null,
        "not a normal finding",
        false);
  }

  private static List<String> steps(List<Answer> answers) {
    return answers.stream().map(Answer::step).distinct().toList();
  }

  private static List<Side> sides(List<Answer> answers) {
    return answers.stream().map(Answer::side).filter(Objects::nonNull).distinct().sorted().toList();
  }

  private static List<Integer> statements(List<Answer> answers) {
    return answers.stream().map(Answer::statement).distinct().sorted().toList();
  }
}
