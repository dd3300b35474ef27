package tiptoe.clinical;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import tiptoe.exam.Answer;
import tiptoe.protocol.Detail;
import tiptoe.protocol.Fact;
import tiptoe.protocol.Gestation;
import tiptoe.protocol.Protocol;
import tiptoe.protocol.Side;
import tiptoe.protocol.Step;
import tiptoe.settings.Setting;

/**
 * Reads the single terms of conditions and checks every id in them.
 *
 * <pre>
 * term     = [ "both " ] subject [ relation operand ] .
 * subject  = step | step "." detail | fact | figure | setting .
 * relation = "=" | "&lt;" | "&lt;=" | "&gt;=" | "&gt;" .
 * operand  = id { "|" id } | number | weeks "+" days .
 * </pre>
 *
 * <p>A step or detail alone means that it was stated. A side of the body is never named: a term
 * holds where it holds on any side, with {@code both} where it holds on each.
 */
final class TermReader {
  private static final Pattern FORM =
      Pattern.compile("(both )?([a-z0-9-]+)(?:\\.([a-z-]+))?(?:(<=|>=|<|>|=)(\\S+))?");

  private final Protocol protocol;
  private final Set<String> facts = new TreeSet<>();

  TermReader(Protocol protocol) {
    this.protocol = protocol;
  }

  /** The facts about the baby that the terms read so far depend on. */
  Set<String> facts() {
    return facts;
  }

  Condition read(String term) {
    Matcher form = FORM.matcher(term);
    expect(form.matches(), "expected a condition such as moro=absent, found " + term);
    String named = form.group(2);
    String detail = form.group(3);
    String sign = form.group(4);
    String operand = form.group(5);
    Optional<Step> step = protocol.find(named);
    if (step.isPresent()) {
      return detail == null
          ? step(step.get(), form.group(1) != null, sign, operand)
          : detail(step.get(), detail, sign, operand);
    }
    expect(
        detail == null && form.group(1) == null && sign != null,
        "expected a step, found " + named + " in " + term);
    return other(named, sign, operand, term);
  }

  private Condition step(Step step, boolean both, String sign, String operand) {
    if (sign == null) {
      return baby -> ConditionResult.found(baby.answers(step.id()));
    }
    if (step.isMeasured()) {
      Relation relation = Relation.of(sign);
      double limit = Double.parseDouble(operand);
      return baby ->
          ConditionResult.found(
              baby.number(step.id()).stream()
                  .filter(answer -> relation.holds(answer.quantity(), limit))
                  .toList());
    }
    Set<String> values = Set.of(operand.split("\\|"));
    expect(sign.equals("="), "expected = for step " + step.id() + ", found " + sign);
    values.forEach(
        value ->
            expect(
                step.value(value).isPresent(),
                "expected a value of step " + step.id() + ", found " + value));
    expect(!both || step.sided(), "expected a step with sides, found " + step.id());
    return baby -> {
      List<Answer> found =
          baby.answers(step.id()).stream().filter(a -> values.contains(a.value())).toList();
      return both && !onBothSides(found) ? ConditionResult.NO : ConditionResult.found(found);
    };
  }

  private static boolean onBothSides(List<Answer> answers) {
    return Stream.of(Side.values())
        .allMatch(side -> answers.stream().anyMatch(answer -> answer.side() == side));
  }

  private static Condition detail(Step step, String id, String sign, String operand) {
    Detail detail = step.detail(id).orElse(null);
    expect(detail != null, "expected a detail of step " + step.id() + ", found " + id);
    if (sign == null) {
      return details(step, id, said -> true);
    }
    if (detail.measure() != null) {
      Relation relation = Relation.of(sign);
      double limit = Double.parseDouble(operand);
      return details(step, id, said -> relation.holds(numberIn(said), limit));
    }
    expect(sign.equals("="), "expected = for " + step.id() + "." + id + ", found " + sign);
    List<String> words = List.of(operand.split("\\|"));
    for (String word : words) {
      expect(
          detail.values().contains(word),
          "expected a value of " + step.id() + "." + id + ", found " + word);
    }
    return details(step, id, said -> Stream.of(said.split(",")).anyMatch(words::contains));
  }

  private static Condition details(Step step, String id, Predicate<String> holds) {
    return baby ->
        ConditionResult.found(
            baby.answers(step.id()).stream()
                .filter(a -> a.details().containsKey(id) && holds.test(a.details().get(id)))
                .toList());
  }

  /** The number a detail was stated as; not a number where it is none. */
  static double numberIn(String said) {
    try {
      return Double.parseDouble(said);
    } catch (NumberFormatException e) {
      return Double.NaN;
    }
  }

  private Condition other(String named, String sign, String operand, String term) {
    Optional<Figure> figure = Figure.named(named);
    if (figure.isPresent()) {
      Relation relation = Relation.of(sign);
      double limit = Double.parseDouble(operand);
      facts.addAll(figure.get().facts());
      return baby -> figure.get().compared(baby, relation, limit);
    }
    Optional<Setting> setting =
        Stream.of(Setting.values()).filter(s -> s.key().equals(named)).findFirst();
    if (setting.isPresent()) {
      expect(
          sign.equals("=") && setting.get().choices().contains(operand),
          "expected a choice of " + named + ", found " + operand);
      return baby -> ConditionResult.of(baby.settings().is(setting.get(), operand));
    }
    Fact fact = protocol.fact(named).orElse(null);
    expect(fact != null, "expected a step, fact, figure or setting, found " + term);
    facts.add(named);
    return switch (fact.kind()) {
      case NUMBER -> {
        Relation relation = Relation.of(sign);
        double limit = Double.parseDouble(operand);
        yield stated(named, baby -> baby.numberOf(named), number -> relation.holds(number, limit));
      }
      case GESTATION -> {
        Relation relation = Relation.of(sign);
        int limit = Gestation.parse(operand).totalDays();
        yield stated(
            named, AssessedBaby::gestation, stated -> relation.holds(stated.totalDays(), limit));
      }
      default -> {
        List<String> words = List.of(operand.split("\\|"));
        expect(
            sign.equals("=") && fact.values().containsAll(words),
            "expected = and a value of fact " + named + ", found " + sign + operand);
        yield stated(named, baby -> baby.fact(named), words::contains);
      }
    };
  }

  private static <T> Condition stated(
      String fact, Function<AssessedBaby, Optional<T>> value, Predicate<T> holds) {
    return baby ->
        value
            .apply(baby)
            .map(stated -> ConditionResult.of(holds.test(stated)))
            .orElse(ConditionResult.unknown(fact));
  }

  /** Refuses what does not hold. */
  static void expect(boolean holds, String message) {
    if (!holds) {
      throw new IllegalArgumentException(message);
    }
  }
}
