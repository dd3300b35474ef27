package tiptoe.language.tagger;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import tiptoe.language.NumberWords;
import tiptoe.language.SecondReading.Told;
import tiptoe.language.SpokenNumber;
import tiptoe.language.TypedText;
import tiptoe.language.tagger.ToldItems.Item;
import tiptoe.language.tagger.ToldItems.Kind;
import tiptoe.protocol.Fact;
import tiptoe.protocol.Measure;
import tiptoe.protocol.Protocol;

/**
 * Reads facts about the baby and measurements in a sentence. It is parted where something else is
 * spoken of; each part is told only where every word of it is accounted for, and only offered where
 * one or two are not. Two values of one thing without a plain correction count for nothing.
 */
final class ToldReader {
  private static final int MOST_UNKNOWN = 2;

  private static final Set<Kind> DENIES = EnumSet.of(Kind.DENY, Kind.STRANGE);
  private static final Set<Kind> STRANGE_ALONE = EnumSet.of(Kind.STRANGE);
  private static final Set<Kind> CARRIES_NOTHING =
      EnumSet.of(Kind.EMPTY, Kind.CONTEXT, Kind.ORDER, Kind.JOINT);
  private static final Set<Kind> STRANGE =
      EnumSet.of(Kind.STRANGE, Kind.CONTEXT, Kind.DENY, Kind.NUMBER);

  /** What stands between two breaks or joints and speaks of one thing. */
  private static final class Part {
    final List<Item> items = new ArrayList<>();
    boolean corrects;
    boolean joined;
    boolean isCorrection;
    List<Stated> stated = new ArrayList<>();
    boolean denied;
    boolean strange;
    boolean asked;
    boolean isReplaced;
    boolean isAnswer;
    boolean settled;
    final Set<Integer> open = new TreeSet<>();

    /** Whether nothing is stated and it has an item of one of these kinds. */
    boolean isLeft(Set<Kind> kinds) {
      return stated.isEmpty() && items.stream().anyMatch(item -> kinds.contains(item.kind()));
    }

    int from() {
      return items.get(0).from();
    }

    int to() {
      return items.get(items.size() - 1).to();
    }
  }

  private static final class Stated {
    final String subject;
    final String value;
    final List<SpokenNumber> numbers;
    final boolean ordered;
    boolean sure = true;
    boolean corrects;

    Stated(String subject, String value, List<SpokenNumber> numbers, boolean ordered) {
      this.subject = subject;
      this.value = value;
      this.numbers = numbers;
      this.ordered = ordered;
    }
  }

  private final ToldItems vocabulary;
  private final ToldLexicon told;
  private final LayLexicon lay;
  private final Protocol protocol;
  private final List<String> words;
  private final List<String> plain;
  private final List<Part> parts = new ArrayList<>();
  private Set<String> carried = Set.of();
  private boolean carriesNumber;
  private final Set<String> contested = new TreeSet<>();

  ToldReader(
      ToldLexicon told,
      ToldItems vocabulary,
      LayLexicon lay,
      Protocol protocol,
      List<String> words) {
    this.vocabulary = vocabulary;
    this.told = told;
    this.lay = lay;
    this.protocol = protocol;
    this.words = words;
    this.plain = words.stream().map(ToldLexicon::plain).toList();
  }

  Told read() {
    if (words.contains(TypedText.ASKS)
        || lay.says("supposes", plain)
        || says("example")
        || told.says("stranger", words)
        || says("stranger")) {
      return Told.NOTHING;
    }
    part(vocabulary.of(words, plain));
    // "She had her antibiotics, did she"
    Part last = parts.get(parts.size() - 1);
    if (told.list("tag").contains(plain.subList(last.from(), last.to()))) {
      return Told.NOTHING;
    }
    for (int i = 0; i < parts.size(); i++) {
      read(i);
    }
    ofOthers();
    together();
    correct();
    takenBack();
    lists();
    conflicts();
    return result();
  }

  private boolean says(String list) {
    return told.says(list, plain);
  }

  // Parts

  private void part(List<Item> items) {
    Part now = new Part();
    boolean corrects = false;
    for (int i = 0; i < items.size(); i++) {
      Item item = items.get(i);
      int wrong = wrong(item.from());
      if (wrong > 0) {
        now = close(now);
        Part correction = new Part();
        correction.isCorrection = true;
        while (i < items.size() && items.get(i).from() < wrong) {
          correction.items.add(items.get(i++));
        }
        i--;
        parts.add(correction);
        corrects = true;
        now.corrects = true;
        continue;
      }
      if (words.get(item.from()).equals(TypedText.BREAK)) {
        now = close(now);
        now.corrects = corrects;
      } else if (item.kind() == Kind.JOINT && parts(items, i, now)) {
        now = close(now);
        now.corrects = corrects;
        now.joined = true;
        now.items.add(item);
      } else {
        now.items.add(item);
      }
    }
    close(now);
  }

