package tiptoe.language.tagger;

import java.util.EnumSet;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import tiptoe.language.tagger.ToldItems.Item;
import tiptoe.language.tagger.ToldItems.Kind;
import tiptoe.language.tagger.ToldPart.Stated;
import tiptoe.protocol.Fact;

/** Says which values the words of a part state, and of which fact each is meant. */
final class ToldValues {
  /** Behind any that is named before its value. */
  private static final int BEHIND = 1000;

  private static final String NOT_YET = "not-yet";
  private static final String DUE = "due";
  private static final int UNNAMED = 10_000;
  private static final int NAMED_BEFORE = 20_000;
  private static final Set<Kind> THINGS =
      EnumSet.of(Kind.UNKNOWN, Kind.FINDING, Kind.ASIDE, Kind.CONTEXT);

  private final ToldWords sentence;
  private final ToldLexicon told;
  private final List<String> words;
  private final List<String> plain;

  /** What was spoken of before. */
  private Set<String> carried = Set.of();

  ToldValues(ToldWords sentence) {
    this.sentence = sentence;
    this.told = sentence.told();
    this.words = sentence.words();
    this.plain = sentence.plain();
  }

  /**
   * Lets a part state the values that it says.
   *
   * @param answer what is said to its question
   * @param carried what was spoken of before
   * @return what it speaks of that nothing else may read
   */
  Set<String> read(ToldPart part, Optional<Boolean> answer, Set<String> carried) {
    this.carried = carried;
    Set<String> unread = new TreeSet<>();
    List<Item> denials =
        part.items.stream()
            .filter(item -> item.kind() == Kind.DENY || isOnlyDenial(part, item))
            .filter(item -> !isInPhrase(part, item))
            .toList();
    // "Nothing in the family for hips, hearts or eyes": it denies what is listed behind it too.
    boolean nothing =
        told.says("nothing-in", part.of(plain)) || told.begins("nothing-for", part.of(plain));
    Optional<String> owed = owed(part);
    if (owed.isPresent()) {
      part.state(new Stated(owed.get(), DUE, List.of(), false, true));
      part.all(Kind.TOLD).forEach(part::account);
      part.items.stream().filter(this::denies).forEach(part::account);
      told.of("still-to", part.of(plain))
          .forEach(at -> part.account(part.from() + at, part.from() + at + 1));
      return unread;
    }
    boolean denied = nothing || !denials.isEmpty() || answer.filter(yes -> !yes).isPresent();
    Map<String, String> values = values(part);
    boolean yesNo = values.keySet().stream().anyMatch(this::isYesNo);
    values.forEach(
        (subject, value) -> {
          if (isOnlyTried(part, subject)) {
            unread.add(subject);
          } else if (denials.size() == 1 && isNotYetTold(part, subject, value)) {
            part.state(new Stated(subject, NOT_YET, List.of(), false, true));
            denials.forEach(part::account);
          } else if (!denied || !isYesNo(subject)) {
            if (!denied || yesNo) {
              part.state(new Stated(subject, value, List.of(), false, true));
            } else {
              unread.add(subject);
            }
          } else if (denials.isEmpty() && value.equals("no")) {
            // "No beta blockers, no"
            part.state(new Stated(subject, value, List.of(), false, true));
            part.denied |= nothing;
          } else if (isPlainYes(subject, value)
              && (denials.size() < 2 || allBefore(part, denials))) {
            part.state(new Stated(subject, "no", List.of(), false, true));
            denials.forEach(part::account);
            part.denied = true;
          }
        });
    return unread;
  }

  // "Hasn't had his vitamin k yet", "still to have his hearing test", "needs a hip scan": the one
  // thing that is named, where it can be due.
  private Optional<String> owed(ToldPart part) {
    List<String> said = part.of(plain);
    long denials = part.items.stream().filter(this::denies).count();
    boolean notYet =
        denials == 1 && told.says("yet", said) && part.items.stream().anyMatch(this::does);
    boolean stillTo = denials == 0 && told.says("still-to", said);
    Set<String> named =
        part.items.stream()
            .flatMap(Item::senses)
            .filter(sense -> !sense.weak() && !sense.bound())
            .map(ToldLexicon.Sense::subject)
            .collect(Collectors.toSet());
    return (notYet || stillTo) && named.size() == 1
        ? named.stream().filter(this::canBeDue).findFirst()
        : Optional.empty();
  }

  // "I've not told them the result yet"
  private boolean isNotYetTold(ToldPart part, String subject, String value) {
    return subject.startsWith("told-") && value.equals("yes") && told.says("yet", part.of(plain));
  }

