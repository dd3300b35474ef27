package tiptoe.language.tagger;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import tiptoe.language.SecondReading.Told;
import tiptoe.language.TypedText;
import tiptoe.language.tagger.ToldItems.Item;
import tiptoe.language.tagger.ToldItems.Kind;
import tiptoe.language.tagger.ToldPart.Stated;
import tiptoe.protocol.Protocol;

/** Settles what the parts of a sentence state against each other, and says what is left of it. */
final class ToldSentence {
  private static final Set<Kind> DENIALS =
      union(ToldPart.CARRY_NOTHING, EnumSet.of(Kind.DENY, Kind.UNASSERTED));
  private static final Set<Kind> NUMBERS = union(ToldPart.CARRY_NOTHING, EnumSet.of(Kind.NUMBER));
  private static final Set<Kind> NAMES = EnumSet.of(Kind.EMPTY, Kind.TOLD, Kind.JOINT, Kind.ORDER);

  private static final int LONGEST_DOUBT = 6;

  private final ToldWords sentence;
  private final ToldLexicon told;
  private final Protocol protocol;
  private final ToldMeasures measures;
  private final List<String> words;
  private final List<String> plain;
  private final List<ToldPart> parts;

  /** What is said of it in several ways, and nobody knows which holds. */
  private final Set<String> contested;

  ToldSentence(ToldWords sentence, List<ToldPart> parts, Set<String> contested) {
    this.sentence = sentence;
    this.told = sentence.told();
    this.protocol = sentence.protocol();
    this.measures = new ToldMeasures(sentence);
    this.words = sentence.words();
    this.plain = sentence.plain();
    this.parts = parts;
    this.contested = new TreeSet<>(contested);
  }

  private static Set<Kind> union(Set<Kind> some, Set<Kind> more) {
    Set<Kind> all = EnumSet.copyOf(some);
    all.addAll(more);
    return all;
  }

  Told told() {
    dropHearsay();
    doubtTogether();
    putRight();
    takeBack();
    denyLists();
    dropEchoes();
    dropConflicts();
    return result();
  }

  // "Mum said the temperature is thirty six": of another, or from hearsay.
  private void dropHearsay() {
    for (int at = 0; at + 1 < plain.size(); at++) {
      if (sentence.isListed("near", at)
          && !sentence.isListed("deny", at)
          && sentence.isListed("speaks", at + 1)) {
        parts.forEach(part -> part.drop(one -> told.isMeasured(one.subject())));
      }
    }
  }

  // "Possibly pulse ox is 99 percent on the right hand and 97 on the foot": what nothing parts is
  // doubted together.
  private void doubtTogether() {
    int from = 0;
    for (int to = 1; to <= parts.size(); to++) {
      if (to < parts.size() && parts.get(to).joined) {
        continue;
      }
      List<ToldPart> together = parts.subList(from, to);
      boolean altered =
          together.stream().anyMatch(part -> part.altered || part.leaves(Kind.UNASSERTED));
      boolean unknown =
          together.stream().anyMatch(part -> !part.open.isEmpty() || part.leaves(Kind.UNKNOWN));
      for (ToldPart part : together) {
        part.drop(one -> altered);
        if (unknown) {
          part.doubt();
        }
      }
      from = to;
    }
  }

  private void putRight() {
    for (int i = 0; i < parts.size(); i++) {
      ToldPart before = parts.get(Math.max(0, statingBefore(i)));
      if (!parts.get(i).corrects || !before.states()) {
        continue;
      }
      List<Stated> anew =
          parts.subList(i + 1, parts.size()).stream()
              .filter(ToldPart::states)
              .findFirst()
              .map(ToldPart::stated)
              .orElse(List.of());
      Set<String> right = new TreeSet<>();
      anew.stream().map(Stated::subject).filter(before::states).forEach(right::add);
      parts.get(i).settled = !right.isEmpty();
      if (!right.isEmpty()) {
        before.drop(one -> right.contains(one.subject()));
        if (!before.states()) {
          before.open.clear();
          before.replaced = true;
        }
      } else if (!isApology(parts.get(i))) {
        // What is put right nobody can tell.
        before.stated().forEach(one -> contested.add(one.subject()));
        before.drop(one -> true);
      }
    }
  }

