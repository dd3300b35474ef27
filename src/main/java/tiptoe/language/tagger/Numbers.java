package tiptoe.language.tagger;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import tiptoe.finding.Bound;
import tiptoe.language.NumberWords;
import tiptoe.language.SecondReading.Claim;
import tiptoe.language.SpokenNumber;
import tiptoe.protocol.Protocol;

/** Finds spoken numbers with their units, and gives each to the nearest measured structure. */
final class Numbers {
  private static final Map<String, String> UNITS =
      Map.ofEntries(
          Map.entry("grams", "g"),
          Map.entry("gram", "g"),
          Map.entry("kilos", "kg"),
          Map.entry("kilo", "kg"),
          Map.entry("kilograms", "kg"),
          Map.entry("kilogram", "kg"),
          Map.entry("pounds", "lb"),
          Map.entry("pound", "lb"),
          Map.entry("ounces", "oz"),
          Map.entry("ounce", "oz"),
          Map.entry("centimetres", "cm"),
          Map.entry("centimetre", "cm"),
          Map.entry("millimetres", "mm"),
          Map.entry("millimetre", "mm"),
          Map.entry("inches", "in"),
          Map.entry("inch", "in"),
          Map.entry("seconds", "s"),
          Map.entry("secs", "s"),
          Map.entry("micromoles", "µmol/L"),
          Map.entry("micromole", "µmol/L"),
          Map.entry("millimoles", "mmol/L"),
          Map.entry("millimole", "mmol/L"),
          Map.entry("milligrams", "mg/dL"),
          Map.entry("celsius", "°C"),
          Map.entry("centigrade", "°C"),
          Map.entry("fahrenheit", "°F"));

  private static final List<Map.Entry<List<String>, Bound>> BOUNDS =
      List.of(
          Map.entry(List.of("no", "more", "than"), Bound.AT_MOST),
          Map.entry(List.of("not", "more", "than"), Bound.AT_MOST),
          Map.entry(List.of("no", "less", "than"), Bound.AT_LEAST),
          Map.entry(List.of("not", "less", "than"), Bound.AT_LEAST),
          Map.entry(List.of("less", "than"), Bound.UNDER),
          Map.entry(List.of("more", "than"), Bound.OVER),
          Map.entry(List.of("greater", "than"), Bound.OVER),
          Map.entry(List.of("longer", "than"), Bound.OVER),
          Map.entry(List.of("at", "most"), Bound.AT_MOST),
          Map.entry(List.of("at", "least"), Bound.AT_LEAST),
          Map.entry(List.of("up", "to"), Bound.AT_MOST),
          Map.entry(List.of("under"), Bound.UNDER),
          Map.entry(List.of("below"), Bound.UNDER),
          Map.entry(List.of("within"), Bound.AT_MOST),
          Map.entry(List.of("over"), Bound.OVER),
          Map.entry(List.of("above"), Bound.OVER));

  private static final Set<String> ROUND = Set.of("round", "around");

  // Nothing else of a newborn is told in these.
  private static final Set<String> WEIGHTS = Set.of("g", "kg", "lb");

  /**
   * A number in a sentence.
   *
   * @param from first word
   * @param to behind its last word, or its unit's
   * @param numberTo behind the last word of the number itself
   */
  record At(int from, int numberTo, int to, SpokenNumber said) {}

  private Numbers() {}

  static boolean isUnit(String word) {
    return UNITS.containsKey(word) || word.equals("degrees") || word.equals("percent");
  }

  /** The numbers in a sentence, but for words that are part of a term. */
  static List<At> in(List<String> words, List<TermMatch> terms) {
    List<At> found = new ArrayList<>();
    int at = 0;
    while (at < words.size()) {
      int end = end(words, at, terms);
      if (end == at) {
        at++;
        continue;
      }
      int behind = end;
      String unit = null;
      if (behind < words.size() && words.get(behind).equals("degrees")) {
        behind++;
      }
      if (behind < words.size() && UNITS.containsKey(words.get(behind))) {
        unit = UNITS.get(words.get(behind++));
      }
      // "Thirty-four and a half round": not of the shape of the head
      if (behind < words.size() && ROUND.contains(words.get(behind)) && !isInTerm(terms, behind)) {
        behind++;
      }
      Bounded bounded = bounded(words, at);
      found.add(
          new At(
              bounded.from(),
              end,
              behind,
              new SpokenNumber(null, words.subList(at, end), unit, bounded.bound())));
      at = behind;
    }
    return found;
  }

  private static boolean isInTerm(List<TermMatch> terms, int word) {
    return terms.stream()
        .anyMatch(match -> match.words() > 1 && match.from() <= word && word < match.to());
  }

