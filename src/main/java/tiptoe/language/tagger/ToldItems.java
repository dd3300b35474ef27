package tiptoe.language.tagger;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import tiptoe.language.NumberWords;
import tiptoe.language.SpokenNumber;

/** Says of each word of a sentence what it is where facts and measurements are told. */
final class ToldItems {
  private static final List<String> EMPTY =
      List.of("filler", "function", "neutral", "little", "talk", "severity");
  private static final int MOST_COUNTED = 10;
  private static final List<String> DAY_AND_HALF = List.of("one", "point", "five");
  private static final List<String> TIMES = List.of("h", "days", "weeks");

  enum Kind {
    /** A word of a fact or a measured step. */
    TOLD,
    NUMBER,
    DENY,
    JOINT,
    OR,
    /** Carries nothing. */
    EMPTY,
    /** Tells which of several readings it is. */
    ORDER,
    /** Carries nothing beside what wants such a word. */
    CONTEXT,
    /** Makes it no assertion of this baby: a doubt, a plan, what is said of others. */
    UNASSERTED,
    /** A word of the findings. */
    FINDING,
    /** An everyday word. */
    ASIDE,
    UNKNOWN
  }

  /** Words that belong together, from the first to behind the last. */
  record Item(Kind kind, int from, int to, ToldLexicon.Match match, List<SpokenNumber> numbers) {
    boolean isAbout() {
      return abouts().findAny().isPresent();
    }

    /** All that it can stand for; nothing where it tells nothing. */
    Stream<ToldLexicon.Sense> senses() {
      return match == null ? Stream.of() : match.senses().stream();
    }

    /** What it says is spoken of. */
    Stream<ToldLexicon.Sense> abouts() {
      return senses().filter(sense -> sense.kind() == ToldLexicon.Kind.ABOUT);
    }

    boolean isFreeValue() {
      return senses().anyMatch(sense -> sense.kind() == ToldLexicon.Kind.VALUE && !sense.bound());
    }

    int length() {
      return to - from;
    }
  }

  private record Entry(Kind kind, List<String> term) {}

  private final ToldLexicon told;
  private final LayLexicon lay;
  private final Map<String, List<Entry>> byFirst = new HashMap<>();

  ToldItems(ToldLexicon told, LayLexicon lay) {
    this.told = told;
    this.lay = lay;
    add(Kind.DENY, told.list("deny"));
    add(Kind.EMPTY, told.list("affirm"));
    add(Kind.EMPTY, told.list("verbs"));
    add(Kind.ORDER, told.list("order"));
    add(Kind.EMPTY, told.list("source"));
    add(Kind.EMPTY, told.list("idle-if"));
    add(Kind.DENY, lay.list("no"));
    EMPTY.forEach(list -> add(Kind.EMPTY, lay.list(list)));
    told.contexts().forEach(list -> add(Kind.CONTEXT, told.list(list)));
    add(Kind.UNASSERTED, told.list("roughly"));
    List.of("doubt", "later", "again", "general")
        .forEach(list -> add(Kind.UNASSERTED, lay.list(list)));
    // "Saturation ninety one, don't like that"
    add(Kind.EMPTY, lay.list("concern").stream().filter(term -> term.size() > 1).toList());
    add(Kind.ASIDE, lay.list("aside"));
    add(Kind.ASIDE, told.list("when"));
  }

  ToldLexicon told() {
    return told;
  }

  LayLexicon lay() {
    return lay;
  }

  private void add(Kind kind, List<List<String>> terms) {
    for (List<String> term : terms) {
      // "First baby and there is no family history": something else begins there.
      boolean joint =
          term.size() == 1 && (isJoint(term.get(0)) || told.isListed("either", term.get(0)))
              || kind == Kind.EMPTY && told.isListed("list-joint", term.get(0));
      if (!joint) {
        byFirst.computeIfAbsent(term.get(0), word -> new ArrayList<>()).add(new Entry(kind, term));
      }
    }
  }

  boolean isJoint(String word) {
    return told.isListed("joint", word);
  }

