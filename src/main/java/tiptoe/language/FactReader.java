package tiptoe.language;

import java.util.List;
import tiptoe.finding.Quantity;
import tiptoe.finding.Question;
import tiptoe.protocol.Fact;
import tiptoe.protocol.Measure;
import tiptoe.protocol.Protocol;

/** Reads facts about the baby: the value is in the grammar, or a number that was said. */
record FactReader(Protocol protocol) {
  private static final String DAY_OF_LIFE = "day";
  private static final Measure DAYS_OF_LIFE = new Measure(DAY_OF_LIFE, 0, 28, true);
  private static final Measure DAYS = new Measure("days", 0, 6, true);

  /** The facts of a clause; a number that cannot be meant is asked about. */
  List<Meaning> of(Clause clause, boolean correction) {
    return clause.facts.stream().map(said -> read(said, clause.numbers, correction)).toList();
  }

  Meaning read(Meaning.Fact said, List<SpokenNumber> numbers, boolean correction) {
    Fact fact = protocol.fact(said.id()).orElseThrow();
    if (said.value() != null) {
      return new Meaning.Fact(said.id(), said.value(), correction);
    }
    if (numbers.stream().anyMatch(number -> DAY_OF_LIFE.equals(number.unit()))) {
      double day = Measurement.of(numbers, DAYS_OF_LIFE).number();
      String heard = DAY_OF_LIFE + " " + new Quantity(day, "1").text();
      return new Meaning.Asks(Question.fact(fact.id(), heard), correction);
    }
    boolean gestation = fact.kind() == Fact.Kind.GESTATION;
    Measurement first = Measurement.of(gestation ? numbers.subList(0, 1) : numbers, fact.measure());
    Measurement days =
        gestation && numbers.size() > 1
            ? Measurement.of(numbers.subList(1, 2), DAYS)
            : new Measurement(0, true);
    String value = text(first) + (gestation ? "+" + text(days) : "");
    return first.plausible() && days.plausible()
        ? new Meaning.Fact(said.id(), value, correction)
        : new Meaning.Asks(Question.fact(fact.id(), value), correction);
  }

  private static String text(Measurement measurement) {
    return new Quantity(measurement.number(), "1").text();
  }
}