  private Part close(Part part) {
    if (!part.items.isEmpty()) {
      parts.add(part);
    }
    return new Part();
  }

  // Behind the last word of what takes something back and begins here; 0 where there is nothing.
  private int wrong(int at) {
    int next = at + 1 < words.size() && words.get(at + 1).equals(TypedText.BREAK) ? at + 2 : at + 1;
    boolean leads = told.isListed("hesitates", words.get(at));
    int behind = leads && next < words.size() ? wrong(next) : 0;
    return behind > 0 ? behind : takesBack(at);
  }

  private int takesBack(int at) {
    int longest = 0;
    for (List<List<String>> all :
        List.of(
            told.list("wrong"), lay.list("correction"), lay.list("slip"), lay.list("takes-back"))) {
      for (List<String> term : all) {
        int to = at + term.size();
        boolean here = to <= words.size() && words.subList(at, to).equals(term);
        boolean apart =
            here
                && (at == 0 || words.get(at - 1).equals(TypedText.BREAK) || term.size() > 1)
                && (to == words.size()
                    || words.get(to).equals(TypedText.BREAK)
                    || term.size() > 1
                    || puts(to));
        if (apart) {
          longest = Math.max(longest, to);
        }
      }
    }
    boolean bareNo =
        words.get(at).equals("no")
            && at > 0
            && words.get(at - 1).equals(TypedText.BREAK)
            && at + 1 < words.size()
            && words.get(at + 1).equals(TypedText.BREAK);
    return longest == 0 && bareNo ? at + 1 : longest;
  }

  // Whether a number or something told begins here.
  private boolean puts(int at) {
    return !NumberWords.readings(words.subList(at, at + 1)).isEmpty()
        || told.matches(plain).stream()
            .filter(match -> match.from() == at)
            .anyMatch(match -> !match.of(ToldLexicon.Kind.VALUE).isEmpty());
  }

  private boolean parts(List<Item> items, int joint, Part before) {
    boolean says =
        before.items.stream()
            .anyMatch(i -> i.isAbout() || i.isFreeValue() || i.kind() == Kind.NUMBER);
    boolean more = false;
    for (int i = joint + 1; i < items.size(); i++) {
      Item item = items.get(i);
      if (words.get(item.from()).equals(TypedText.BREAK) || item.kind() == Kind.JOINT) {
        break;
      }
      more |= item.isAbout() || item.isFreeValue() || item.kind() == Kind.FINDING;
    }
    // "Told mummy and daddy about the hips"
    int at = items.get(joint).from();
    boolean people =
        at > 0
            && at + 1 < plain.size()
            && isPerson(plain.get(at - 1))
            && isPerson(plain.get(at + 1));
    if (people) {
      return false;
    }
    // "Thirty eight and four by dates"
    boolean weeks =
        joint > 0
            && joint + 1 < items.size()
            && items.get(joint - 1).kind() == Kind.NUMBER
            && items.get(joint + 1).kind() == Kind.NUMBER
            && mayBeWeeks(items.get(joint - 1), items.get(joint + 1));
    if (weeks) {
      return false;
    }
    boolean plainAnd = Set.of("and", "plus", "with").contains(plain.get(items.get(joint).from()));
    return says && (more || !plainAnd);
  }

  private static boolean mayBeWeeks(Item weeks, Item days) {
    double first = ToldItems.value(weeks.numbers().get(0));
    double second = ToldItems.value(days.numbers().get(0));
    return first >= 22 && first <= 44 && second >= 0 && second <= 6;
  }

  private boolean isPerson(String word) {
    return told.isListed("near", word);
  }

  // What a part says

  private void read(int index) {
    Part part = parts.get(index);
    if (part.isCorrection) {
      return;
    }
    boolean asked = isAsked(part) || part.joined && index > 0 && parts.get(index - 1).asked;
    part.asked = asked;
    Optional<Boolean> answer =
        asked && index + 1 < parts.size() ? answer(parts.get(index + 1)) : Optional.empty();
    if (asked && answer.isEmpty() && !isTag(part)) {
      carried = Set.of();
      return;
    }
    if (answer.isPresent()) {
      parts.get(index + 1).isAnswer = true;
    }
    Set<Integer> used = new TreeSet<>();
    List<Stated> said = new ArrayList<>();
    values(part, said, used, answer);
    numbers(part, said, used);
    if (said.isEmpty()) {
      remember(part);
      return;
    }
    account(part, said, used);
    part.stated = said;
    Set<String> subjects = new LinkedHashSet<>();
    said.forEach(one -> subjects.add(one.subject));
    part.items.stream()
        .filter(Item::isAbout)
        .forEach(
            item ->
                item.match().of(ToldLexicon.Kind.ABOUT).forEach(s -> subjects.add(s.subject())));
    carried = subjects;
    carriesNumber = true;
  }

