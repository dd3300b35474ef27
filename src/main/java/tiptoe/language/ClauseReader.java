package tiptoe.language;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import tiptoe.finding.Finding;
import tiptoe.finding.Quantity;
import tiptoe.finding.Question;
import tiptoe.finding.Source;
import tiptoe.protocol.Detail;
import tiptoe.protocol.Measure;
import tiptoe.protocol.Protocol;
import tiptoe.protocol.Side;
import tiptoe.protocol.Step;
import tiptoe.protocol.Value;

/** Turns a clause into findings of its steps, and asks for what a finding needs and lacks. */
final class ClauseReader {
  private final Protocol protocol;
  private final Source source;

  ClauseReader(Protocol protocol, Source source) {
    this.protocol = protocol;
    this.source = source;
  }

  /**
   * The findings of a clause.
   *
   * @param steps ids of the steps it is about
   * @param sides the sides said or carried over; empty where there are none
   */
  List<Meaning> of(Clause clause, List<String> steps, Collection<Side> sides, boolean correction) {
    List<Meaning> meanings = new ArrayList<>();
    for (String id : steps) {
      Step step = protocol.step(id);
      if (step.isMeasured() && !clause.values.contains(Value.NOT_EXAMINED)) {
        meanings.addAll(measured(step, clause, correction));
        continue;
      }
      for (Finding statement : statements(step, clause)) {
        place(step, statement, sides)
            .forEach(placed -> meanings.addAll(complete(placed, correction)));
      }
    }
    return meanings;
  }

  /** The finding with what is still asked about it: side first, then details. */
  List<Meaning> complete(Finding statement, boolean correction) {
    Step step = protocol.step(statement.step());
    List<Meaning> meanings = new ArrayList<>();
    if (step.sided() && statement.side() == null) {
      meanings.add(new Meaning.Asks(Question.side(statement), correction));
      return meanings;
    }
    if (statement.quantity() != null && !step.measure().plausible(statement.quantity().number())) {
      meanings.add(new Meaning.Asks(Question.number(statement), correction));
      return meanings;
    }
    meanings.add(new Meaning.States(statement, correction));
    boolean sideNeeded = step.value(orNone(statement.value())).map(Value::sided).orElse(false);
    if (sideNeeded && statement.side() == null) {
      Question which = Question.detail(statement, Detail.SIDE);
      meanings.add(new Meaning.Asks(which, correction));
    }
    stillAsked(statement).forEach(question -> meanings.add(new Meaning.Asks(question, correction)));
    return meanings;
  }

  /** What is asked about a finding because its details lack it. */
  Stream<Question> stillAsked(Finding statement) {
    return protocol.step(statement.step()).details().stream()
        .filter(Detail::ask)
        .filter(detail -> detail.belongsTo(orNone(statement.value())))
        .filter(detail -> !Value.NOT_EXAMINED.equals(statement.value()))
        .filter(detail -> !statement.details().containsKey(detail.id()))
        .map(detail -> Question.detail(statement, detail.id()));
  }

  private List<Finding> statements(Step step, Clause clause) {
    if (clause.values.contains(Value.NOT_EXAMINED)) {
      return List.of(notExamined(step, null, clause));
    }
    List<String> denied =
        clause.denied.stream().filter(id -> step.value(id).isPresent()).distinct().toList();
    List<String> values =
        new ArrayList<>(
            clause.values.stream().filter(id -> step.value(id).isPresent()).distinct().toList());
    if (values.isEmpty() && !denied.isEmpty()) {
      step.normal().ifPresent(normal -> values.add(normal.id()));
    }
    List<Finding> made = new ArrayList<>();
    for (String value : values) {
      boolean normal = step.isNormal(value);
      made.add(
          new Finding(
              step.id(),
              null,
              value,
              null,
              details(step, value, clause),
              normal ? denied : List.of(),
              false,
              source));
    }
    return made;
  }

  /** A step that was left out, with the reason where one was said. */
  Finding notExamined(Step step, Side side, Clause clause) {
    Map<String, String> reason = new LinkedHashMap<>();
    clause.mark("reason").ifPresent(said -> reason.put("reason", said));
    return new Finding(step.id(), side, Value.NOT_EXAMINED, null, reason, List.of(), false, source);
  }

  private List<Meaning> measured(Step step, Clause clause, boolean correction) {
    List<SpokenNumber> said = clause.numbers.stream().filter(n -> n.of() == null).toList();
    if (said.isEmpty()) {
      return List.of();
    }
    Measurement measurement = Measurement.of(said, step.measure());
    Quantity quantity =
        new Quantity(measurement.number(), step.measure().unit(), measurement.bound());
    Finding statement =
        new Finding(
            step.id(), null, null, quantity, details(step, "", clause), List.of(), false, source);
    return measurement.plausible()
        ? complete(statement, correction)
        : List.of(new Meaning.Asks(Question.number(statement), correction));
  }

  private Map<String, String> details(Step step, String value, Clause clause) {
    Map<String, String> details = new LinkedHashMap<>();
    for (Detail detail : step.details()) {
      if (!detail.belongsTo(value)) {
        continue;
      }
      List<String> said = clause.others.getOrDefault(detail.id(), List.of());
      if (!said.isEmpty()) {
        details.put(detail.id(), String.join(",", said.stream().distinct().toList()));
      }
      if (detail.measure() != null) {
        number(clause, detail.id(), detail.measure()).ifPresent(n -> details.put(detail.id(), n));
      }
    }
    return details;
  }

  private static Optional<String> number(Clause clause, String detail, Measure measure) {
    List<SpokenNumber> said =
        clause.numbers.stream()
            .filter(number -> detail.equals(number.of()))
            .map(number -> number.unit() == null ? number.withUnit(measure.unit()) : number)
            .toList();
    if (said.isEmpty()) {
      return Optional.empty();
    }
    Measurement measurement = Measurement.of(said, measure);
    return measurement.plausible()
        ? Optional.of(new Quantity(measurement.number(), measure.unit()).text())
        : Optional.empty();
  }

  private static List<Finding> place(Step step, Finding statement, Collection<Side> sides) {
    boolean normal = step.isNormal(statement.value());
    if (step.sided()) {
      return sides.isEmpty()
          ? List.of(statement)
          : sides.stream().sorted().map(statement::withSide).toList();
    }
    boolean ofSides =
        statement.value() != null && step.value(statement.value()).map(Value::sided).orElse(false);
    if (ofSides && step.many() && sides.size() == 2) {
      return sides.stream().sorted().map(statement::withSide).toList();
    }
    return sides.size() == 1 && !normal && !step.isMeasured()
        ? Collections.singletonList(statement.withSide(sides.iterator().next()))
        : List.of(statement);
  }

  private static String orNone(String value) {
    return value == null ? "" : value;
  }
}
