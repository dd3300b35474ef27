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
import tiptoe.language.SecondReading.Told;
import tiptoe.language.TypedText;
import tiptoe.language.tagger.ToldItems.Item;
import tiptoe.language.tagger.ToldItems.Kind;
import tiptoe.language.tagger.ToldPart.Stated;
import tiptoe.protocol.Fact;
import tiptoe.protocol.Protocol;

/**
 * Reads facts about the baby and measurements in a sentence. It is parted where something else is
 * spoken of; each part is told only where every word of it is accounted for, and only offered where
 * one or two are not. Two values of one thing without a plain correction count for nothing.
 */
final class ToldReader {
  private static final int MOST_UNKNOWN = 2;

  /** Behind any that is named before its value. */
  private static final int BEHIND = 1000;

  private static final int UNNAMED = 10_000;
  private static final int NAMED_BEFORE = 20_000;

  /** What may change a statement if nothing accounts for it. */
  private static final Set<Kind> ALTERS =
      EnumSet.of(Kind.UNASSERTED, Kind.CONTEXT, Kind.DENY, Kind.NUMBER);

  private static final Set<Kind> NAMES_NOTHING = EnumSet.of(Kind.EMPTY, Kind.JOINT);

  private final ToldItems vocabulary;
  private final ToldLexicon told;
  private final LayLexicon lay;
  private final Protocol protocol;
  private final List<String> words;
  private final List<String> plain;
  private final ToldNumbers numbers;
  private final Set<String> contested = new TreeSet<>();

  /** What was spoken of before, and whether a number alone may still be of it. */
  private Set<String> carried = Set.of();