  // What is named and has nothing said of it yet: "blood glucose, first one two point one".
  private void remember(Part part) {
    Set<String> named = new LinkedHashSet<>();
    part.items.stream()
        .filter(Item::isAbout)
        .forEach(
            item ->
                item.match().of(ToldLexicon.Kind.ABOUT).stream()
                    .filter(sense -> !sense.weak())
                    .forEach(sense -> named.add(sense.subject())));
    boolean empty =
        part.items.stream().allMatch(i -> i.kind() == Kind.EMPTY || i.kind() == Kind.JOINT);
    if (!named.isEmpty()) {
      carried = named;
      carriesNumber = true;
    } else if (!empty) {
      carriesNumber =
          part.items.stream().noneMatch(i -> i.kind() == Kind.FINDING || i.kind() == Kind.NUMBER);
    }
  }

  private boolean isInverted(List<String> said) {
    return said.size() > 2
        && told.isListed("auxiliary", said.get(0))
        && told.isListed("subject", said.get(1));
  }

  private boolean isAsked(Part part) {
    int from = part.from();
    while (from < part.to()
        && (ToldItems.isJoint(plain.get(from)) || told.isListed("opens", plain.get(from)))) {
      from++;
    }
    List<String> said = plain.subList(from, part.to());
    return isInverted(said)
        || told.list("asks").stream()
            .anyMatch(
                term -> said.size() >= term.size() && said.subList(0, term.size()).equals(term));
  }

  // "Your first baby, isn't it, yes"
  private boolean isTag(Part part) {
    return part.items.size() <= 2 && part.items.stream().noneMatch(i -> i.kind() == Kind.TOLD);
  }

  private Optional<Boolean> answer(Part part) {
    List<String> said = plain.subList(part.from(), part.to());
    if (part.isCorrection && said.equals(List.of("no"))) {
      return Optional.of(false);
    }
    if (said.size() > 2) {
      return Optional.empty();
    }
    return told.list("deny").contains(said)
        ? Optional.of(false)
        : told.list("affirm").contains(said) ? Optional.of(true) : Optional.empty();
  }

  private static Set<String> subjects(Part part) {
    Set<String> subjects = new LinkedHashSet<>();
    part.items.stream()
        .filter(item -> item.match() != null)
        .forEach(item -> item.match().senses().forEach(sense -> subjects.add(sense.subject())));
    return subjects;
  }

  // "Nothing green" says nothing of its own beside vomiting.
  private boolean isInPhrase(Part part, Item item) {
    return told.phrases(subjects(part), plain.subList(part.from(), part.to())).stream()
        .anyMatch(
            phrase ->
                phrase.from() + part.from() <= item.from()
                    && item.to() <= phrase.to() + part.from()
                    && phrase.to() - phrase.from() > item.length());
  }

  /** Words of a part that carry nothing beside one of these. */
  private Set<Integer> covered(Part part, Set<String> subjects) {
    Set<Integer> covered = new TreeSet<>();
    told.beside(subjects, plain.subList(part.from(), part.to())).stream()
        .map(at -> at + part.from())
        .forEach(covered::add);
    return covered;
  }

  // Values

  private void values(Part part, List<Stated> said, Set<Integer> used, Optional<Boolean> answer) {
    List<Item> denials =
        part.items.stream().filter(i -> i.kind() == Kind.DENY && !isInPhrase(part, i)).toList();
    boolean strong =
        part.items.stream()
            .filter(Item::isAbout)
            .anyMatch(i -> i.match().of(ToldLexicon.Kind.ABOUT).stream().anyMatch(s -> !s.weak()));
    Map<String, String> values = new LinkedHashMap<>();
    Set<String> contested = new LinkedHashSet<>();
    for (Item item : part.items) {
      if (item.kind() != Kind.TOLD || isInPhrase(part, item)) {
        continue;
      }
      List<ToldLexicon.Sense> senses = item.match().of(ToldLexicon.Kind.VALUE);
      List<ToldLexicon.Sense> meant = meant(part, item, senses, strong);
      if (meant.isEmpty() && !senses.isEmpty()) {
        meant = meant(part, item, told.shorter(item.match(), plain), strong);
      }
      for (ToldLexicon.Sense sense : meant) {
        String before = values.get(sense.subject());
        if (before == null || before.equals("yes") && isYes(before, sense)) {
          values.put(sense.subject(), sense.value());
        } else if (!before.equals(sense.value()) && !sense.value().equals("yes")) {
          contested.add(sense.subject());
        }
        markUsed(item, used);
        markAbout(part, sense.subject(), used);
      }
    }
    contested.forEach(values::remove);
    boolean no = !denials.isEmpty() || answer.filter(yes -> !yes).isPresent();
    boolean yesNo = values.entrySet().stream().anyMatch(e -> isYesNo(e.getKey()));
    for (Map.Entry<String, String> value : values.entrySet()) {
      String meant = value.getValue();
      if (no && isYesNo(value.getKey())) {
        if (!meant.equals("yes") || denials.size() > 1 && !allBefore(part, denials)) {
          continue;
        }
        meant = "no";
        denials.forEach(item -> markUsed(item, used));
        part.denied = true;
      } else if (no && !yesNo) {
        continue;
      }
      said.add(new Stated(value.getKey(), meant, List.of(), false));
    }
  }