  // The part that a correction may put right: the nearest before it that says something.
  private int statingBefore(int correction) {
    int before = correction - 1;
    while (before >= 0
        && !parts.get(before).states()
        && (parts.get(before).corrects || parts.get(before).isEmpty())) {
      before--;
    }
    return before;
  }

  private boolean isApology(ToldPart correction) {
    return told.isListed("apology", correction.of(plain));
  }

  // A lone "no" or "not really", and a correction of which nobody can tell what it corrects.
  private void takeBack() {
    for (int i = 0; i < parts.size(); i++) {
      ToldPart part = parts.get(i);
      boolean only =
          !part.corrects
              && !part.answers
              && !agrees(i)
              && !isAside(part)
              && !isPlan(part)
              && !part.states()
              && !part.isEmpty()
              && part.items.stream()
                  .allMatch(item -> DENIALS.contains(item.kind()) || sentence.isDenial(item));
      boolean remarks = only && told.begins("remarks", said(part));
      boolean denies = only && part.items.stream().anyMatch(item -> takesBack(part, item));
      boolean doubts = only && part.items.stream().anyMatch(this::isDoubt);
      if (denies && !remarks || part.corrects && !part.settled && !isApology(part)) {
        before(i).forEach(before -> before.stated().forEach(one -> contested.add(one.subject())));
      } else if (denies && !told.begins("musings", said(part)) || doubts) {
        (told.begins("remarks", said(part)) ? lastOf(before(i)) : before(i))
            .forEach(ToldPart::doubt);
      }
    }
    parts.forEach(part -> part.drop(one -> contested.contains(one.subject())));
  }

  // "Vomited blood, which may well be yours": the last that says something.
  private static List<ToldPart> lastOf(List<ToldPart> before) {
    return before.stream()
        .filter(ToldPart::states)
        .reduce((first, last) -> last)
        .map(List::of)
        .orElse(List.of());
  }

  // What a denial or a doubt may be of: not what stands before a finding, of which it is then.
  private List<ToldPart> before(int index) {
    int from = index;
    while (from > 0
        && (parts.get(from - 1).corrects
            || parts.get(from - 1).states()
            || !parts.get(from - 1).has(Kind.FINDING))) {
      from--;
    }
    return parts.subList(from, index);
  }

  // "No" and "it isn't"; not "don't guess", nor "free of", which want something behind them.
  private boolean takesBack(ToldPart part, Item item) {
    List<String> said = said(part);
    boolean bids = told.begins("bids", said);
    boolean open = item.length() > 1 && told.isListed("wants-more", plain.get(item.to() - 1));
    // "Nothing there to score", "against hours and not days", "dad's no small hat size": not of it.
    boolean remark = told.isListed("nothing", sentence.of(item)) && item.to() < part.to();
    boolean contrast =
        item.from() > part.from() && sentence.isBehind("joint", item.from(), part.from() + 1);
    boolean another = told.says("near", said);
    return sentence.isDenial(item) && !bids && !open && !remark && !contrast && !another;
  }

  // "Maybe"; "we'll count again later" and "as they all do" leave it as it is.
  private boolean isDoubt(Item item) {
    List<String> said = words.subList(item.from(), item.to());
    return item.kind() == Kind.UNASSERTED
        && (sentence.lay().isListed("doubt", said) || told.isListed("roughly", said));
  }

  // The words of a part behind what joins it.
  private List<String> said(ToldPart part) {
    int from = part.from();
    while (from < part.to() && sentence.isListed("joint", from)) {
      from++;
    }
    return plain.subList(from, part.to());
  }

  // "No diabetes, no", "so no to both"
  private boolean agrees(int index) {
    ToldPart part = parts.get(index);
    int before = index - 1;
    while (before > 0 && !parts.get(before).states()) {
      before--;
    }
    return before >= 0
        && part.items.stream()
            .filter(item -> item.kind() != Kind.EMPTY && item.kind() != Kind.JOINT)
            .allMatch(item -> told.isListed("says-no", sentence.of(item)))
        && parts.get(before).states()
        && parts.get(before).stated().stream()
            .allMatch(one -> told.isListed("no-values", String.valueOf(one.value())));
  }

  // "You've got the toddler at home with granny": too much said to be a doubt or a denial.
  private boolean isAside(ToldPart part) {
    return part.to() - part.from() > LONGEST_DOUBT
        && part.items.stream().noneMatch(sentence::isDenial);
  }

