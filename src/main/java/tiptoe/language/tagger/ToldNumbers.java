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
import tiptoe.language.NumberWords;
import tiptoe.language.SpokenNumber;
import tiptoe.language.tagger.ToldItems.Item;
import tiptoe.language.tagger.ToldItems.Kind;
import tiptoe.language.tagger.ToldPart.Stated;
import tiptoe.protocol.Protocol;

/** Says what the numbers of a part measure: what is named beside them, or was before. */
final class ToldNumbers {
  private static final String RESPIRATORY_RATE = "respiratory-rate";

  /** What is counted in a minute and slower than this or faster may be of the heart. */
  private static final int SLOWEST_BREATHING = 20;

  private static final int FASTEST_BREATHING = 89;

  /** Of a head at term, so that it is no length. */
  private static final int SMALLEST_HEAD = 28;

  private static final int LARGEST_HEAD = 42;

  private static final Set<String> TAPED = Set.of("head-circumference", "length");

  private final ToldWords sentence;
  private final ToldLexicon told;
  private final Protocol protocol;
  private final List<String> plain;
  private final ToldMeasures measures;
  private final ToldGestation gestation;

  ToldNumbers(ToldWords sentence) {
    this.sentence = sentence;
    this.told = sentence.told();
    this.protocol = sentence.protocol();
    this.plain = sentence.plain();
    this.measures = new ToldMeasures(sentence);
    this.gestation = new ToldGestation(sentence, measures);
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
            .filter(number -> !isHeld(part, number))
            .toList();
    List<Item> names =
        part.items.stream()
            .filter(item -> !measures.of(item).isEmpty())
            .filter(item -> !isAgeThen(part, item))
            .toList();
    if (isRange(numbers)) {
      return all(names);
    }
    if (numbers.isEmpty()) {
      return part.has(Kind.NUMBER) || told.says("which", part.of(plain)) ? all(names) : Set.of();
    }
    ToldGestation.Found weeks =
        gestation.read(part, numbers, isNoneOf(names, numbers.get(0)), carried);
    if (weeks != ToldGestation.Found.NONE) {
      return weeks == ToldGestation.Found.TIME ? Set.of(ToldGestation.SUBJECT) : Set.of();
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
                            isOfAnother(number) && !measures.unit(one).equals("%")
                                || !measures.fits(one, number.numbers().get(0))))
        .collect(Collectors.toSet());
  }

  // "Thirty nine plus two when he was born": no weight of then.
  private boolean isNoneOf(List<Item> names, Item number) {
    return names.stream()
        .flatMap(item -> measures.of(item).stream())
        .allMatch(
            one -> one.equals("birth-weight") && !measures.isPlausible(one, number.numbers()));
  }

  // "Weight on day three", "bed five": which, and nothing that was measured.
  private boolean isWhich(ToldPart part, Item number) {
    boolean which =
        number.numbers().get(0).unit() == null
            && sentence.isBehind("which", number.from(), part.from());
    if (which && sentence.isListed("which-day", number.from() - 1)) {
      part.account(number.from() - 1, number.to());
    }
    return which;
  }

  // "Pressing for five seconds": how long, and not how long it took.
  private boolean isHeld(ToldPart part, Item number) {
    boolean held =
        "s".equals(number.numbers().get(0).unit())
            && told.says("press-words", part.of(plain))
            && sentence.isBehind("held-for", number.from(), part.from());
    if (held) {
      part.account(number.from() - 1, number.to());
    }
    return held;
  }

  // "Skin bilirubin at twenty hours was nine", "vaccine at two hours": when that was.
  private boolean isWhen(ToldPart part, Item number) {
    boolean time =
        Set.of("h", "days").contains(String.valueOf(number.numbers().get(0).unit()))
            && sentence.isBehind("at-time", number.from(), part.from());
    List<String> units =
        part.items.stream()
            .filter(item -> !isAgeThen(part, item))
            .flatMap(item -> measures.of(item).stream())
            .map(measures::unit)
            .toList();
    boolean ofTests =
        part.states()
            && part.stated().stream()
                .allMatch(one -> told.isSubjectListed("offered", one.subject()));
    boolean ofNumbers =
        part.all(Kind.NUMBER).size() > 1 && !units.isEmpty() && !units.contains("h");
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
                        && sentence.isBehind("at-time", number.from(), part.from()));
  }

  private static boolean isAge(Item item) {
    return item.abouts().anyMatch(sense -> sense.subject().equals("age"));
  }

  private Set<String> all(List<Item> names) {
    Set<String> all = new LinkedHashSet<>();
    names.forEach(name -> all.addAll(measures.of(name)));
    return all;
  }

  // "One hundred and twenty to one sixty": what is usual, or nobody knows.
  private boolean isRange(List<Item> numbers) {
    for (int i = 1; i < numbers.size(); i++) {
      if (told.isListed("range", plain.subList(numbers.get(i - 1).to(), numbers.get(i).from()))) {
        return true;
      }
    }
    return false;
  }

  // "She's seventy two hours", "he's forty hours today"
  private boolean isAgeOf(ToldPart part, Item number) {
    int from = number.from();
    boolean time = Set.of("h", "days").contains(String.valueOf(number.numbers().get(0).unit()));
    boolean said =
        part.items.stream()
            .allMatch(
                item -> item == number || item.kind() == Kind.EMPTY || item.kind() == Kind.JOINT);
    return time
        && said
        && from > part.from()
        && sentence.isListed("aged", from - 1)
        && (number.to() == part.to() || sentence.isListed("aged-now", number.to()));
  }

  // "Weight is down four percent"
  private boolean isOfAnother(Item number) {
    return number.numbers().get(0).unit() == null
        && (sentence.isListed("other-unit", number.to()) || isPercent(number));
  }

  private boolean isPercent(Item number) {
    return told.begins("percent", plain.subList(number.to(), plain.size()));
  }

  private Optional<String> unnamed(
      ToldPart part, List<Item> numbers, Set<String> carried, boolean goesOn) {
    SpokenNumber said = numbers.get(0).numbers().get(0);
    List<String> measured = carried.stream().filter(measures::isMeasured).toList();
    if (numbers.size() > 1) {
      return Optional.empty();
    }
    boolean other =
        isOfAnother(numbers.get(0))
            && !(isPercent(numbers.get(0))
                && measured.stream().allMatch(one -> measures.unit(one).equals("%")));
    if (isAgeOf(part, numbers.get(0))) {
      return Optional.of("age");
    }
    boolean weighs = isWeight(said) && Set.of("weight", "birth-weight").containsAll(measured);
    if (weighs && !measured.isEmpty() && !other) {
      // "Birth weight three thousand and eighty, today two thousand eight hundred"
      List<String> of = part.of(plain);
      if (told.says("at-birth", of) || told.says("weighed-now", of)) {
        return Optional.of(told.says("at-birth", of) ? "birth-weight" : "weight");
      }
    }
    if (measured.size() == 1
        && said.unit() != null
        && said.unit().equals(measures.unit(measured.get(0)))
        && TAPED.contains(measured.get(0))
        && measures.isPlausible(measured.get(0), numbers.get(0).numbers())) {
      // "Nicely shaped head, thirty five centimetres"
      return Optional.of(measured.get(0));
    }
    if (measured.isEmpty() && isRefill(said)) {
      return Optional.of("capillary-refill");
    }
    if (measured.isEmpty() && isOnTape(part, said)) {
      return Optional.of("head-circumference");
    }
    boolean rate = told.says("a-minute", plain.subList(numbers.get(0).to(), part.to()));
    if ((goesOn || rate && measured.stream().allMatch(one -> measures.unit(one).equals("/min")))
        && measured.size() == 1
        && measures.fits(measured.get(0), said)
        && !other) {
      return Optional.of(measured.get(0));
    }
    if (measured.isEmpty() && !other && isBreathing(part, said)) {
      return Optional.of(RESPIRATORY_RATE);
    }
    if (said.unit() != null
        && isWeight(said)
        && isOfBirth(carried)
        && !told.says("weighed-now", part.of(plain))) {
      // "Forceps delivery at thirty nine weeks, three thousand six hundred grams"
      return Optional.of("birth-weight");
    }
    if (!isWeight(said) || !carried.isEmpty() && !measured.equals(List.of("weight"))) {
      return Optional.empty();
    }
    // "Came out at seven pounds, that's three thousand two hundred": what nothing else names.
    return Optional.of(
        told.says("at-birth", plain.subList(0, part.to())) ? "birth-weight" : "weight");
  }

  private static boolean isOfBirth(Set<String> carried) {
    return carried.contains("birth-mode") || carried.contains(ToldGestation.SUBJECT);
  }

  /** Whether it is a weight: nothing else of a newborn comes to thousands. */
  static boolean isWeight(SpokenNumber said) {
    return Set.of("g", "kg", "lb").contains(String.valueOf(said.unit()))
        || said.unit() == null && said.words().contains("thousand");
  }

  // "Pulling in under the ribs, I count seventy two": no heart is spoken of, nor beats so slow.
  private boolean isBreathing(ToldPart part, SpokenNumber said) {
    return said.unit() == null
        && said.bound() == null
        && told.says("counted", part.of(plain))
        && told.says("breathing-words", plain)
        && !told.says("beat-words", plain)
        && ToldGestation.isBetween(SLOWEST_BREATHING, FASTEST_BREATHING, said);
  }

  // "I press on the breastbone and count, two seconds": nothing else is told in seconds then.
  private boolean isRefill(SpokenNumber said) {
    return "s".equals(said.unit())
        && told.says("refill-words", plain)
        && measures.isPlausible("capillary-refill", List.of(said));
  }

  // "Tape round the head, and that's thirty four and a half"
  private boolean isOnTape(ToldPart part, SpokenNumber said) {
    return (said.unit() == null || said.unit().equals("cm"))
        && told.says("tape-words", plain)
        && told.says("head-words", plain)
        && part.items.stream()
            .allMatch(
                item ->
                    item.kind() == Kind.NUMBER
                        || item.kind() == Kind.EMPTY
                        || item.kind() == Kind.JOINT)
        && ToldGestation.isBetween(SMALLEST_HEAD, LARGEST_HEAD, said);
  }

  // Of several, the fact: it needs another word beside it, and that is said.
  private Optional<String> meant(Item name, Item number) {
    List<String> fitting =
        measures.of(name).stream()
            .filter(one -> measures.fits(one, number.numbers().get(0)))
            .filter(
                one -> !isOfAnother(number) || isPercent(number) && measures.unit(one).equals("%"))
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
        && told.isListed("for-it", plain.subList(number.to(), name.from()));
  }

  private void state(String subject, Item number, ToldPart part) {
    if (number.numbers().stream().anyMatch(one -> isGlued(one.words()))) {
      return;
    }
    // An age is never told to the minute.
    boolean rough =
        protocol.fact(subject).isPresent()
            && (subject.equals("age")
                ? sentence.isBehind("roughly", number.from(), 0)
                : sentence.isRough(number));
    boolean bounds =
        protocol.find(subject).filter(step -> step.measure().bounds()).isPresent()
            || number.numbers().stream().allMatch(one -> one.bound() == null);
    part.state(new Stated(subject, null, number.numbers(), part.has(Kind.ORDER), !rough && bounds));
    part.account(number);
    part.account(subject);
    part.all(Kind.ORDER).forEach(part::account);
  }

  // "One two point one" may be two numbers.
  private static boolean isGlued(List<String> words) {
    int point = words.indexOf("point");
    return point > 1
        && NumberWords.BELOW_TWENTY.subList(0, 10).contains(words.get(0))
        && NumberWords.BELOW_TWENTY.containsAll(words.subList(0, point));
  }
}