  private static boolean isYes(String before, ToldLexicon.Sense sense) {
    return before.equals("yes") && !sense.value().equals("no");
  }

  private static boolean allBefore(Part part, List<Item> denials) {
    return denials.stream()
        .allMatch(
            denial ->
                part.items.stream()
                    .filter(i -> i.kind() == Kind.TOLD && i.isFreeValue())
                    .anyMatch(i -> i.from() > denial.from()));
  }

  private boolean isYesNo(String subject) {
    return protocol
        .fact(subject)
        .filter(fact -> fact.kind() == Fact.Kind.CHOICE)
        .map(fact -> fact.values().contains("no"))
        .orElse(false);
  }

  /**
   * Which of the senses are meant: of the subject named nearest before, else behind, else carried.
   */
  private List<ToldLexicon.Sense> meant(
      Part part, Item item, List<ToldLexicon.Sense> senses, boolean strong) {
    Map<ToldLexicon.Sense, Integer> near = new HashMap<>();
    for (ToldLexicon.Sense sense : senses) {
      int distance = distance(part, item, sense.subject(), strong);
      if (distance < Integer.MAX_VALUE) {
        near.put(sense, distance);
      } else if (!sense.bound()) {
        near.put(sense, 10_000);
      } else if (carried.contains(sense.subject()) && namesNothing(part)) {
        near.put(sense, 20_000);
      }
    }
    int nearest = near.values().stream().min(Integer::compare).orElse(0);
    List<ToldLexicon.Sense> meant =
        senses.stream()
            .filter(s -> near.getOrDefault(s, -1) == nearest && near.containsKey(s))
            .distinct()
            .toList();
    boolean several = meant.stream().map(ToldLexicon.Sense::subject).distinct().count() > 1;
    boolean free = meant.stream().noneMatch(ToldLexicon.Sense::bound);
    boolean once =
        meant.stream().map(s -> s.subject() + s.value()).distinct().count() == meant.size();
    return several && !free || !once && several ? List.of() : meant;
  }

  private static boolean namesNothing(Part part) {
    return part.items.stream()
        .filter(Item::isAbout)
        .allMatch(
            i -> i.match().of(ToldLexicon.Kind.ABOUT).stream().allMatch(ToldLexicon.Sense::weak));
  }

  private static int distance(Part part, Item item, String subject, boolean strong) {
    int best = Integer.MAX_VALUE;
    for (Item other : part.items) {
      boolean named =
          other.isAbout()
              && other.match().of(ToldLexicon.Kind.ABOUT).stream()
                  .anyMatch(s -> s.subject().equals(subject) && !(s.weak() && strong));
      if (named) {
        int distance =
            other.from() <= item.from()
                ? item.from() - other.from()
                : 1000 + other.from() - item.from();
        best = Math.min(best, distance);
      }
    }
    return best;
  }

  private static void markAbout(Part part, String subject, Set<Integer> used) {
    part.items.stream()
        .filter(item -> item.match() != null)
        .filter(item -> item.match().senses().stream().anyMatch(s -> s.subject().equals(subject)))
        .forEach(item -> markUsed(item, used));
  }

  private static void markUsed(Item item, Set<Integer> used) {
    for (int at = item.from(); at < item.to(); at++) {
      used.add(at);
    }
  }

  // Numbers

  private void numbers(Part part, List<Stated> said, Set<Integer> used) {
    Set<Integer> beside = covered(part, subjects(part));
    List<Item> numbers =
        part.items.stream()
            .filter(i -> i.kind() == Kind.NUMBER && !beside.contains(i.from()))
            .toList();
    if (numbers.isEmpty()) {
      return;
    }
    if (gestation(part, numbers, said, used)) {
      return;
    }
    List<Item> names =
        part.items.stream().filter(Item::isAbout).filter(i -> !measured(i).isEmpty()).toList();
    boolean ordered = part.items.stream().anyMatch(i -> i.kind() == Kind.ORDER);
    if (names.isEmpty()) {
      Set<String> subjects = new LinkedHashSet<>(carried);
      subjects.removeIf(subject -> !isMeasured(subject));
      String unit = String.valueOf(numbers.get(0).numbers().get(0).unit());
      if (numbers.size() == 1
          && carriesNumber
          && subjects.size() == 1
          && fits(subjects.iterator().next(), unit)) {
        state(subjects.iterator().next(), numbers.get(0), ordered, part, said, used);
      } else if (numbers.size() == 1
          && Set.of("g", "kg", "lb").contains(unit)
          && carried.isEmpty()) {
        state("weight", numbers.get(0), ordered, part, said, used);
      }
      return;
    }
    Map<Item, Item> pairs = pairs(names, numbers);
    pairs.forEach(
        (name, number) -> {
          Set<String> subjects = measured(name);
          subjects.removeIf(
              subject -> !fits(subject, String.valueOf(number.numbers().get(0).unit())));
          if (subjects.size() > 1) {
            // What needs another word beside it is meant where that is said.
            Set<String> facts = new LinkedHashSet<>(subjects);
            facts.removeIf(subject -> protocol.fact(subject).isEmpty());
            subjects.clear();
            subjects.addAll(facts);
          }
          if (subjects.size() == 1) {
            state(subjects.iterator().next(), number, ordered, part, said, used);
          }
        });
  }