  private record Bounded(int from, Bound bound) {}

  // "Under two", "no more than three": the words before a number that make it a bound.
  private static Bounded bounded(List<String> words, int number) {
    for (Map.Entry<List<String>, Bound> said : BOUNDS) {
      int from = number - said.getKey().size();
      if (from >= 0 && words.subList(from, number).equals(said.getKey())) {
        return new Bounded(from, said.getValue());
      }
    }
    return new Bounded(number, null);
  }

  // The longest run that reads as a number.
  private static int end(List<String> words, int from, List<TermMatch> terms) {
    int end = from;
    for (int to = from + 1; to <= Math.min(words.size(), from + 9); to++) {
      int last = to - 1;
      if (isInTerm(terms, last)) {
        break;
      }
      // "Three thousand four hundred and sixty and feeding well"
      if (!words.get(last).equals("and")
          && !NumberWords.readings(words.subList(from, to)).isEmpty()) {
        end = to;
      }
    }
    // "A" and "oh" are no numbers by themselves, but for the days of "thirty five plus nought".
    boolean days = from > 0 && words.get(from - 1).equals("plus") && !words.get(from).equals("a");
    return end == from + 1 && !days && Set.of("a", "oh", "nought").contains(words.get(from))
        ? from
        : end;
  }

  /** What the numbers say about the measured structures of the sentence. */
  static List<Claim> claims(List<At> numbers, List<TermMatch> parts, Protocol protocol) {
    List<TermMatch> free =
        parts.stream()
            .filter(match -> !measured(match, protocol).isEmpty())
            .collect(Collectors.toCollection(ArrayList::new));
    List<Claim> claims = new ArrayList<>();
    List<Amount> amounts = amounts(numbers);
    for (int i = 0; i < amounts.size(); i++) {
      Amount amount = amounts.get(i);
      int next = i + 1 < amounts.size() ? amounts.get(i + 1).from() : Integer.MAX_VALUE;
      TermMatch part = nearest(free, amount, next).orElse(null);
      List<String> steps = part == null ? List.of() : measured(part, protocol);
      boolean bounded = amount.said().get(0).bound() != null;
      if (steps.size() == 1 && (!bounded || protocol.step(steps.get(0)).measure().bounds())) {
        free.removeIf(part::equals);
        claims.add(amount.claim(steps.get(0), part));
      } else if (part == null
          && !bounded
          && WEIGHTS.contains(String.valueOf(amount.said().get(0).unit()))) {
        claims.add(
            amount.claim("weight", new TermMatch(amount.from(), amount.from(), 0, List.of())));
      }
    }
    return claims;
  }

  /** What was measured: a number, or pounds and the ounces behind them. */
  private record Amount(int from, int to, List<SpokenNumber> said) {
    Claim claim(String step, TermMatch part) {
      Set<Integer> evidence = new TreeSet<>();
      IntStream.range(part.from(), part.to()).forEach(evidence::add);
      IntStream.range(from, to).forEach(evidence::add);
      return new Claim(step, null, null, List.of(), said, evidence);
    }
  }

  private static List<Amount> amounts(List<At> numbers) {
    List<Amount> amounts = new ArrayList<>();
    for (int i = 0; i < numbers.size(); i++) {
      At number = numbers.get(i);
      if (i + 1 < numbers.size() && isOunces(numbers.get(i + 1), number)) {
        At ounces = numbers.get(++i);
        amounts.add(new Amount(number.from(), ounces.to(), List.of(number.said(), ounces.said())));
      } else {
        amounts.add(new Amount(number.from(), number.to(), List.of(number.said())));
      }
    }
    return amounts;
  }

  // "Seven pounds nine ounces", "seven pound nine", "three kilos four hundred"
  private static boolean isOunces(At number, At before) {
    String unit = before.said().unit() + " " + number.said().unit();
    boolean bare = number.said().unit() == null && number.from() == before.to();
    return Set.of("lb oz", "kg g").contains(unit) && number.from() - before.to() <= 1
        || bare && Set.of("lb null", "kg null").contains(unit);
  }

  // The last structure before the number, else the first between it and the next number.
  private static Optional<TermMatch> nearest(List<TermMatch> parts, Amount amount, int next) {
    return parts.stream()
        .filter(match -> match.to() <= amount.from())
        .reduce((first, second) -> second)
        .or(
            () ->
                parts.stream()
                    .filter(match -> match.from() >= amount.to() && match.from() < next)
                    .findFirst());
  }

  private static List<String> measured(TermMatch part, Protocol protocol) {
    return part.steps(Sense.Kind.PART).stream()
        .filter(step -> protocol.step(step).isMeasured())
        .toList();
  }
}
