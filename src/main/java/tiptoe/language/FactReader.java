package tiptoe.language;

import java.util.ArrayList;
import java.util.List;
import tiptoe.finding.Quantity;
import tiptoe.protocol.Measure;

/** Reads facts about the baby whose value is a number; the others carry theirs in the grammar. */
final class FactReader {
  private static final Measure WEEKS = new Measure("1", 20, 45, true);
  private static final Measure DAYS = new Measure("1", 0, 6, true);
  private static final Measure AGE = new Measure("h", 0, 24 * 60, false);
  private static final Measure BIRTH_WEIGHT = new Measure("g", 300, 7000, false);

  private FactReader() {}

  /** The facts of a clause; a number that cannot be meant yields none. */
  static List<Meaning.Fact> of(Clause clause, boolean correction) {
    List<Meaning.Fact> facts = new ArrayList<>();
    for (Meaning.Fact fact : clause.facts) {
      String value = fact.value() != null ? fact.value() : number(fact.id(), clause.numbers);
      if (value != null) {
        facts.add(new Meaning.Fact(fact.id(), value, correction));
      }
    }
    return facts;
  }

  private static String number(String fact, List<SpokenNumber> said) {
    if (said.isEmpty()) {
      return null;
    }
    return switch (fact) {
      case "gestation" -> gestation(said);
      case "age" -> text(said, AGE);
      case "birth-weight" -> text(said, BIRTH_WEIGHT);
      default -> null;
    };
  }

  private static String gestation(List<SpokenNumber> said) {
    String weeks = text(said.subList(0, 1), WEEKS);
    String days = said.size() < 2 ? "0" : text(said.subList(1, 2), DAYS);
    return weeks == null || days == null ? null : weeks + "+" + days;
  }

  private static String text(List<SpokenNumber> said, Measure measure) {
    Measurement measurement = Measurement.of(said, measure);
    return measurement.plausible()
        ? new Quantity(measurement.number(), measure.unit()).text()
        : null;
  }
}