  private static Map<Item, Item> pairs(List<Item> names, List<Item> numbers) {
    Map<Item, Item> pairs = new LinkedHashMap<>();
    List<Item> all = new ArrayList<>(names);
    all.addAll(numbers);
    all.sort(Comparator.comparingInt(Item::from));
    if (numbers.size() == 1 && names.size() == 1) {
      pairs.put(names.get(0), numbers.get(0));
    } else if (numbers.size() == 1) {
      // The last that is named before the number, else the first behind it.
      Item number = numbers.get(0);
      Item before =
          names.stream()
              .filter(n -> n.from() < number.from())
              .reduce((a, b) -> b)
              .orElse(names.get(0));
      pairs.put(before, number);
    } else if (names.size() == numbers.size()) {
      for (int i = 0; i + 1 < all.size(); i += 2) {
        Item one = all.get(i);
        Item other = all.get(i + 1);
        boolean first = one.kind() == Kind.NUMBER;
        if (first == (other.kind() == Kind.NUMBER) || first != (all.get(0).kind() == Kind.NUMBER)) {
          return Map.of();
        }
        pairs.put(first ? other : one, first ? one : other);
      }
    }
    return pairs;
  }

  private void state(
      String subject,
      Item number,
      boolean ordered,
      Part part,
      List<Stated> said,
      Set<Integer> used) {
    if (number.numbers().stream().anyMatch(n -> isGlued(n.words()))) {
      return;
    }
    Stated stated = new Stated(subject, null, number.numbers(), ordered);
    int before = number.from() - 1;
    boolean rough = protocol.fact(subject).isPresent() && before >= 0 && isRough(plain.get(before));
    stated.sure =
        !rough && number.numbers().stream().allMatch(n -> n.bound() == null || bounded(subject));
    said.add(stated);
    markUsed(number, used);
    markAbout(part, subject, used);
    part.items.stream().filter(i -> i.kind() == Kind.ORDER).forEach(i -> markUsed(i, used));
  }

  private boolean isRough(String word) {
    return told.isListed("roughly", word) || told.isListed("nearby", word);
  }

  private boolean bounded(String subject) {
    return protocol.find(subject).filter(step -> step.measure().bounds()).isPresent();
  }

  // "One two point one" may be two numbers.
  static boolean isGlued(List<String> words) {
    int point = words.indexOf("point");
    return point > 1
        && NumberWords.BELOW_TWENTY.subList(0, 10).contains(words.get(0))
        && words.subList(0, point).stream().allMatch(w -> NumberWords.BELOW_TWENTY.contains(w));
  }

  private boolean fits(String subject, String unit) {
    String own =
        protocol.fact(subject).isPresent()
            ? protocol.fact(subject).get().measure().unit()
            : protocol.step(subject).measure().unit();
    return switch (unit) {
      case "null" -> !own.equals("h") && !own.equals("weeks");
      case "h", "days" -> own.equals("h");
      case "weeks" -> own.equals("h") || own.equals("weeks");
      case "g", "kg", "lb", "oz" -> own.equals("g");
      case "cm", "mm", "in" -> own.equals("cm");
      case "s" -> own.equals("s");
      case "°C", "°F" -> own.equals("°C");
      default -> true;
    };
  }

  private boolean isMeasured(String subject) {
    return protocol
        .fact(subject)
        .map(fact -> fact.measure() != null)
        .orElseGet(() -> protocol.find(subject).filter(step -> step.isMeasured()).isPresent());
  }

  private Set<String> measured(Item item) {
    Set<String> subjects = new LinkedHashSet<>();
    item.match().of(ToldLexicon.Kind.ABOUT).stream()
        .map(ToldLexicon.Sense::subject)
        .filter(this::isMeasured)
        .filter(subject -> !subject.equals("gestation"))
        .forEach(subjects::add);
    return subjects;
  }