  private boolean denies(Item item) {
    return item.kind() == Kind.DENY
        || (item.kind() == Kind.TOLD || item.kind() == Kind.UNASSERTED)
            && sentence.isListed("deny", item.from());
  }

  // "Given", "had", "done": what may be said of what is named, whatever that is.
  private boolean does(Item item) {
    return item.senses().anyMatch(sense -> sense.kind() == ToldLexicon.Kind.VALUE)
        || item.kind() == Kind.UNASSERTED && denies(item) && item.length() > 1
        || item.kind() == Kind.EMPTY && told.isListed("verbs", sentence.of(item));
  }

  private boolean canBeDue(String subject) {
    return sentence.fact(subject).filter(fact -> fact.values().contains(DUE)).isPresent();
  }

  // "Eye history negative": no value of anything that is named.
  private boolean isOnlyDenial(ToldPart part, Item item) {
    return item.kind() == Kind.TOLD
        && sentence.isDenial(item)
        && meant(part, item, item.match().of(ToldLexicon.Kind.VALUE), !part.namesNothing())
            .isEmpty();
  }

  // "Failed forceps", "booked for a section"
  private boolean isOnlyTried(ToldPart part, String subject) {
    return subject.equals("birth-mode") && told.says("tried", part.of(plain));
  }

  // "Yes", or what the name of it alone says.
  private boolean isPlainYes(String subject, String value) {
    return value.equals("yes")
        || value.equals("confirmed")
            && !sentence.fact(subject).orElseThrow().values().contains("yes");
  }

  // What each subject is said to be, where that is one thing; "yes" gives way to what tells more.
  private Map<String, String> values(ToldPart part) {
    boolean strong = !part.namesNothing();
    Map<String, String> values = new LinkedHashMap<>();
    Set<String> several = new LinkedHashSet<>();
    for (Item item : part.all(Kind.TOLD)) {
      if (isInPhrase(part, item) || isPreposition(part, item) || isVisitor(item)) {
        continue;
      }
      if (isOrdinal(part, item)) {
        part.account(item);
        continue;
      }
      List<ToldLexicon.Sense> senses =
          isArticle(part, item)
              ? told.shorter(item.match(), plain)
              : item.match().of(ToldLexicon.Kind.VALUE).stream()
                  .filter(sense -> !sense.alone() || isAlone(part, item))
                  .toList();
      List<ToldLexicon.Sense> meant = meant(part, item, senses, strong);
      if (meant.isEmpty() && !senses.isEmpty()) {
        meant = meant(part, item, told.shorter(item.match(), plain), strong);
      }
      for (ToldLexicon.Sense sense : meant) {
        String before = values.get(sense.subject());
        if (before == null || tellsMore(before, sense.value())) {
          values.put(sense.subject(), sense.value());
        } else if (!before.equals(sense.value()) && !sense.value().equals("yes")) {
          several.add(sense.subject());
        }
        part.account(item);
        part.account(sense.subject());
      }
    }
    values.keySet().removeAll(several);
    return values;
  }

  // "The wee girl with the machine"
  private boolean isVisitor(Item item) {
    return sentence.isBehind("definite", item.from(), 0)
        && sentence.isListed("behind-visitor", item.to())
        && item.senses().anyMatch(sense -> sense.subject().equals("sex"));
  }

  // "Her first penicillin", "looking at her first": no child of hers.
  private boolean isOrdinal(ToldPart part, Item item) {
    boolean ofChild = item.to() == plain.size() || sentence.isListed("first-of", item.to());
    boolean thing =
        !ofChild
            && part.items.stream()
                .filter(other -> other.from() == item.to())
                .anyMatch(other -> THINGS.contains(other.kind()) || other.kind() == Kind.TOLD);
    return sentence.isListed("ordinal", item.to() - 1)
        && item.length() == 2
        && (thing || sentence.isBehind("does-first", item.from(), part.from()));
  }

  // "Diabetic, gestational", "hearing test done and he passed"
  private static boolean tellsMore(String before, String value) {
    return before.equals("yes") && !value.equals("no")
        || before.equals("done") && (value.equals("passed") || value.equals("requested"));
  }

  // "Vitamin k's in", but "hepatitis b in mum"
  private boolean isPreposition(ToldPart part, Item item) {
    boolean in = item.length() == 1 && sentence.isListed("said-in", item.from());
    boolean said =
        sentence.isBehind("verbs", item.from(), part.from())
            || sentence.isBehind("of-many", item.from(), part.from())
            || sentence.isBehind("referral", item.from(), part.from())
            || item.from() > part.from() && words.get(item.from() - 1).endsWith("'s");
    return in
        && (!said
            || part.items.stream()
                .filter(other -> other.from() == item.to())
                .anyMatch(
                    other ->
                        other.kind() != Kind.EMPTY
                            || sentence.isListed("determiner", other.from())));
  }