  private boolean carriesNumber;

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
    this.numbers = new ToldNumbers(told, protocol, plain);
  }

  Told read() {
    if (words.contains(TypedText.ASKS)
        || new Talk(lay, words).asksOrRemembers()
        || lay.says("supposes", plain)
        || told.says("example", plain)
        || told.says("stranger", words)
        || told.says("stranger", plain)) {
      return Told.NOTHING;
    }
    List<ToldPart> parts =
        new ToldParts(told, new Corrections(lay), words, plain, vocabulary.of(words, plain)).all();
    // "She had her antibiotics, did she"
    if (parts.isEmpty() || told.list("tag").contains(parts.get(parts.size() - 1).of(plain))) {
      return Told.NOTHING;
    }
    for (int i = 0; i < parts.size(); i++) {
      if (!parts.get(i).corrects) {
        read(
            parts.get(i),
            parts.get(i).joined && parts.get(i - 1).asked,
            i + 1 < parts.size() ? parts.get(i + 1) : null);
      }
    }
    return new ToldSentence(told, protocol, numbers, words, plain, parts, contested).told();
  }

  private void read(ToldPart part, boolean joinsQuestion, ToldPart next) {
    // "As for the hips in the family" says nothing of them yet.
    if (begins(said(part), "announces")) {
      remember(part);
      return;
    }
    part.asked = joinsQuestion || isAsked(part);
    Optional<Boolean> answer = part.asked && next != null ? answer(next) : Optional.empty();
    if (part.asked && answer.isEmpty() && !isTag(part)) {
      carried = Set.of();
      return;
    }
    if (answer.isPresent()) {
      next.answers = true;
    }
    values(part, answer);
    numbers.read(part, carried, carriesNumber);
    if (!part.states()) {
      remember(part);
      return;
    }
    Set<String> subjects = new LinkedHashSet<>();
    part.stated().forEach(one -> subjects.add(one.subject()));
    account(part, subjects);
    part.named().forEach(sense -> subjects.add(sense.subject()));
    carried = subjects;
    carriesNumber = true;
  }

  // What is named and has nothing said of it yet: "blood glucose, first one two point one".
  private void remember(ToldPart part) {
    Set<String> named =
        part.named()
            .filter(sense -> !sense.weak())
            .map(ToldLexicon.Sense::subject)
            .collect(Collectors.toCollection(LinkedHashSet::new));
    if (!named.isEmpty()) {
      carried = named;
      carriesNumber = true;
    } else if (!part.consistsOf(NAMES_NOTHING)) {
      carriesNumber = !part.has(Kind.FINDING) && !part.has(Kind.NUMBER);
    }
  }

  // Questions

  // The words of a part behind what joins or opens it.
  private List<String> said(ToldPart part) {
    int from = part.from();
    while (from < part.to()
        && (vocabulary.isJoint(plain.get(from)) || told.isListed("opens", plain.get(from)))) {
      from++;
    }
    return plain.subList(from, part.to());
  }

  private boolean isAsked(ToldPart part) {
    List<String> said = said(part);
    boolean inverted =
        said.size() > 2
            && told.isListed("auxiliary", said.get(0))
            && told.isListed("subject", said.get(1));
    return inverted || begins(said, "asks");
  }

  private boolean begins(List<String> said, String list) {
    return told.list(list).stream()
        .filter(term -> term.size() <= said.size())
        .anyMatch(term -> said.subList(0, term.size()).equals(term));
  }

  // "Your first baby, isn't it, yes"
  private static boolean isTag(ToldPart part) {
    return part.items.size() <= 2 && !part.has(Kind.TOLD);
  }

  private Optional<Boolean> answer(ToldPart part) {
    List<String> said = part.of(plain);
    if (part.corrects && said.equals(List.of("no"))) {
      return Optional.of(false);
    }
    if (said.size() > 2) {
      return Optional.empty();
    }
    return told.list("deny").contains(said)
        ? Optional.of(false)
        : told.list("affirm").contains(said) ? Optional.of(true) : Optional.empty();
  }

  // Values

  private void values(ToldPart part, Optional<Boolean> answer) {
    List<Item> denials =
        part.all(Kind.DENY).stream().filter(item -> !isInPhrase(part, item)).toList();
    boolean denied = !denials.isEmpty() || answer.filter(yes -> !yes).isPresent();
    Map<String, String> values = values(part);
    boolean yesNo = values.keySet().stream().anyMatch(this::isYesNo);
    values.forEach(
        (subject, value) -> {
          if (!denied || !isYesNo(subject)) {
            if (!denied || yesNo) {
              part.state(new Stated(subject, value, List.of(), false, true));
            }
          } else if (value.equals("yes") && (denials.size() < 2 || allBefore(part, denials))) {
            part.state(new Stated(subject, "no", List.of(), false, true));
            denials.forEach(part::account);
            part.denied = true;
          }
        });
  }

  // What each subject is said to be, where that is one thing; "yes" gives way to what tells more.
  private Map<String, String> values(ToldPart part) {
    boolean strong = !part.namesNothing();
    Map<String, String> values = new LinkedHashMap<>();
    Set<String> several = new LinkedHashSet<>();
    for (Item item : part.all(Kind.TOLD)) {
      if (isInPhrase(part, item)) {
        continue;
      }
      List<ToldLexicon.Sense> senses = item.match().of(ToldLexicon.Kind.VALUE);
      List<ToldLexicon.Sense> meant = meant(part, item, senses, strong);
      if (meant.isEmpty() && !senses.isEmpty()) {
        meant = meant(part, item, told.shorter(item.match(), plain), strong);
      }
      for (ToldLexicon.Sense sense : meant) {
        String before = values.get(sense.subject());
        if (before == null || before.equals("yes") && !sense.value().equals("no")) {
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
    return protocol
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
      } else if (carried.contains(sense.subject()) && part.namesNothing()) {
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
    return several && !(free && once) ? List.of() : meant;
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

  // Accounting

  private void account(ToldPart part, Set<String> subjects) {
    List<String> said = part.of(plain);
    boolean measures = subjects.stream().anyMatch(subject -> protocol.fact(subject).isEmpty());
    told.beside(subjects, said).forEach(at -> part.account(part.from() + at, part.from() + at + 1));
    if (measures) {
      told.of("measures", said).forEach(at -> part.account(part.from() + at, part.from() + at + 1));
    }
    boolean finds = false;
    for (Item item : part.items) {
      if (carriesNothing(part, item, measures) || !leavesOpen(part, item)) {
        continue;
      }
      part.altered |= ALTERS.contains(item.kind());
      finds |= item.kind() == Kind.FINDING;
      if (item.kind() == Kind.DENY) {
        contested.addAll(subjects);
      }
    }
    boolean family = subjects.stream().anyMatch(subject -> subject.endsWith("family-history"));
    boolean far = family && told.says("far", plain) && !told.says("family", plain);
    boolean ours = !measures && told.says("ours", said);
    boolean open = !part.open.isEmpty();
    if (part.altered || finds || ours || part.open.size() > MOST_UNKNOWN || measures && open) {
      part.drop(one -> true);
    } else if (open || far) {
      part.doubt();
    }
  }

  private boolean carriesNothing(ToldPart part, Item item, boolean measures) {
    return switch (item.kind()) {
      case JOINT, EMPTY -> true;
      case ASIDE -> !measures;
      case OR -> part.denied;
      default -> item.match() != null && vocabulary.isEmpty(words.subList(item.from(), item.to()));
    };
  }

  // Adds the words of an item that nothing accounts for to those of its part.
  private boolean leavesOpen(ToldPart part, Item item) {
    boolean little = item.kind() != Kind.UNASSERTED && item.kind() != Kind.DENY;
    boolean open = false;
    for (int at = item.from(); at < item.to(); at++) {
      String word = plain.get(at);
      boolean accounted =
          part.accountsFor(at)
              || told.isListed("of-birth", word)
              || little && lay.isListed("function", word);
      open |= !accounted && part.open.add(at);
    }
    return open;
  }
}