  // "Thirty nine plus two", "thirty nine weeks and two days", "term plus three"
  private boolean gestation(Part part, List<Item> numbers, List<Stated> said, Set<Integer> used) {
    boolean named =
        part.items.stream()
                .filter(Item::isAbout)
                .anyMatch(
                    i ->
                        i.match().of(ToldLexicon.Kind.ABOUT).stream()
                            .anyMatch(s -> s.subject().equals("gestation")))
            || carried.contains("gestation") && namesNothing(part);
    boolean other = part.items.stream().filter(Item::isAbout).anyMatch(i -> !measured(i).isEmpty());
    Item first = numbers.get(0);
    SpokenNumber weeks = first.numbers().get(0);
    boolean afterTerm = precededBy(first, "term", "plus");
    double value = ToldItems.value(weeks);
    List<SpokenNumber> all = new ArrayList<>(first.numbers());
    int to = first.to();
    boolean plus = false;
    if (all.size() == 1 && numbers.size() > 1) {
      Item second = numbers.get(1);
      List<String> between = plain.subList(first.to(), second.from());
      plus = between.equals(List.of("plus"));
      if (between.isEmpty() || between.equals(List.of("and")) || plus) {
        all.add(second.numbers().get(0));
        to = second.to();
      }
    }
    if (afterTerm && numbers.size() == 1 && value >= 0 && value <= 14) {
      int days = (int) value;
      all = List.of(number(40 + days / 7, "weeks"), number(days % 7, "days"));
    } else {
      boolean weeksSaid = "weeks".equals(weeks.unit());
      boolean plausible =
          value >= 22 && value <= 44 && weeks.bound() == null && value == Math.floor(value);
      boolean days =
          all.size() == 1
              || ToldItems.value(all.get(1)) >= 0
                  && ToldItems.value(all.get(1)) <= 6
                  && (all.get(1).unit() == null || all.get(1).unit().equals("days"));
      if (!plausible
          || !days
          || other
          || !(weeksSaid || named || plus)
          || all.size() < numbers.stream().mapToInt(n -> n.numbers().size()).sum()) {
        return false;
      }
      all = all.size() == 1 ? List.of(weeks) : List.of(weeks, all.get(1));
    }
    said.add(new Stated("gestation", null, all, false));
    if (first.from() > 0 && isRough(plain.get(first.from() - 1))) {
      said.get(said.size() - 1).sure = false;
    }
    for (int at = first.from(); at < to; at++) {
      used.add(at);
    }
    if (afterTerm) {
      used.add(first.from() - 1);
      used.add(first.from() - 2);
    }
    markAbout(part, "gestation", used);
    return true;
  }

  private static SpokenNumber number(int value, String unit) {
    return new SpokenNumber(null, TypedText.spoken(String.valueOf(value)), unit, null);
  }

  private boolean precededBy(Item item, String... said) {
    int from = item.from() - said.length;
    return from >= 0 && plain.subList(from, item.from()).equals(List.of(said));
  }

  // Accounting

  private void account(Part part, List<Stated> said, Set<Integer> used) {
    Set<String> subjects = new LinkedHashSet<>();
    said.forEach(one -> subjects.add(one.subject));
    boolean measures = said.stream().anyMatch(one -> protocol.fact(one.subject).isEmpty());
    Set<Integer> covered = covered(part, subjects);
    covered.addAll(used);
    if (measures) {
      told.of("measures", plain.subList(part.from(), part.to())).stream()
          .map(at -> at + part.from())
          .forEach(covered::add);
    }
    boolean strange = false;
    boolean denies = false;
    boolean finds = false;
    for (Item item : part.items) {
      boolean carriesNothing =
          item.kind() == Kind.JOINT
              || item.kind() == Kind.EMPTY
              || item.kind() == Kind.ASIDE && !measures
              || item.kind() == Kind.OR && part.denied
              || item.match() != null && vocabulary.isEmpty(words.subList(item.from(), item.to()));
      boolean open = false;
      for (int at = item.from(); at < item.to() && !carriesNothing; at++) {
        boolean little =
            item.kind() != Kind.STRANGE
                && item.kind() != Kind.DENY
                && lay.isListed("function", plain.get(at));
        if (!covered.contains(at) && !told.isListed("of-birth", plain.get(at)) && !little) {
          part.open.add(at);
          open = true;
        }
      }
      strange |= open && STRANGE.contains(item.kind());
      denies |= open && item.kind() == Kind.DENY;
      finds |= open && item.kind() == Kind.FINDING;
    }
    boolean family = subjects.stream().anyMatch(subject -> subject.endsWith("family-history"));
    boolean far = family && told.says("far", plain) && !told.says("family", plain);
    boolean ours = !measures && told.says("ours", plain.subList(part.from(), part.to()));
    boolean open = !part.open.isEmpty();
    if (denies) {
      contested.addAll(subjects);
    }
    part.strange = strange;
    if (strange || finds || ours || part.open.size() > MOST_UNKNOWN || measures && open) {
      said.clear();
    } else if (open || far) {
      said.forEach(one -> one.sure = false);
    }
  }

  // The sentence as a whole

  // "Mum said the temperature is thirty six": of another, or from hearsay.
  private void ofOthers() {
    boolean others = false;
    for (int at = 0; at + 1 < plain.size(); at++) {
      others |= isPerson(plain.get(at)) && told.isListed("speaks", plain.get(at + 1));
    }
    if (others) {
      parts.forEach(part -> part.stated.removeIf(one -> protocol.fact(one.subject).isEmpty()));
    }
  }

