package tiptoe.language.tagger;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import tiptoe.language.Measurement;
import tiptoe.language.NumberWords;
import tiptoe.language.SpokenNumber;
import tiptoe.language.tagger.ToldItems.Item;
import tiptoe.protocol.Fact;
import tiptoe.protocol.Measure;
import tiptoe.protocol.Protocol;

/** Says which facts and steps are measured, and by which numbers they may be. */
final class ToldMeasures {
  /** The least of what may be a saturation where that is not said. */
  private static final int LEAST_SATURATION = 70;

  private final ToldWords sentence;
  private final Protocol protocol;

  ToldMeasures(ToldWords sentence) {
    this.sentence = sentence;
    this.protocol = sentence.protocol();
  }

  boolean isMeasured(String subject) {
    return protocol
        .fact(subject)
        .map(fact -> fact.measure() != null)
        .orElseGet(() -> protocol.find(subject).filter(step -> step.isMeasured()).isPresent());
  }

  /** What of that which an item names is measured by one number, so not the weeks of birth. */
  Set<String> of(Item name) {
    Set<String> subjects = new LinkedHashSet<>();
    name.abouts()
        .map(ToldLexicon.Sense::subject)
        .filter(subject -> isMeasured(subject) && !subject.equals(ToldGestation.SUBJECT))
        .forEach(subjects::add);
    return subjects;
  }

  String unit(String subject) {
    return measure(subject).unit();
  }

  private Measure measure(String subject) {
    return protocol
        .fact(subject)
        .map(Fact::measure)
        .orElseGet(() -> protocol.step(subject).measure());
  }

  /** Whether a number may measure this: its unit is one of it. */
  boolean fits(String subject, SpokenNumber number) {
    String own = unit(subject);
    if (own.equals("%") && !sentence.told().says("sats", sentence.plain())) {
      // "Right hand ninety six, foot ninety one"; five fingers are none.
      return ToldItems.value(number) >= LEAST_SATURATION;
    }
    return switch (String.valueOf(number.unit())) {
      case "null" -> !own.equals("h") && !own.equals("weeks");
      case "h", "days" -> own.equals("h");
      case "weeks" -> own.equals("h") || own.equals("weeks");
      case "g", "kg", "lb", "oz" -> own.equals("g");
      case "cm", "mm", "in" -> own.equals("cm");
      case "s" -> own.equals("s");
      case "°C", "°F" -> own.equals("°C");
      case "µmol/L", "mmol/L" -> own.equals(number.unit());
      case "mg/dL" -> own.equals("µmol/L") || own.equals("mmol/L");
      default -> true;
    };
  }

  /** Whether a number may be the right one of what was measured. */
  boolean mayBe(String step, Item number) {
    SpokenNumber said = number.numbers().get(0);
    Measure measure = protocol.step(step).measure();
    boolean plausible =
        said.unit() != null
            || NumberWords.readings(said.words()).stream()
                .anyMatch(n -> measure.plausible(n) || measure.plausible(1000 * n));
    return !sentence.isListed("how-often", number.to()) && plausible && fits(step, said);
  }

  /** Whether it may be so much. */
  boolean isPlausible(String subject, List<SpokenNumber> numbers) {
    return Measurement.of(numbers, measure(subject)).plausible();
  }

  /** Whether numbers come to the same, whatever their units: three point one kilos in grams. */
  boolean isSame(String subject, List<SpokenNumber> one, List<SpokenNumber> other) {
    if (one.isEmpty()
        || other.isEmpty()
        || !isMeasured(subject)
        || subject.equals(ToldGestation.SUBJECT)) {
      return false;
    }
    Measurement first = Measurement.of(one, measure(subject));
    Measurement second = Measurement.of(other, measure(subject));
    return first.plausible()
        && second.plausible()
        && first.bound() == second.bound()
        && first.number() == second.number();
  }
}
