package tiptoe.language.tagger;

import java.util.ArrayList;
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
import java.util.stream.IntStream;
import tiptoe.language.SecondReading.Told;
import tiptoe.language.TypedText;
import tiptoe.language.tagger.ToldItems.Item;
import tiptoe.language.tagger.ToldItems.Kind;
import tiptoe.language.tagger.ToldPart.Stated;
import tiptoe.protocol.Fact;
import tiptoe.protocol.Protocol;
import tiptoe.protocol.Step;

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

  private static final Set<String> CONSENT = Set.of("consent", "consent-by", "consent-form");
  private static final Set<Kind> LABEL =
      EnumSet.of(Kind.TOLD, Kind.EMPTY, Kind.CONTEXT, Kind.JOINT, Kind.ASIDE);
  private static final Set<Kind> NAMES_NOTHING = EnumSet.of(Kind.EMPTY, Kind.JOINT);

  private final ToldItems vocabulary;
  private final ToldLexicon told;
  private final LayLexicon lay;
  private final Protocol protocol;
  private final List<String> words;
  private final List<String> plain;
  private final ToldNumbers numbers;
  private final Set<String> contested = new TreeSet<>();

  /**
   * Whether "breech" is told of a time before the birth; "head first" may still be of the birth.
   */
  private boolean breechBefore;

  /** What is told of another here, so that nothing else may read it as the baby's. */
  private final Set<String> unread = new TreeSet<>();

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
        || told.says("example", plain)) {
      return Told.NOTHING;
    }
    if (isOfStranger(words) || isOfStranger(plain)) {
      return new Told(List.of(), words, List.of(), measuredSteps());
    }
    Optional<ToldApgars.Row> apgars = new ToldApgars(words).row().filter(this::standsAlone);
    if (apgars.isPresent()) {
      return withApgars(apgars.get());
    }
    List<ToldPart> parts =
        new ToldParts(told, new Corrections(lay), words, plain, vocabulary.of(words, plain)).all();
    // "She had her antibiotics, did she"
    if (parts.isEmpty() || told.list("tag").contains(parts.get(parts.size() - 1).of(plain))) {
      return Told.NOTHING;
    }
    breechBefore = wasBreechBefore();
    if (consentsToAnother()) {
      contested.addAll(CONSENT);
    }
    for (int i = 0; i < parts.size(); i++) {
      if (!parts.get(i).corrects) {
        read(parts, i);
      }
    }
    new ToldLists(told, protocol, plain, parts).share();
    Told all = new ToldSentence(told, protocol, numbers, words, plain, parts, contested).told();
    all.said().forEach(one -> unread.remove(one.subject()));
    unread.addAll(all.contested());
    return new Told(all.said(), all.rest(), all.open(), unread);
  }

  // "His brother had", "make sure", "maybe" before it: not known to be of this baby.
  private boolean standsAlone(ToldApgars.Row row) {
    Breaks breaks = new Breaks(words);
    int from = breaks.from(row.from());
    int to = row.to() < words.size() ? breaks.to(row.to()) : row.to();
    return !told.says("near", plain.subList(from, to))
        && vocabulary.of(words, plain).stream()
            .filter(item -> from <= item.from() && item.to() <= to)
            .filter(item -> item.to() <= row.from() || row.to() <= item.from())
            .allMatch(item -> NAMES_NOTHING.contains(item.kind()));
  }

  // The row by itself, and what is told around it; a correction beside it may be of a score.
  private Told withApgars(ToldApgars.Row row) {
    List<String> around = new ArrayList<>(words.subList(0, row.from()));
    if (row.from() > 0 && row.to() < words.size()) {
      around.add(TypedText.BREAK);
    }
    around.addAll(words.subList(row.to(), words.size()));
    List<String> said = around.stream().map(ToldLexicon::plain).toList();
    boolean corrected =
        new ToldParts(told, new Corrections(lay), around, said, vocabulary.of(around, said))
            .all().stream().anyMatch(part -> part.corrects);
    Told rest = new ToldReader(told, vocabulary, lay, protocol, around).read();
    List<Told.Said> all = new ArrayList<>(rest.said());
    row.scores()
        .forEach((step, score) -> all.add(new Told.Said(step, null, List.of(score), !corrected)));
    return new Told(all, rest.rest(), rest.open(), rest.contested());
  }

  // "That baby weighed four kilos", "theatre want someone for a section"; but "the other twin was
  // breech" is told of this one.
  private boolean isOfStranger(List<String> said) {
    List<ToldLexicon.Match> matches = told.matches(plain);
    return told.list("stranger").stream()
        .anyMatch(
            term -> {
              for (int at = 0; at + term.size() <= said.size(); at++) {
                int from = at;
                if (said.get(at).equals(term.get(0))
                    && said.subList(at, at + term.size()).equals(term)
                    && matches.stream()
                        .noneMatch(
                            match ->
                                match.from() <= from
                                    && from + term.size() <= match.to()
                                    && match.to() - match.from() > term.size())) {
                  return true;
                }
              }
              return false;
            });
  }

  private Set<String> measuredSteps() {
    return protocol.steps().filter(Step::isMeasured).map(Step::id).collect(Collectors.toSet());
  }

  private void read(List<ToldPart> parts, int index) {
    ToldPart part = parts.get(index);
    ToldPart next = index + 1 < parts.size() ? parts.get(index + 1) : null;
    // "As for the hips in the family" says nothing of them yet.
    if (begins(said(part), "announces")) {
      remember(part);
      return;
    }
    part.asked = part.joined && parts.get(index - 1).asked || isAsked(part);
    Optional<Boolean> answer = part.asked && next != null ? answer(next) : Optional.empty();
    if (part.asked && answer.isEmpty() && !isTag(part)) {
      carried = Set.of();
      return;
    }
    boolean none = next != null && !part.asked && isLabel(part) && isNone(next);
    if (none) {
      answer = Optional.of(false);
      parts.subList(index + 1, parts.size()).stream()
          .takeWhile(this::isNone)
          .forEach(denial -> denial.answers = true);
    } else if (answer.isPresent()) {
      next.answers = true;
    }
    values(part, answer);
    if (none && !part.states()) {
      denyNamed(part);
    }
    if (none && next.of(plain).equals(List.of("no"))) {
      // "Chorioamnionitis, no" may take it back.
      part.doubt();
    }
    unread.addAll(numbers.read(part, carried, carriesNumber));
    dropOthers(part);
    if (breechBefore) {
      part.drop(one -> one.subject().equals("presentation") && "breech".equals(one.value()));
      unread.add("presentation");
    }
    if (part.joined && parts.get(index - 1).leaves(Kind.DENY)) {
      // "No one in the family with bad hips"
      part.stated().stream()
          .filter(one -> "yes".equals(one.value()))
          .forEach(one -> contested.add(one.subject()));
    }
    if (!part.states()) {
      remember(part);
      return;
    }
    Set<String> subjects = new LinkedHashSet<>();
    part.stated().forEach(one -> subjects.add(one.subject()));
    account(part, subjects);
    part.named().forEach(sense -> subjects.add(sense.subject()));
    if (CONSENT.containsAll(subjects)) {
      // "Consent, verbal, given by mum"
      subjects.addAll(CONSENT);
    }
    carried = subjects;
    carriesNumber = true;
  }

  // "Mum's pulse is ninety", "dad was a twin"
  private void dropOthers(ToldPart part) {
    ToldOwner owners = new ToldOwner(told, words, plain);
    owners
        .of(part)
        .ifPresent(
            owner -> {
              part.stated().stream()
                  .filter(one -> !owners.mayBe(owner, one))
                  .forEach(one -> unread.add(one.subject()));
              if (unread.contains("birth-weight")) {
                unread.add("weight");
              }
              part.drop(one -> !owners.mayBe(owner, one));
            });
  }

  // "Consent for the photo was given"
  private boolean consentsToAnother() {
    for (int at = 0; at + 2 < plain.size(); at++) {
      if (told.isListed("consent", plain.get(at))
          && Set.of("for", "to").contains(plain.get(at + 1))) {
        int to = at + 2;
        while (to + 1 < plain.size() && told.isListed("determiner", plain.get(to))) {
          to++;
        }
        if (!told.isListed("examining", plain.get(to))) {
          return true;
        }
      }
    }
    return false;
  }

  // What is named and has nothing said of it yet: "blood glucose, first one two point one".
  private void remember(ToldPart part) {
    Set<String> named =
        part.named()
            .filter(sense -> !sense.weak())
            .map(ToldLexicon.Sense::subject)
            .collect(Collectors.toCollection(LinkedHashSet::new));
    if (named.isEmpty() && part.has(Kind.FINDING)) {
      // "Heart is regular, one thirty two a minute"
      told.matches(part.of(plain)).stream()
          .flatMap(match -> match.of(ToldLexicon.Kind.ABOUT).stream())
          .map(ToldLexicon.Sense::subject)
          .filter(told::isMeasured)
          .forEach(named::add);
      carried = named;
      carriesNumber = false;
      return;
    }
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
    // "Had his vitamin k" is no question, "had he" is.
    boolean inverted =
        said.size() > 2
            && told.isListed("auxiliary", said.get(0))
            && told.isListed("subject", said.get(1))
            && !(said.get(0).equals("had") && told.isListed("determiner", said.get(1)));
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

  // "Vomiting" in "vomiting, none at all": named, and nothing said of it yet.
  private boolean isLabel(ToldPart part) {
    return part.has(Kind.TOLD)
        && part.consistsOf(LABEL)
        && part.of(plain).stream()
            .noneMatch(word -> told.isListed("verbs", word) || told.isListed("pronoun", word));
  }

  // "Diabetes, none"
  private void denyNamed(ToldPart part) {
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

  private boolean isNone(ToldPart part) {
    return !part.corrects
        && part.items.stream().anyMatch(this::denies)
        && part.items.stream()
            .allMatch(item -> denies(item) || ToldPart.CARRY_NOTHING.contains(item.kind()));
  }

  private boolean denies(Item item) {
    return item.kind() == Kind.DENY
        || item.kind() == Kind.TOLD
            && told.list("deny").contains(plain.subList(item.from(), item.to()));
  }

  // Values

  private void values(ToldPart part, Optional<Boolean> answer) {
    List<Item> denials =
        part.items.stream()
            .filter(item -> item.kind() == Kind.DENY || isOnlyDenial(part, item))
            .filter(item -> !isInPhrase(part, item))
            .toList();
    boolean denied = !denials.isEmpty() || answer.filter(yes -> !yes).isPresent();
    Map<String, String> values = values(part);
    boolean yesNo = values.keySet().stream().anyMatch(this::isYesNo);
    values.forEach(
        (subject, value) -> {
          if (isOnlyTried(part, subject)) {
            unread.add(subject);
          } else if (!denied || !isYesNo(subject)) {
            if (!denied || yesNo) {
              part.state(new Stated(subject, value, List.of(), false, true));
            } else {
              unread.add(subject);
            }
          } else if (denials.isEmpty() && value.equals("no")) {
            // "No beta blockers, no"
            part.state(new Stated(subject, value, List.of(), false, true));
          } else if (isPlainYes(subject, value)
              && (denials.size() < 2 || allBefore(part, denials))) {
            part.state(new Stated(subject, "no", List.of(), false, true));
            denials.forEach(part::account);
            part.denied = true;
          }
        });
  }

  // "Eye history negative": no value of anything that is named.
  private boolean isOnlyDenial(ToldPart part, Item item) {
    return item.kind() == Kind.TOLD
        && denies(item)
        && meant(part, item, item.match().of(ToldLexicon.Kind.VALUE), !part.namesNothing())
            .isEmpty();
  }

  // "Failed forceps", "booked for a section"
  private boolean isOnlyTried(ToldPart part, String subject) {
    return subject.equals("birth-mode") && told.says("tried", part.of(plain));
  }

  // "Was breech but turned", "breech at thirty weeks": not how it lay at the birth.
  private boolean wasBreechBefore() {
    List<String> said = TypedText.plain(plain);
    int breech = said.indexOf("breech");
    return breech >= 0
        && (told.says("turned", said)
            || IntStream.range(breech + 1, Math.min(breech + 4, said.size() - 1))
                .anyMatch(
                    at ->
                        told.isListed("then", said.get(at))
                            && Set.of("twenty", "thirty", "the").contains(said.get(at + 1))
                            && (said.contains("weeks") || said.contains("scan"))));
  }

  // "Yes", or what the name of it alone says.
  private boolean isPlainYes(String subject, String value) {
    return value.equals("yes")
        || value.equals("confirmed")
            && !protocol.fact(subject).orElseThrow().values().contains("yes");
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
    return item.from() > 0
        && item.to() < plain.size()
        && plain.get(item.from() - 1).equals("the")
        && Set.of("with", "from", "who").contains(plain.get(item.to()))
        && item.match().senses().stream().anyMatch(sense -> sense.subject().equals("sex"));
  }

  // "Diabetic, gestational", "hearing test done and he passed"
  private static boolean tellsMore(String before, String value) {
    return before.equals("yes") && !value.equals("no")
        || before.equals("done") && value.equals("passed");
  }

  // "Vitamin k's in", but "hepatitis b in mum"
  private boolean isPreposition(ToldPart part, Item item) {
    boolean in = item.length() == 1 && plain.get(item.from()).equals("in");
    boolean said =
        item.from() > part.from()
            && (told.isListed("verbs", plain.get(item.from() - 1))
                || words.get(item.from() - 1).endsWith("'s")
                || words.get(item.from() - 1).equals("are")
                || told.isListed("referral", plain.get(item.from() - 1)));
    return in
        && (!said
            || part.items.stream()
                .filter(other -> other.from() == item.to())
                .anyMatch(
                    other ->
                        other.kind() != Kind.EMPTY
                            || told.isListed("determiner", plain.get(other.from()))));
  }

  // "A negative swab" is of no blood group.
  private boolean isArticle(ToldPart part, Item item) {
    String before = item.from() > part.from() ? plain.get(item.from() - 1) : "";
    boolean had = told.isListed("verbs", before) && !Set.of("is", "was").contains(before);
    return item.length() == 2
        && plain.get(item.from()).equals("a")
        && part.items.stream()
            .filter(other -> other.from() == item.to())
            .anyMatch(
                other ->
                    EnumSet.of(Kind.UNKNOWN, Kind.FINDING, Kind.ASIDE, Kind.CONTEXT)
                            .contains(other.kind())
                        || told.isListed("specimen", plain.get(other.from()))
                        || had && other.kind() == Kind.TOLD);
  }

  private static boolean isAlone(ToldPart part, Item item) {
    return part.items.stream().allMatch(other -> other == item || other.kind() == Kind.EMPTY);
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
    boolean consent = meant.stream().allMatch(sense -> CONSENT.contains(sense.subject()));
    return several && !((free || consent) && once) ? List.of() : meant;
  }

  // "We've had a good chat": something else was had than what was spoken of before.
  private boolean hasObject(Item item) {
    return item.length() == 1
        && item.to() < plain.size()
        && Set.of("a", "an", "some").contains(plain.get(item.to()));
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
    // "Told the family about the hips"
    if (family && subjects.stream().anyMatch(subject -> subject.startsWith("told-"))) {
      part.drop(one -> one.subject().endsWith("family-history"));
    }
    boolean far = family && told.says("far", plain) && !told.says("family", plain);
    boolean ours = !measures && isOurs(part, subjects);
    boolean open = !part.open.isEmpty();
    if (part.altered || finds || ours || part.open.size() > MOST_UNKNOWN || measures && open) {
      part.drop(one -> true);
    } else if (open || far) {
      part.doubt();
    }
  }

  // Of whoever speaks, and not of the baby; but "given me verbal consent", "we've got a girl".
  private boolean isOurs(ToldPart part, Set<String> subjects) {
    return !subjects.stream().allMatch(this::isHandedOn)
        && part.items.stream()
            .filter(item -> item.length() == 1 || item.kind() != Kind.TOLD && !isEmpty(item))
            .filter(item -> !words.get(item.from()).matches("we'(ve|re)"))
            .anyMatch(item -> told.says("ours", plain.subList(item.from(), item.to())));
  }

  // "Our referral", "given me verbal consent" are of those who speak; "mum told me" is not.
  private boolean isHandedOn(String subject) {
    return protocol.fact(subject).filter(Fact::handover).isPresent()
        && !subject.startsWith("told-");
  }

  private static boolean isEmpty(Item item) {
    return item.kind() == Kind.EMPTY;
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