  // "Possibly pulse ox is 99 percent on the right hand and 97 on the foot": what nothing parts is
  // doubted together.
  private void together() {
    int from = 0;
    for (int i = 1; i <= parts.size(); i++) {
      if (i < parts.size() && parts.get(i).joined) {
        continue;
      }
      List<Part> chunk = parts.subList(from, i);
      boolean strange = chunk.stream().anyMatch(part -> part.strange || part.isLeft(STRANGE_ALONE));
      boolean unknown =
          chunk.stream()
              .anyMatch(part -> !part.open.isEmpty() || part.isLeft(EnumSet.of(Kind.UNKNOWN)));
      for (Part part : chunk) {
        part.stated.removeIf(one -> strange || unknown && protocol.fact(one.subject).isEmpty());
        part.stated.forEach(one -> one.sure &= !unknown);
      }
      from = i;
    }
  }

  // A lone "no" or "not really", and a correction of which nobody can tell what it corrects.
  private void takenBack() {
    for (int i = 0; i < parts.size(); i++) {
      Part part = parts.get(i);
      boolean alone =
          !part.isCorrection
              && !part.isAnswer
              && part.stated.isEmpty()
              && part.isLeft(DENIES)
              && part.items.stream()
                  .allMatch(
                      item ->
                          DENIES.contains(item.kind()) || CARRIES_NOTHING.contains(item.kind()));
      if (alone || part.isCorrection && !part.settled && !isApology(part)) {
        for (Part before : parts.subList(0, i)) {
          before.stated.forEach(one -> contested.add(one.subject));
        }
      }
    }
    parts.forEach(part -> part.stated.removeIf(one -> contested.contains(one.subject)));
  }

  private void correct() {
    for (int i = 0; i < parts.size(); i++) {
      if (!parts.get(i).isCorrection) {
        continue;
      }
      int before = i - 1;
      while (before >= 0
          && parts.get(before).stated.isEmpty()
          && (parts.get(before).isCorrection || isEmpty(parts.get(before)))) {
        before--;
      }
      int behind = i + 1;
      while (behind < parts.size() && parts.get(behind).stated.isEmpty()) {
        behind++;
      }
      if (before < 0 || parts.get(before).stated.isEmpty()) {
        continue;
      }
      List<Stated> old = parts.get(before).stated;
      List<Stated> anew = behind < parts.size() ? parts.get(behind).stated : List.of();
      boolean put =
          anew.stream().anyMatch(one -> old.stream().anyMatch(o -> o.subject.equals(one.subject)));
      parts.get(i).settled = put;
      if (put) {
        old.removeIf(o -> anew.stream().anyMatch(one -> one.subject.equals(o.subject)));
        if (old.isEmpty()) {
          parts.get(before).open.clear();
          parts.get(before).isReplaced = true;
        }
      } else if (!isApology(parts.get(i))) {
        // What is put right nobody can tell.
        old.forEach(one -> contested.add(one.subject));
        old.clear();
      }
    }
  }

  private boolean isApology(Part correction) {
    return plain.subList(correction.from(), correction.to()).equals(List.of("sorry"))
        || plain.subList(correction.from(), correction.to()).equals(List.of("hang", "on"))
        || plain.subList(correction.from(), correction.to()).equals(List.of("hold", "on"));
  }

  private static boolean isEmpty(Part part) {
    return part.items.stream().allMatch(i -> CARRIES_NOTHING.contains(i.kind()));
  }

  // "No family history of hips, hearts or eyes": all of it, where "or" says so; else who knows.
  private void lists() {
    for (int i = 0; i < parts.size(); i++) {
      if (!parts.get(i).denied || parts.get(i).stated.isEmpty()) {
        continue;
      }
      int to = i + 1;
      boolean or = false;
      while (to < parts.size() && goesOn(parts.get(to))) {
        or |= parts.get(to).items.stream().anyMatch(item -> item.kind() == Kind.OR);
        to++;
      }
      for (int at = i + 1; at < to; at++) {
        Part part = parts.get(at);
        if (or) {
          part.stated.replaceAll(one -> new Stated(one.subject, "no", List.of(), false));
          part.denied = true;
        } else {
          part.stated.clear();
        }
      }
    }
  }

  private boolean goesOn(Part part) {
    return !part.stated.isEmpty()
        && !part.denied
        && part.stated.stream().allMatch(one -> "yes".equals(one.value))
        && plain.subList(part.from(), part.to()).stream()
            .noneMatch(word -> told.isListed("verbs", word));
  }