  /** Whether a word is of a list whose words may stand anywhere without weight. */
  boolean isEmpty(List<String> said) {
    return EMPTY.stream().anyMatch(list -> lay.isListed(list, said));
  }

  /**
   * The items of a sentence, in order; each word is in one of them.
   *
   * @param words with breaks
   * @param plain the same without their endings
   */
  List<Item> of(List<String> words, List<String> plain) {
    List<ToldLexicon.Match> matches = told.matches(plain);
    List<Item> found = new ArrayList<>();
    matches.forEach(m -> found.add(new Item(Kind.TOLD, m.from(), m.to(), m, List.of())));
    for (int at = 0; at < words.size(); at++) {
      listed(words, at, found);
      if (!plain.get(at).equals(words.get(at))) {
        listed(plain, at, found);
      }
    }
    List<TermMatch> terms =
        found.stream()
            .filter(item -> item.kind() == Kind.TOLD || item.kind() == Kind.ORDER)
            .map(item -> new TermMatch(item.from(), item.to(), item.length(), List.of()))
            .toList();
    found.addAll(dayAndHalf(plain));
    found.addAll(numbers(words, plain, Numbers.in(words, terms), terms));
    List<TermMatch> findings =
        lay.matches(words).stream()
            .filter(match -> match.is(Sense.Kind.VALUE) || match.is(Sense.Kind.PART))
            .toList();
    // "Two good heart sounds": how many, and no rate of the heart.
    found.removeIf(
        item ->
            item.kind() == Kind.NUMBER
                && findings.stream()
                    .anyMatch(
                        match ->
                            match.to() - match.from() > 2
                                && match.from() == item.from()
                                && item.to() < match.to()));
    // "He is a" leaves "a boy" whole.
    List<Item> tells = found.stream().filter(item -> item.kind() == Kind.TOLD).toList();
    found.removeIf(
        item ->
            item.kind() == Kind.EMPTY
                && tells.stream()
                    .anyMatch(
                        other ->
                            item.from() < other.from()
                                && other.from() < item.to()
                                && item.to() < other.to()));
    findings.forEach(m -> found.add(new Item(Kind.FINDING, m.from(), m.to(), null, List.of())));
    List<Item> kept = new ArrayList<>();
    found.stream()
        .sorted(
            Comparator.comparing((Item item) -> item.kind() != Kind.NUMBER)
                .thenComparing(Comparator.comparingInt(Item::length).reversed())
                .thenComparing(Item::kind)
                .thenComparingInt(Item::from))
        .filter(item -> kept.stream().noneMatch(o -> item.from() < o.to() && o.from() < item.to()))
        .forEach(kept::add);
    kept.sort(Comparator.comparingInt(Item::from));
    return filled(plain, kept);
  }

  private void listed(List<String> words, int at, List<Item> found) {
    for (Entry entry : byFirst.getOrDefault(words.get(at), List.of())) {
      int to = at + entry.term().size();
      if (to <= words.size()
          && words.get(to - 1).equals(entry.term().get(to - at - 1))
          && words.subList(at, to).equals(entry.term())) {
        found.add(new Item(entry.kind(), at, to, null, List.of()));
      }
    }
    if (lay.isAddress(words, at)) {
      found.add(new Item(Kind.EMPTY, at, at + 1, null, List.of()));
    }
  }

  private List<Item> filled(List<String> plain, List<Item> kept) {
    List<Item> items = new ArrayList<>();
    int at = 0;
    for (Item item : kept) {
      while (at < item.from()) {
        items.add(single(plain, at++));
      }
      items.add(item);
      at = item.to();
    }
    while (at < plain.size()) {
      items.add(single(plain, at++));
    }
    return items;
  }

  private Item single(List<String> plain, int at) {
    String word = plain.get(at);
    Kind kind =
        isJoint(word)
            ? Kind.JOINT
            : told.isListed("either", word)
                ? Kind.OR
                : told.isListed("some-one", word) ? Kind.EMPTY : Kind.UNKNOWN;
    return new Item(kind, at, at + 1, null, List.of());
  }