  // "A negative swab" is of no blood group.
  private boolean isArticle(ToldPart part, Item item) {
    boolean had =
        sentence.isBehind("verbs", item.from(), part.from())
            && !sentence.isListed("not-had", item.from() - 1);
    return item.length() == 2
        && sentence.isListed("indefinite", item.from())
        && !told.shorter(item.match(), plain).isEmpty()
        && part.items.stream()
            .filter(other -> other.from() == item.to())
            .anyMatch(
                other ->
                    THINGS.contains(other.kind())
                        || sentence.isListed("specimen", other.from())
                        || had && other.kind() == Kind.TOLD);
  }

  private static boolean isAlone(ToldPart part, Item item) {
    return part.items.stream()
        .allMatch(other -> other == item || ToldTopic.NAMES_NOTHING.contains(other.kind()));
  }

  // "Nothing green" says nothing of its own beside vomiting.
  private boolean isInPhrase(ToldPart part, Item item) {
    return told.phrases(part.subjects(), part.of(plain)).stream()
        .anyMatch(
            phrase ->
                phrase.from() + part.from() <= item.from()
                    && item.to() <= phrase.to() + part.from()
                    && phrase.to() - phrase.from() > item.length());
  }

  private static boolean allBefore(ToldPart part, List<Item> denials) {
    int lastValue =
        part.all(Kind.TOLD).stream()
            .filter(Item::isFreeValue)
            .mapToInt(Item::from)
            .max()
            .orElse(-1);
    return denials.stream().allMatch(denial -> denial.from() < lastValue);
  }

  private boolean isYesNo(String subject) {
    return sentence
        .fact(subject)
        .filter(fact -> fact.kind() == Fact.Kind.CHOICE)
        .filter(fact -> fact.values().contains("no"))
        .isPresent();
  }

  /**
   * Which of the senses are meant: of the subject named nearest before, else behind, else carried.
   */
  private List<ToldLexicon.Sense> meant(
      ToldPart part, Item item, List<ToldLexicon.Sense> senses, boolean strong) {
    Map<ToldLexicon.Sense, Integer> near = new HashMap<>();
    for (ToldLexicon.Sense sense : senses) {
      int distance = distance(part, item, sense.subject(), strong);
      if (distance < Integer.MAX_VALUE) {
        near.put(sense, distance);
      } else if (!sense.bound()) {
        near.put(sense, UNNAMED);
      } else if (carried.contains(sense.subject())
          && part.namesNothingBut(item)
          && !hasObject(item)) {
        near.put(sense, NAMED_BEFORE);
      }
    }
    int nearest = near.values().stream().min(Integer::compare).orElse(0);
    List<ToldLexicon.Sense> meant =
        senses.stream()
            .distinct()
            .filter(sense -> near.getOrDefault(sense, Integer.MAX_VALUE) == nearest)
            .toList();
    boolean several = meant.stream().map(ToldLexicon.Sense::subject).distinct().count() > 1;
    boolean free = meant.stream().noneMatch(ToldLexicon.Sense::bound);
    boolean once =
        meant.stream().map(sense -> sense.subject() + sense.value()).distinct().count()
            == meant.size();
    boolean consent =
        meant.stream().allMatch(sense -> ToldElsewhere.CONSENT.contains(sense.subject()));
    return several && !((free || consent) && once) ? List.of() : meant;
  }

  // "We've had a good chat": something else was had than what was spoken of before.
  private boolean hasObject(Item item) {
    return item.length() == 1 && sentence.isListed("object-article", item.to());
  }

  private static int distance(ToldPart part, Item item, String subject, boolean strong) {
    return part.items.stream()
        .filter(
            other ->
                other.abouts().anyMatch(s -> s.subject().equals(subject) && !(s.weak() && strong)))
        .mapToInt(other -> item.from() - other.from())
        .map(before -> before >= 0 ? before : BEHIND - before)
        .min()
        .orElse(Integer.MAX_VALUE);
  }

  /** "Diabetes, none" */
  void denyNamed(ToldPart part) {
    Set<String> named =
        part.named()
            .filter(sense -> !sense.weak())
            .map(ToldLexicon.Sense::subject)
            .filter(this::isYesNo)
            .collect(Collectors.toSet());
    if (named.size() == 1) {
      named.forEach(subject -> part.state(new Stated(subject, "no", List.of(), false, true)));
      named.forEach(part::account);
    }
  }
}
