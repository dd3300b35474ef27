package tiptoe.language.tagger;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import tiptoe.language.Measurement;
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
  private static final Set<String> OF_BIRTH =
      Set.of("sex", "birth-mode", "first-born", "multiple", "presentation");
  private static final Set<String> OFFERED =
      Set.of("vitamin-k", "hepatitis-b", "blood-spot", "hearing-screen");
  private static final Set<String> WHEN = Set.of("at", "by", "after");
  private static final int TERM = 40;
  private static final int MOST_DAYS_PAST_TERM = 14;

  private final ToldLexicon told;
  private final Protocol protocol;
  private final List<String> plain;

  /** Whether the sentence speaks of the birth. */
  private final boolean birth;

  ToldNumbers(ToldLexicon told, Protocol protocol, List<String> plain) {
    this.told = told;
    this.protocol = protocol;
    this.plain = plain;
    this.birth =
        told.matches(plain).stream()
            .flatMap(match -> match.of(ToldLexicon.Kind.VALUE).stream())
            .anyMatch(sense -> OF_BIRTH.contains(sense.subject()));
  }

  /**
   * Lets a part state what its numbers say.
   *
   * @param carried what was spoken of before
   * @param goesOn whether a number without a name may be of that
   * @return what is named beside a number that measures nothing of it: a range, or with a unit of
   *     something else
   */
  Set<String> read(ToldPart part, Set<String> carried, boolean goesOn) {
    Set<Integer> beside = told.beside(part.subjects(), part.of(plain));
    List<Item> numbers =
        part.all(Kind.NUMBER).stream()
            .filter(number -> !beside.contains(number.from() - part.from()))
            .filter(number -> !isWhich(part, number))
            .filter(number -> !isWhen(part, number))
            .toList();
    List<Item> names =
        part.items.stream()
            .filter(item -> !measured(item).isEmpty())
            .filter(item -> !isAgeThen(part, item))
            .toList();
    if (isRange(numbers)) {
      return all(names);
    }
    Optional<List<SpokenNumber>> gestation =
        numbers.isEmpty() ? Optional.empty() : gestation(part, numbers, names, carried);
    if (numbers.isEmpty()) {
      return part.has(Kind.NUMBER) || told.says("which", part.of(plain)) ? all(names) : Set.of();
    }
    if (gestation.isPresent()) {
      return gestation.filter(List::isEmpty).isPresent() ? Set.of(GESTATION) : Set.of();
    }
    if (names.isEmpty()) {
      unnamed(part, numbers, carried, goesOn).ifPresent(of -> state(of, numbers.get(0), part));
    } else {
      pairs(names, numbers)
          .forEach(
              (name, number) ->
                  meant(name, number)
                      .ifPresent(
                          of -> {
                            state(then(part, of), number, part);
                            part.account(name);
                          }));
    }
    return all(names).stream()
        .filter(one -> !part.states(one))
        .filter(
            one ->
                numbers.stream()
                    .allMatch(
                        number ->
                            isOfAnother(number) && !unit(one).equals("%")
                                || !fits(one, number.numbers().get(0))))
        .collect(Collectors.toSet());
  }

  // "Weight on day three", "bed five": which, and nothing that was measured.
  private boolean isWhich(ToldPart part, Item number) {
    boolean which =
        number.from() > part.from()
            && number.numbers().get(0).unit() == null
            && told.isListed("which", plain.get(number.from() - 1));
    if (which && plain.get(number.from() - 1).equals("day")) {
      part.account(number.from() - 1, number.to());
    }
    return which;
  }

  // "Skin bilirubin at twenty hours was nine", "vaccine at two hours": when that was.
  private boolean isWhen(ToldPart part, Item number) {
    boolean time =
        Set.of("h", "days").contains(String.valueOf(number.numbers().get(0).unit()))
            && number.from() > part.from()
            && WHEN.contains(plain.get(number.from() - 1));
    boolean ofTests =
        part.states() && part.stated().stream().allMatch(one -> OFFERED.contains(one.subject()));
    boolean ofNumbers =
        part.all(Kind.NUMBER).size() > 1
            && part.items.stream()
                .filter(item -> !isAgeThen(part, item))
                .flatMap(item -> measured(item).stream())
                .map(this::unit)
                .anyMatch(unit -> !unit.equals("h"))
            && part.items.stream()
                .filter(item -> !isAgeThen(part, item))
                .flatMap(item -> measured(item).stream())
                .noneMatch(one -> unit(one).equals("h"));
    if (time && (ofTests || ofNumbers)) {
      part.account(number.from() - 1, number.to());
      part.items.stream()
          .filter(item -> item.from() == number.to() && isAge(item))
          .forEach(part::account);
    }
    return time && (ofTests || ofNumbers);
  }

  // "Of life" in "twenty at sixty hours of life"
  private boolean isAgeThen(ToldPart part, Item item) {
    return isAge(item)
        && part.all(Kind.NUMBER).size() > 1
        && part.all(Kind.NUMBER).stream()
            .anyMatch(
                number ->
                    number.to() == item.from()
                        && number.from() > part.from()
                        && WHEN.contains(plain.get(number.from() - 1)));
  }

  private static boolean isAge(Item item) {
    return item.abouts().anyMatch(sense -> sense.subject().equals("age"));
  }

  private Set<String> all(List<Item> names) {
    Set<String> all = new LinkedHashSet<>();
    names.forEach(name -> all.addAll(measured(name)));
    return all;
  }

  // "One hundred and twenty to one sixty": what is usual, or nobody knows.
  private boolean isRange(List<Item> numbers) {
    for (int i = 1; i < numbers.size(); i++) {
      if (plain.subList(numbers.get(i - 1).to(), numbers.get(i).from()).equals(List.of("to"))) {
        return true;
      }
    }
    return false;
  }

  // "Weight is down four percent"
  private boolean isOfAnother(Item number) {
    return number.numbers().get(0).unit() == null
        && number.to() < plain.size()
        && (told.isListed("other-unit", plain.get(number.to())) || isPercent(number));
  }

  private boolean isPercent(Item number) {
    List<String> behind = plain.subList(number.to(), Math.min(plain.size(), number.to() + 2));
    return behind.equals(List.of("per", "cent"))
        || !behind.isEmpty() && behind.get(0).equals("percent");
  }

  private Optional<String> unnamed(
      ToldPart part, List<Item> numbers, Set<String> carried, boolean goesOn) {
    SpokenNumber said = numbers.get(0).numbers().get(0);
    List<String> measured = carried.stream().filter(this::isMeasured).toList();
    if (numbers.size() > 1) {
      return Optional.empty();
    }
    boolean other =
        isOfAnother(numbers.get(0))
            && !(isPercent(numbers.get(0))
                && measured.stream().allMatch(one -> unit(one).equals("%")));
    boolean rate = told.says("a-minute", plain.subList(numbers.get(0).to(), part.to()));
    if ((goesOn || rate && measured.stream().allMatch(one -> unit(one).equals("/min")))
        && measured.size() == 1
        && fits(measured.get(0), said)
        && !other) {
      return Optional.of(measured.get(0));
    }
    boolean weight = Set.of("g", "kg", "lb").contains(String.valueOf(said.unit()));
    if (!weight || !carried.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(then(part, "weight"));
  }

  // Of several, the fact: it needs another word beside it, and that is said.
  private Optional<String> meant(Item name, Item number) {
    List<String> fitting =
        measured(name).stream()
            .filter(one -> fits(one, number.numbers().get(0)))
            .filter(one -> !isOfAnother(number) || isPercent(number) && unit(one).equals("%"))
            .toList();
    List<String> meant =
        fitting.size() == 1
            ? fitting
            : fitting.stream().filter(one -> protocol.fact(one).isPresent()).toList();
    return meant.size() == 1 ? Optional.of(meant.get(0)) : Optional.empty();
  }

  // "Weighed three kilos at birth": what it was, and not what it is.
  private String then(ToldPart part, String subject) {
    return subject.equals("weight") && told.says("at-birth", part.of(plain))
        ? "birth-weight"
        : subject;
  }

  private Map<Item, Item> pairs(List<Item> names, List<Item> numbers) {
    if (numbers.size() == 1) {
      Optional<Item> given = names.stream().filter(one -> isFor(numbers.get(0), one)).findFirst();
      if (given.isPresent()) {
        return Map.of(given.get(), numbers.get(0));
      }
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

  // "A maturity score of three for the skin"
  private boolean isFor(Item number, Item name) {
    return name.from() > number.to()
        && Set.of(List.of("for"), List.of("for", "the"))
            .contains(plain.subList(number.to(), name.from()));
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
    String own = unit(subject);
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

  private String unit(String subject) {
    return protocol.fact(subject).map(Fact::measure).orElseGet(() -> step(subject)).unit();
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

  /** Whether numbers come to the same, whatever their units: three point one kilos in grams. */
  boolean isSame(String subject, List<SpokenNumber> one, List<SpokenNumber> other) {
    if (one.isEmpty() || other.isEmpty() || !isMeasured(subject) || subject.equals(GESTATION)) {
      return false;
    }
    Measure measure = protocol.fact(subject).map(Fact::measure).orElseGet(() -> step(subject));
    Measurement first = Measurement.of(one, measure);
    Measurement second = Measurement.of(other, measure);
    return first.plausible()
        && second.plausible()
        && first.bound() == second.bound()
        && first.number() == second.number();
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

  // "Thirty nine plus two", "thirty nine weeks and two days", "term plus three", "thirty nine and
  // two"
  // Empty where it is when something was.
  private Optional<List<SpokenNumber>> gestation(
      ToldPart part, List<Item> numbers, List<Item> names, Set<String> carried) {
    Item first = numbers.get(0);
    boolean pastTerm =
        numbers.size() == 1
            && first.from() > 1
            && plain.subList(first.from() - 2, first.from()).equals(List.of("term", "plus"))
            && isBetween(0, MOST_DAYS_PAST_TERM, first.numbers().get(0));
    if (pastTerm) {
      int days = (int) ToldItems.value(first.numbers().get(0));
      return state(
          part,
          List.of(number(TERM + days / 7, "weeks"), number(days % 7, "days")),
          first.from() - 2,
          first.to(),
          true);
    }
    List<SpokenNumber> said = new ArrayList<>(first.numbers());
    int to = first.to();
    boolean plus = false;
    boolean and = false;
    boolean weeks = "weeks".equals(said.get(0).unit());
    if (said.size() == 1 && numbers.size() > 1) {
      Item second = numbers.get(1);
      SpokenNumber days = second.numbers().get(0);
      List<String> between = plain.subList(first.to(), second.from());
      plus = between.equals(List.of("plus"));
      and = between.equals(List.of("and"));
      if (between.isEmpty() || and || plus) {
        // "Thirty six and five weeks"
        boolean behind = !weeks && said.get(0).unit() == null && "weeks".equals(days.unit());
        weeks |= behind;
        said.add(behind ? new SpokenNumber(null, days.words(), null, null) : days);
        to = second.to();
      }
    }
    boolean named =
        part.named().anyMatch(sense -> sense.subject().equals(GESTATION))
            || carried.contains(GESTATION) && part.namesNothing();
    boolean all = said.size() == numbers.stream().mapToInt(n -> n.numbers().size()).sum();
    // "Thirty nine and two" by itself: surely where the birth is spoken of.
    boolean bare = and && carried.stream().noneMatch(this::isMeasured);
    if (!isWeeksAndDays(said) || !names.isEmpty() || !all || !(named || plus || weeks || bare)) {
      return Optional.empty();
    }
    if (isThen(part, first) || isOfScan(to)) {
      if (part.states() && part.stated().stream().allMatch(one -> isOfPregnancy(one.subject()))) {
        part.account(first.from() - 1, to);
      }
      return Optional.of(List.of());
    }
    // "At thirty eight weeks" by itself: what was?
    boolean then = isBehindThen(part, first) && !told.says("born", plain);
    boolean sure = !isRough(first) && (named || plus || weeks && !then || birth);
    return state(part, said, first.from(), to, sure);
  }

  private static Optional<List<SpokenNumber>> state(
      ToldPart part, List<SpokenNumber> gestation, int from, int to, boolean sure) {
    part.state(new Stated(GESTATION, null, gestation, false, sure));
    part.account(from, to);
    part.account(GESTATION);
    return Optional.of(gestation);
  }

  // "At thirty two weeks the renal pelvis was dilated": when that was, and not the birth.
  private boolean isThen(ToldPart part, Item weeks) {
    boolean born =
        told.says("born", part.of(plain)) || part.items.stream().anyMatch(ToldNumbers::isBirth);
    return isBehindThen(part, weeks)
        && !born
        && (part.items.stream().anyMatch(ToldNumbers::isOfElse)
            || plain.contains("turned")
            || plain.contains("flipped"));
  }

  private boolean isBehindThen(ToldPart part, Item weeks) {
    return weeks.from() > part.from() && told.isListed("then", plain.get(weeks.from() - 1));
  }

  private static boolean isBirth(Item item) {
    return item.match() != null
        && item.match().senses().stream()
            .anyMatch(sense -> Set.of(GESTATION, "birth-mode").contains(sense.subject()));
  }

  private static boolean isOfElse(Item item) {
    return switch (item.kind()) {
      case FINDING, UNKNOWN, DENY, UNASSERTED -> true;
      case TOLD ->
          item.match().senses().stream()
              .noneMatch(sense -> Set.of("sex", "age", "first-born").contains(sense.subject()));
      default -> false;
    };
  }

  // "At the thirty four week scan"
  private boolean isOfScan(int behind) {
    return behind < plain.size() && told.isListed("scan", plain.get(behind));
  }

  private static boolean isOfPregnancy(String subject) {
    return subject.startsWith("antenatal-")
        || subject.startsWith("maternal-")
        || Set.of("group-b-strep", "breech-in-last-month").contains(subject);
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