  // "We'll sort it out together" takes nothing back.
  private boolean isPlan(ToldPart part) {
    return told.begins("plan", said(part));
  }

  // "No family history of hips, hearts or eyes": all of it, where "or" says so; else who knows.
  private void denyLists() {
    for (int i = 0; i < parts.size(); i++) {
      boolean all = deniesFamily(parts.get(i));
      if (!all && (!parts.get(i).denied || !parts.get(i).states())) {
        continue;
      }
      int to = i + 1;
      while (to < parts.size() && goesOn(parts.get(to))) {
        to++;
      }
      List<ToldPart> list = parts.subList(i + 1, to);
      boolean none =
          all && to < parts.size() && parts.get(to).denied && told.says("none-of-it", plain);
      if (none || list.stream().anyMatch(part -> part.has(Kind.OR))) {
        list.forEach(ToldPart::deny);
      } else {
        list.forEach(part -> part.drop(one -> true));
      }
    }
  }

  // "No family history, heart, eyes, kidneys": who knows of what, but for "none of it" behind them.
  private boolean deniesFamily(ToldPart part) {
    return !part.states()
        && told.says("family", part.of(plain))
        && part.items.stream().anyMatch(sentence::isDenial);
  }

  private boolean goesOn(ToldPart part) {
    return part.states()
        && !part.denied
        && part.stated().stream().allMatch(one -> "yes".equals(one.value()))
        && !saysValue(part)
        && part.of(plain).stream()
            .noneMatch(
                word -> told.isListed("verbs", word) || sentence.lay().isListed("turn", word));
  }

  // "The eyes are clear, and nobody in the family had cataracts": eyes without a family are the
  // baby's.
  private void dropEchoes() {
    Set<String> denied = new TreeSet<>();
    parts.forEach(
        part ->
            part.stated().stream()
                .filter(one -> isHistory(one, "no"))
                .forEach(one -> denied.add(one.subject())));
    parts.stream()
        .filter(
            part ->
                List.of("family", "near", "far").stream()
                    .noneMatch(list -> told.says(list, part.of(plain))))
        .forEach(part -> part.drop(one -> isHistory(one, "yes") && denied.contains(one.subject())));
  }

  private static boolean isHistory(Stated one, String value) {
    return one.subject().endsWith("family-history") && value.equals(one.value());
  }

  // "Labour spontaneous": more than a name in a list.
  private static boolean saysValue(ToldPart part) {
    return part.all(Kind.TOLD).stream()
        .flatMap(Item::senses)
        .anyMatch(sense -> sense.bound() && part.states(sense.subject()));
  }

  // Two values of one thing count for nothing, but for "yes" and what tells more, and for readings
  // that are told apart; the same said again counts once.
  private void dropConflicts() {
    Map<String, List<Stated>> bySubject = new LinkedHashMap<>();
    parts.stream()
        .flatMap(part -> part.stated().stream())
        .forEach(one -> bySubject.computeIfAbsent(one.subject(), s -> new ArrayList<>()).add(one));
    bySubject.forEach(this::settle);
  }

  private void settle(String subject, List<Stated> all) {
    List<Stated> distinct = new ArrayList<>();
    all.stream()
        .filter(one -> distinct.stream().noneMatch(other -> saysAgain(one, other)))
        .forEach(distinct::add);
    boolean series =
        protocol.find(subject).filter(step -> step.series()).isPresent()
            && all.subList(1, all.size()).stream().allMatch(Stated::ordered);
    List<String> values = all.stream().map(one -> String.valueOf(one.value())).toList();
    if (distinct.size() == 2 && values.contains("yes") && !values.contains("no")) {
      drop(subject, "yes");
    } else if (distinct.size() == 2
        && values.contains("due")
        && (values.contains("requested") || values.contains("made"))) {
      // "Needs a hip scan, so i've requested one"
      drop(subject, "due");
    } else if (distinct.size() == 2 && values.contains("done") && values.contains("passed")) {
      drop(subject, "done");
    } else if (distinct.size() > 1 && !series || !series && mayBeAnother(subject)) {
      contested.add(subject);
      parts.forEach(part -> part.drop(one -> one.subject().equals(subject)));
    } else if (!series) {
      // Of what is said twice the plainer counts.
      boolean sure = all.stream().anyMatch(Stated::sure);
      Set<String> said = new LinkedHashSet<>();
      parts.forEach(
          part ->
              part.drop(
                  one ->
                      one.subject().equals(subject)
                          && (sure && !one.sure() || !said.add(subject))));
    }
  }