  private void conflicts() {
    Map<String, List<Stated>> bySubject = new LinkedHashMap<>();
    parts.forEach(
        part ->
            part.stated.forEach(
                one -> bySubject.computeIfAbsent(one.subject, s -> new ArrayList<>()).add(one)));
    bySubject.forEach(
        (subject, all) -> {
          List<Stated> distinct = new ArrayList<>();
          all.stream()
              .filter(one -> distinct.stream().noneMatch(o -> same(o, one)))
              .forEach(distinct::add);
          boolean series =
              protocol.find(subject).filter(step -> step.series()).isPresent()
                  && all.subList(1, all.size()).stream().allMatch(one -> one.ordered);
          if (distinct.size() == 2
              && all.stream().anyMatch(one -> "yes".equals(one.value))
              && all.stream().noneMatch(one -> "no".equals(one.value))) {
            parts.forEach(
                part ->
                    part.stated.removeIf(
                        one -> one.subject.equals(subject) && "yes".equals(one.value)));
          } else if (distinct.size() > 1 && !series || !series && another(subject)) {
            contested.add(subject);
            parts.forEach(part -> part.stated.removeIf(one -> one.subject.equals(subject)));
          } else if (!series) {
            for (Stated again : all.subList(1, all.size())) {
              parts.forEach(part -> part.stated.removeIf(one -> one == again));
            }
          }
        });
  }

  // A number that stands alone behind it may be the right one.
  private boolean another(String subject) {
    boolean stated = false;
    for (Part part : parts) {
      List<Item> numbers = part.items.stream().filter(i -> i.kind() == Kind.NUMBER).toList();
      boolean bare =
          part.stated.isEmpty()
              && !part.isReplaced
              && numbers.size() == 1
              && part.items.stream()
                  .allMatch(i -> i.kind() == Kind.NUMBER || CARRIES_NOTHING.contains(i.kind()));
      if (stated && bare && protocol.find(subject).isPresent()) {
        return mayBe(subject, numbers.get(0));
      }
      stated |= part.stated.stream().anyMatch(one -> one.subject.equals(subject));
    }
    return false;
  }

  private boolean mayBe(String subject, Item number) {
    SpokenNumber said = number.numbers().get(0);
    boolean times = number.to() < plain.size() && plain.get(number.to()).equals("times");
    Measure measure = protocol.step(subject).measure();
    boolean plausible =
        said.unit() != null
            || NumberWords.readings(said.words()).stream()
                .anyMatch(n -> measure.plausible(n) || measure.plausible(1000 * n));
    return !times && plausible && fits(subject, String.valueOf(said.unit()));
  }

  private static boolean same(Stated one, Stated other) {
    return Objects.equals(one.value, other.value) && one.numbers.equals(other.numbers);
  }

  private Told result() {
    List<Told.Said> said = new ArrayList<>();
    List<String> rest = new ArrayList<>();
    List<String> open = new ArrayList<>();
    boolean any = parts.stream().anyMatch(part -> !part.stated.isEmpty());
    if (!any) {
      return new Told(List.of(), words, List.of(), contested);
    }
    for (int i = 0; i < parts.size(); i++) {
      Part part = parts.get(i);
      for (Stated one : part.stated) {
        said.add(new Told.Said(one.subject, one.value, one.numbers, one.sure));
      }
      boolean consumed =
          !part.stated.isEmpty()
              || part.isReplaced
              || part.denied
              || part.isCorrection && part.settled
              || isEmpty(part)
              || isTopic(i);
      if (!part.stated.isEmpty()) {
        part.open.forEach(at -> open.add(words.get(at)));
      }
      if (!consumed) {
        rest.addAll(rest.isEmpty() ? List.of() : List.of(TypedText.BREAK));
        List<String> left = words.subList(part.from(), part.to());
        if (part.joined) {
          rest.addAll(name(i));
        }
        rest.addAll(part.joined ? left.subList(1, left.size()) : left);
      }
    }
    return new Told(said, rest, open, contested);
  }

  // "Breathing at forty four and easy": what is measured is what else is said of.
  private List<String> name(int index) {
    Part before = parts.get(index - 1);
    boolean says = parts.get(index).items.stream().anyMatch(item -> item.kind() == Kind.FINDING);
    return before.stated.size() == 1 && says
        ? before.items.stream()
            .filter(Item::isAbout)
            .findFirst()
            .map(item -> words.subList(item.from(), item.from() + 1))
            .orElse(List.of())
        : List.of();
  }

  // "Blood glucose" before "first one two point one"
  private boolean isTopic(int index) {
    Part part = parts.get(index);
    boolean names =
        part.items.stream()
                .allMatch(
                    i ->
                        i.kind() == Kind.EMPTY
                            || i.kind() == Kind.TOLD
                            || i.kind() == Kind.JOINT
                            || i.kind() == Kind.ORDER)
            && part.items.stream().anyMatch(i -> i.kind() == Kind.TOLD);
    return names
        && parts.stream()
            .flatMap(other -> other.stated.stream())
            .anyMatch(
                one ->
                    part.items.stream()
                        .filter(i -> i.match() != null)
                        .flatMap(i -> i.match().senses().stream())
                        .anyMatch(sense -> sense.subject().equals(one.subject)));
  }
}
