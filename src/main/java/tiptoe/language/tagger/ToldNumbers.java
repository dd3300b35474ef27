package tiptoe.language.tagger;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import tiptoe.language.NumberWords;
import tiptoe.language.SpokenNumber;
import tiptoe.language.TypedText;
import tiptoe.language.tagger.ToldItems.Item;
import tiptoe.language.tagger.ToldItems.Kind;
import tiptoe.language.tagger.ToldPart.Stated;
import tiptoe.protocol.Fact;
import tiptoe.protocol.Measure;
import tiptoe.protocol.Protocol;

/** Says what the numbers of a part measure: what is named beside them, or was before. */
final class ToldNumbers {
  private static final String GESTATION = "gestation";
  private static final int TERM = 40;
  private static final int MOST_DAYS_PAST_TERM = 14;

  private final ToldLexicon told;
  private final Protocol protocol;
  private final List<String> plain;

  ToldNumbers(ToldLexicon told, Protocol protocol, List<String> plain) {
    this.told = told;
    this.protocol = protocol;
    this.plain = plain;
  }

  /**
   * Lets a part state what its numbers say.
   *
   * @param carried what was spoken of before
   * @param goesOn whether a number without a name may be of that
   */
  void read(ToldPart part, Set<String> carried, boolean goesOn) {
    Set<Integer> beside = told.beside(part.subjects(), part.of(plain));
    List<Item> numbers =
        part.all(Kind.NUMBER).stream()
            .filter(number -> !beside.contains(number.from() - part.from()))
            .toList();
    if (numbers.isEmpty() || gestation(part, numbers, carried)) {
      return;
    }
    List<Item> names = part.items.stream().filter(item -> !measured(item).isEmpty()).toList();
    if (names.isEmpty()) {
      unnamed(part, numbers, carried, goesOn).ifPresent(of -> state(of, numbers.get(0), part));
    } else {
      pairs(names, numbers)
          .forEach((name, number) -> meant(name, number).ifPresent(of -> state(of, number, part)));
    }
  }

  private Optional<String> unnamed(
      ToldPart part, List<Item> numbers, Set<String> carried, boolean goesOn) {
    SpokenNumber said = numbers.get(0).numbers().get(0);
    List<String> measured = carried.stream().filter(this::isMeasured).toList();
    if (numbers.size() > 1) {
      return Optional.empty();
    }
    if (goesOn && measured.size() == 1 && fits(measured.get(0), said)) {
      return Optional.of(measured.get(0));
    }
    boolean weight = Set.of("g", "kg", "lb").contains(String.valueOf(said.unit()));
    if (!weight || !carried.isEmpty()) {
      return Optional.empty();
    }
    // "Came out at seven pound nine": what it was, and not what it is.
    boolean then = told.says("at-birth", part.of(plain));
    return Optional.of(then ? "birth-weight" : "weight");
  }

  // Of several, the fact: it needs another word beside it, and that is said.
  private Optional<String> meant(Item name, Item number) {
    List<String> fitting =
        measured(name).stream().filter(one -> fits(one, number.numbers().get(0))).toList();
    List<String> meant =
        fitting.size() == 1
            ? fitting
            : fitting.stream().filter(one -> protocol.fact(one).isPresent()).toList();
    return meant.size() == 1 ? Optional.of(meant.get(0)) : Optional.empty();
  }

  private static Map<Item, Item> pairs(List<Item> names, List<Item> numbers) {
    if (numbers.size() == 1) {
      // The last that is named before the number, else the first behind it.
      Item number = numbers.get(0);
      Item name =
          names.stream()
              .filter(one -> one.from() < number.from())
              .reduce((first, second) -> second)
              .orElse(names.get(0));
      return Map.of(name, number);
    }
    if (names.size() != numbers.size()) {
      return Map.of();
    }
    List<Item> all = new ArrayList<>(names);
    all.addAll(numbers);
    all.sort(Comparator.comparingInt(Item::from));
    boolean numberFirst = all.get(0).kind() == Kind.NUMBER;
    Map<Item, Item> pairs = new LinkedHashMap<>();
    for (int i = 0; i < all.size(); i += 2) {
      Item number = all.get(numberFirst ? i : i + 1);
      Item name = all.get(numberFirst ? i + 1 : i);
      if (number.kind() != Kind.NUMBER || name.kind() == Kind.NUMBER) {
        return Map.of();
      }
      pairs.put(name, number);
    }
    return pairs;
  }