  private void drop(String subject, String value) {
    parts.forEach(
        part -> part.drop(one -> one.subject().equals(subject) && value.equals(one.value())));
  }

  // "Three point three one, that's three thousand three hundred and ten grams"
  private boolean saysAgain(Stated one, Stated other) {
    return one.says(other) || measures.isSame(one.subject(), one.numbers(), other.numbers());
  }

  // A number that stands alone behind it may be the right one, or the same in other words.
  private boolean mayBeAnother(String subject) {
    Stated before = null;
    for (ToldPart part : parts) {
      boolean bare =
          !part.states()
              && !part.replaced
              && part.all(Kind.NUMBER).size() == 1
              && part.consistsOf(NUMBERS)
              && !told.says("percent", part.of(plain));
      if (before != null && bare && protocol.find(subject).isPresent()) {
        Item number = part.all(Kind.NUMBER).get(0);
        if (!measures.isSame(subject, before.numbers(), number.numbers())) {
          return measures.mayBe(subject, number);
        }
        part.replaced = true;
      }
      before =
          part.stated().stream()
              .filter(one -> one.subject().equals(subject))
              .findFirst()
              .orElse(before);
    }
    return false;
  }

  private Told result() {
    if (parts.stream().noneMatch(ToldPart::states)) {
      return new Told(List.of(), words, List.of(), contested, false);
    }
    List<Told.Said> said = new ArrayList<>();
    List<String> rest = new ArrayList<>();
    List<String> open = new ArrayList<>();
    boolean more = parts.stream().anyMatch(part -> !part.states() && !isUsed(part));
    for (int i = 0; i < parts.size(); i++) {
      ToldPart part = parts.get(i);
      part.stated()
          .forEach(
              one ->
                  said.add(new Told.Said(one.subject(), one.value(), one.numbers(), one.sure())));
      if (part.states()) {
        part.open.forEach(at -> open.add(words.get(at)));
      }
      if (part.states() && !part.finds) {
        continue;
      }
      if (part.finds) {
        rest.addAll(rest.isEmpty() ? List.of() : List.of(TypedText.BREAK));
        rest.addAll(part.of(words));
      } else if (!isUsed(part) || more && isUneasy(part)) {
        if (!rest.isEmpty()) {
          rest.add(TypedText.BREAK);
        }
        if (part.joined) {
          rest.addAll(measuredBefore(i));
        }
        rest.addAll(part.of(words).subList(part.joined ? 1 : 0, part.to() - part.from()));
      }
    }
    boolean shared = parts.stream().anyMatch(part -> part.states() && part.finds);
    return new Told(said, rest, open, contested, shared);
  }

  // It takes nothing from a number, but makes a doubt of what is normal beside it.
  private boolean isUneasy(ToldPart part) {
    return sentence.lay().says("concern", part.of(plain));
  }

  private boolean isUsed(ToldPart part) {
    return part.replaced
        || part.denied
        || part.answers
        || part.corrects && part.settled
        || part.isEmpty()
        || isTopic(part);
  }

  // "Breathing at forty four and easy": what is measured is what else is said of.
  private List<String> measuredBefore(int index) {
    ToldPart before = parts.get(index - 1);
    return before.stated().size() == 1 && parts.get(index).has(Kind.FINDING)
        ? before.items.stream()
            .filter(Item::isAbout)
            .findFirst()
            .map(item -> words.subList(item.from(), item.from() + 1))
            .orElse(List.of())
        : List.of();
  }

  // "Blood glucose" before "first one two point one"
  private boolean isTopic(ToldPart part) {
    Set<String> subjects = part.subjects();
    Set<Integer> beside = told.beside(subjects, part.of(plain));
    return part.has(Kind.TOLD)
        && part.items.stream()
            .allMatch(
                item -> NAMES.contains(item.kind()) || beside.contains(item.from() - part.from()))
        && parts.stream()
            .flatMap(other -> other.stated().stream())
            .anyMatch(one -> subjects.contains(one.subject()));
  }
}