  // Numbers with their units; "three kilos four hundred" and "two days and four hours" are one.
  private List<Item> numbers(
      List<String> words, List<String> plain, List<Numbers.At> all, List<TermMatch> terms) {
    List<Item> items = new ArrayList<>();
    for (Numbers.At at : all) {
      int from = at.numberTo() - at.said().words().size();
      // "Adds up to thirty six" is no bound.
      boolean bounds =
          at.from() < from
              && terms.stream().noneMatch(term -> term.from() < from && at.from() < term.to());
      String unit = at.said().unit();
      int to = at.to();
      Optional<String> time = unit == null ? time(plain, to) : Optional.empty();
      if (time.isPresent()) {
        unit = time.get();
        to++;
      }
      boolean pronoun =
          unit == null
              && told.isListed("some-one", plain.subList(from, at.numberTo()))
              && (from == 0 || told.isListed("pointer", plain.get(from - 1)));
      if (pronoun) {
        continue;
      }
      int counted = unit == null ? behindCounted(plain, at) : to;
      if (counted > to && told.isListed("how-often", plain.get(to)) && isRate(plain, counted)) {
        to = counted;
      } else if (counted > to) {
        items.add(new Item(Kind.EMPTY, from, counted, null, List.of()));
        continue;
      }
      int begin = bounds ? at.from() : from;
      SpokenNumber said =
          new SpokenNumber(null, at.said().words(), unit, bounds ? at.said().bound() : null);
      Item last = items.isEmpty() ? null : items.get(items.size() - 1);
      if (last != null && last.kind() == Kind.NUMBER && isMinor(plain, last, said, begin)) {
        items.remove(last);
        items.add(
            new Item(Kind.NUMBER, last.from(), to, null, List.of(last.numbers().get(0), said)));
      } else {
        items.add(new Item(Kind.NUMBER, begin, to, null, List.of(said)));
      }
    }
    return items;
  }

  // "A day and a half old"
  private List<Item> dayAndHalf(List<String> plain) {
    List<Item> items = new ArrayList<>();
    for (List<String> term : told.list("day-and-a-half")) {
      for (int at = 0; at + term.size() <= plain.size(); at++) {
        if (plain.subList(at, at + term.size()).equals(term)) {
          SpokenNumber said = new SpokenNumber(null, DAY_AND_HALF, "days", null);
          items.add(new Item(Kind.NUMBER, at, at + term.size(), null, List.of(said)));
        }
      }
    }
    return items;
  }

  // "Three times", "two of us", "two people": how often or how many, and nothing that was measured.
  private int behindCounted(List<String> plain, Numbers.At number) {
    boolean few = value(number.said()) <= MOST_COUNTED;
    boolean rate =
        told.isListed(
            "how-often", plain.subList(number.to(), Math.min(plain.size(), number.to() + 1)));
    return few || rate
        ? told.list("counted-things").stream()
            .filter(term -> number.to() + term.size() <= plain.size())
            .filter(term -> plain.subList(number.to(), number.to() + term.size()).equals(term))
            .mapToInt(term -> number.to() + term.size())
            .max()
            .orElse(number.to())
        : number.to();
  }

  private boolean isRate(List<String> plain, int at) {
    return told.begins("a-minute", plain.subList(at, plain.size()));
  }

  private Optional<String> time(List<String> plain, int at) {
    return at < plain.size()
        ? TIMES.stream().filter(unit -> told.isListed("unit-" + unit, plain.get(at))).findFirst()
        : Optional.empty();
  }

  private boolean isMinor(List<String> plain, Item major, SpokenNumber minor, int from) {
    String units = major.numbers().get(0).unit() + " " + minor.unit();
    List<String> between = plain.subList(major.to(), from);
    boolean close = between.isEmpty() || told.isListed("major-and-minor", between);
    return major.numbers().size() == 1
        && close
        && (Set.of("kg g", "lb oz", "days h", "weeks days").contains(units)
            || between.isEmpty() && Set.of("kg null", "lb null").contains(units)
            || units.equals("kg null") && value(minor) >= 100);
  }

  static double value(SpokenNumber number) {
    return NumberWords.readings(number.words()).stream().findFirst().orElse(-1.0);
  }
}