  private void state(String subject, Item number, ToldPart part) {
    if (number.numbers().stream().anyMatch(one -> isGlued(one.words()))) {
      return;
    }
    boolean rough = protocol.fact(subject).isPresent() && isRough(number);
    boolean bounds =
        protocol.find(subject).filter(step -> step.measure().bounds()).isPresent()
            || number.numbers().stream().allMatch(one -> one.bound() == null);
    part.state(new Stated(subject, null, number.numbers(), part.has(Kind.ORDER), !rough && bounds));
    part.account(number);
    part.account(subject);
    part.all(Kind.ORDER).forEach(part::account);
  }

  private boolean isRough(Item number) {
    String before = number.from() == 0 ? "" : plain.get(number.from() - 1);
    return told.isListed("roughly", before) || told.isListed("nearby", before);
  }

  // "One two point one" may be two numbers.
  private static boolean isGlued(List<String> words) {
    int point = words.indexOf("point");
    return point > 1
        && NumberWords.BELOW_TWENTY.subList(0, 10).contains(words.get(0))
        && NumberWords.BELOW_TWENTY.containsAll(words.subList(0, point));
  }

  /** Whether a number may measure this: its unit is one of it. */
  private boolean fits(String subject, SpokenNumber number) {
    String own = protocol.fact(subject).map(Fact::measure).orElseGet(() -> step(subject)).unit();
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
    boolean times = number.to() < plain.size() && plain.get(number.to()).equals("times");
    boolean plausible =
        said.unit() != null
            || NumberWords.readings(said.words()).stream()
                .anyMatch(n -> step(step).plausible(n) || step(step).plausible(1000 * n));
    return !times && plausible && fits(step, said);
  }

  private Measure step(String id) {
    return protocol.step(id).measure();
  }

  private boolean isMeasured(String subject) {
    return protocol
        .fact(subject)
        .map(fact -> fact.measure() != null)
        .orElseGet(() -> protocol.find(subject).filter(step -> step.isMeasured()).isPresent());
  }

  private Set<String> measured(Item name) {
    Set<String> subjects = new LinkedHashSet<>();
    name.abouts()
        .map(ToldLexicon.Sense::subject)
        .filter(subject -> isMeasured(subject) && !subject.equals(GESTATION))
        .forEach(subjects::add);
    return subjects;
  }

  // "Thirty nine plus two", "thirty nine weeks and two days", "term plus three"
  private boolean gestation(ToldPart part, List<Item> numbers, Set<String> carried) {
    Item first = numbers.get(0);
    boolean pastTerm =
        numbers.size() == 1
            && first.from() > 1
            && plain.subList(first.from() - 2, first.from()).equals(List.of("term", "plus"))
            && isBetween(0, MOST_DAYS_PAST_TERM, first.numbers().get(0));
    List<SpokenNumber> said = new ArrayList<>(first.numbers());
    int to = first.to();
    boolean plus = false;
    if (pastTerm) {
      int days = (int) ToldItems.value(first.numbers().get(0));
      said = List.of(number(TERM + days / 7, "weeks"), number(days % 7, "days"));
    } else {
      if (said.size() == 1 && numbers.size() > 1) {
        Item second = numbers.get(1);
        List<String> between = plain.subList(first.to(), second.from());
        plus = between.equals(List.of("plus"));
        if (between.isEmpty() || between.equals(List.of("and")) || plus) {
          said.add(second.numbers().get(0));
          to = second.to();
        }
      }
      boolean named =
          part.named().anyMatch(sense -> sense.subject().equals(GESTATION))
              || carried.contains(GESTATION) && part.namesNothing();
      boolean other = part.items.stream().anyMatch(item -> !measured(item).isEmpty());
      boolean all = said.size() == numbers.stream().mapToInt(n -> n.numbers().size()).sum();
      if (!isWeeksAndDays(said)
          || other
          || !all
          || !(named || plus || "weeks".equals(said.get(0).unit()))) {
        return false;
      }
    }
    part.state(new Stated(GESTATION, null, said, false, !isRough(first)));
    part.account(pastTerm ? first.from() - 2 : first.from(), to);
    part.account(GESTATION);
    return true;
  }

  private static boolean isWeeksAndDays(List<SpokenNumber> said) {
    SpokenNumber weeks = said.get(0);
    boolean days =
        said.size() == 1
            || isBetween(0, 6, said.get(1))
                && (said.get(1).unit() == null || said.get(1).unit().equals("days"));
    return days
        && isBetween(22, 44, weeks)
        && weeks.bound() == null
        && ToldItems.value(weeks) == Math.floor(ToldItems.value(weeks));
  }

  private static boolean isBetween(int least, int most, SpokenNumber number) {
    double value = ToldItems.value(number);
    return least <= value && value <= most;
  }

  private static SpokenNumber number(int value, String unit) {
    return new SpokenNumber(null, TypedText.spoken(String.valueOf(value)), unit, null);
  }
}
