package tiptoe.language.tagger;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import tiptoe.language.SecondReading.LeftOut;
import tiptoe.language.SecondReading.Omitted;
import tiptoe.language.TypedText;
import tiptoe.protocol.Protocol;
import tiptoe.protocol.Side;

/**
 * Reads what was not examined inside a sentence. One stretch says that it was not done, of what, on
 * which side and until when, and a word more in it is not read; what stands behind "because", or
 * behind a break and finds nothing, is the reason, which is free talk. The words are in {@code
 * cues.txt}.
 */
final class LeftOutReader {
  private static final Set<String> SIDES = Set.of("left", "right");
  private static final Set<String> JOINTS = Set.of("and", "or", "nor", "plus");

  private final LayLexicon lexicon;
  private final Protocol protocol;
  private final List<String> words;
  private final Breaks breaks;
  private final List<WordItem> items;
  private final Predicate<List<String>> tells;

  // Of the stretch that is read.
  private final List<Omitted> omitted = new ArrayList<>();
  private List<String> structure = new ArrayList<>();
  private Side side;
  private boolean bothSides;
  private boolean undone;
  private boolean perceived;
  private boolean unable;
  private boolean denied;
  private boolean untilSaid;
  private List<String> deed = List.of();
  private int behind;

  private final Set<Integer> taken = new TreeSet<>();
  private final List<String> reason = new ArrayList<>();

  /**
   * @param items what the words are, in their order
   * @param tells whether words tell a fact that is no reason to leave something out
   */
  LeftOutReader(
      LayLexicon lexicon,
      Protocol protocol,
      List<String> words,
      List<WordItem> items,
      Predicate<List<String>> tells) {
    this.lexicon = lexicon;
    this.protocol = protocol;
    this.words = words;
    this.breaks = new Breaks(words);
    this.items = items;
    this.tells = tells;
  }

  Optional<LeftOut> read() {
    if (items.stream().anyMatch(item -> item.kind() == WordItem.Kind.CORRECTION)) {
      return Optional.empty();
    }
    for (int from = 0; from < words.size(); from++) {
      if (begins(from) && reads(from) && !isSupposed(from) && isSettled(from)) {
        return Optional.of(leftOut());
      }
    }
    return Optional.empty();
  }

  private LeftOut leftOut() {
    List<String> rest = new ArrayList<>();
    for (int at = 0; at < words.size(); at++) {
      boolean joint = rest.isEmpty() || rest.get(rest.size() - 1).equals(TypedText.BREAK);
      if (breaks.at(at) && !joint) {
        rest.add(TypedText.BREAK);
      } else if (!breaks.at(at) && !taken.contains(at)) {
        rest.add(words.get(at));
      }
    }
    if (!rest.isEmpty() && rest.get(rest.size() - 1).equals(TypedText.BREAK)) {
      rest.remove(rest.size() - 1);
    }
    return new LeftOut(omitted, bothSides ? null : side, unable, reason, rest);
  }

  // Behind a break, or inside a stretch where the examiner begins to speak of himself, or "so".
  private boolean begins(int at) {
    if (breaks.at(at)) {
      return false;
    }
    String before = at == 0 ? TypedText.BREAK : words.get(at - 1);
    return breaks.at(at - 1)
        || isListed("parts-off", before)
        || isListed("examiner", words.get(at)) && !isListed("asking", before);
  }

  // The stretch

  private boolean reads(int from) {
    omitted.clear();
    structure = new ArrayList<>();
    side = null;
    bothSides = false;
    undone = false;
    perceived = false;
    denied = false;
    untilSaid = false;
    deed = List.of();
    taken.clear();
    reason.clear();
    behind = breaks.to(from);
    boolean before = false;
    for (int at = from; at < breaks.to(from); ) {
      int length = undone ? 0 : undone(from, at);
      if (length > 0) {
        next();
        before = !omitted.isEmpty();
        undone = true;
        at += length;
        continue;
      }
      if (isSought(at)) {
        structure.clear();
        at++;
        continue;
      }
      if (isReason(at)) {
        behind = at;
        break;
      }
      length = structure.isEmpty() || !words.get(at).equals("one") ? aside(at) : 0;
      if (length > 0) {
        next();
        at += length;
      } else if (SIDES.contains(words.get(at))) {
        bothSides |= side != null && side != Side.of(words.get(at));
        side = Side.of(words.get(at));
        at++;
      } else if (isListed("determiner", words.get(at)) && structure.isEmpty()) {
        at++;
      } else if (before) {
        return false;
      } else {
        structure.add(words.get(at));
        at++;
      }
    }
    next();
    takeAll(from, behind);
    unable = lexicon.says("unable", words.subList(from, behind));
    return undone && !asks(from);
  }

  // "Did we not do the hips": no statement.
  private boolean asks(int from) {
    return from + 1 < words.size()
        && isListed("asking", words.get(from))
        && isListed("asked-of", words.get(from + 1));
  }

  private void next() {
    while (!structure.isEmpty() && isListed("determiner", structure.get(structure.size() - 1))) {
      structure.remove(structure.size() - 1);
    }
    if (!structure.isEmpty()) {
      omitted.add(new Omitted(structure, steps(structure)));
      structure = new ArrayList<>();
    }
  }

  // Words that name nothing: who does it, until when, on both sides, the pronoun of what was named.
  private int aside(int at) {
    int to = breaks.to(at);
    boolean ofThatSide = term("of-that-side", at, to) > 0;
    if (ofThatSide && side == null) {
      sideSaid(at);
    }
    int length = Math.max(term("of-both-sides", at, to), term("of-that-side", at, to));
    bothSides |= term("of-both-sides", at, to) > 0;
    untilSaid |= term("left-out-until", at, to) > 0;
    length = Math.max(length, term("left-out-until", at, to));
    length = Math.max(length, term("undone-beside", at, to));
    return length > 0
        ? length
        : JOINTS.contains(words.get(at)) || isListed("side-words", words.get(at)) ? 1 : 0;
  }

  // "Too puffy on the right, couldn't check it on that side"
  private void sideSaid(int at) {
    words.subList(0, at).stream()
        .filter(SIDES::contains)
        .reduce((first, last) -> last)
        .ifPresent(said -> side = Side.of(said));
  }

  // "Didn't look in the mouth for the palate": that alone, not all that is there.
  private boolean isSought(int at) {
    return words.get(at).equals("for")
        && steps(structure).isEmpty()
        && !steps(words.subList(at + 1, breaks.to(at))).isEmpty();
  }

  private boolean isReason(int at) {
    return undone
        && (isListed("reason-begins", words.get(at)) || term("reason-of", at, breaks.to(at)) > 0);
  }

  // "Haven't been able to check", "left out", "i'm skipping": how many words say that it was not
  // done; 0 where none do.
  private int undone(int from, int at) {
    int to = breaks.to(at);
    if (at == from && words.get(at).equals("no")) {
      denied = true;
      perceived = true;
      return 1;
    }
    int leaves = term("leaves-out", at, to);
    if (leaves > 0) {
      return leaves;
    }
    if (at == from && isListed("leaves", words.get(at))) {
      return 1;
    }
    int not = term("undone-not", at, to);
    if (not == 0) {
      return 0;
    }
    // "Couldn't get to check", "couldn't get": a deed, and only then what was looked for.
    int fallback = 0;
    for (int next = at + not; next < to; next++) {
      int done = term("deed", next, to);
      if (done > 0) {
        perceived = false;
        return name(next, done) - at;
      }
      int found = term("perceives", next, to);
      if (found > 0 && fallback == 0) {
        perceived = true;
        fallback = name(next, found) - at;
      }
      if (!isListed("undone-between", words.get(next))) {
        break;
      }
    }
    return fallback;
  }

  private int name(int from, int length) {
    deed = words.subList(from, from + length);
    return from + length;
  }

  // What it is about

  private Set<String> steps(List<String> structure) {
    List<String> named =
        structure.stream()
            .map(LayLexicon::plain)
            .filter(word -> !isListed("determiner", word))
            .toList();
    String id = String.join("-", named);
    for (String one : List.of(id, id.replaceFirst("s$", ""))) {
      if (protocol.find(one).isPresent()) {
        return Set.of(one);
      }
    }
    Set<Integer> covered = new TreeSet<>();
    List<TermMatch> parts =
        lexicon.matches(structure).stream()
            .filter(match -> !match.steps(Sense.Kind.PART).isEmpty())
            .toList();
    parts.forEach(part -> part.addTo(covered));
    for (int at = 0; at < structure.size(); at++) {
      if (!covered.contains(at) && !isListed("inside-a-name", structure.get(at))) {
        return Set.of();
      }
    }
    return common(parts);
  }

  // The one step that all of them name: "the vessels of the cord".
  private static Set<String> common(List<TermMatch> parts) {
    Set<String> all = null;
    Set<String> firm = new TreeSet<>();
    for (TermMatch part : parts) {
      firm.addAll(firm(part));
      if (all == null) {
        all = new TreeSet<>(part.steps(Sense.Kind.PART));
      } else {
        all.retainAll(part.steps(Sense.Kind.PART));
      }
    }
    if (all != null && all.size() > 1) {
      all.retainAll(firm);
    }
    return all == null || all.size() != 1 ? Set.of() : all;
  }

  private static Set<String> firm(TermMatch part) {
    return part.senses().stream()
        .filter(sense -> sense.kind() == Sense.Kind.PART && !sense.isLoose())
        .map(Sense::step)
        .collect(Collectors.toCollection(TreeSet::new));
  }

  // Whether it is plain what was left out, and that it was; takes what else belongs to it.
  private boolean isSettled(int from) {
    if (omitted.isEmpty() && !deed.isEmpty()) {
      Set<String> itself = steps(deed);
      if (!itself.isEmpty()) {
        omitted.add(new Omitted(deed, itself));
      }
    }
    if (omitted.isEmpty() && !isOfBefore(from)) {
      return false;
    }
    reason.addAll(words.subList(behind, breaks.to(behind)));
    takeAll(behind, breaks.to(behind));
    if (finds(behind, breaks.to(behind)) || !takesReasons(from)) {
      return false;
    }
    return !perceived
        || (untilSaid || !denied)
            && omitted.stream().noneMatch(this::isFinding)
            && (isMeasured() || isHindered(from));
  }

  // "No length today"; but no temperature is no fever.
  private boolean isMeasured() {
    return omitted.stream()
        .allMatch(
            one ->
                !one.steps().isEmpty()
                    && one.steps().stream()
                        .allMatch(
                            step ->
                                lexicon.isStepListed("measured", step)
                                    || !denied && protocol.step(step).isMeasured()));
  }

  // What could not be seen or felt was not examined only where something known was in the way.
  private boolean isHindered(int from) {
    List<String> others = new ArrayList<>(words.subList(0, from));
    others.addAll(words.subList(behind, words.size()));
    return isInTheWay(others) || lexicon.says("reason", others) && !denied;
  }

  // "Can't hear a murmur for the crying": there may be none.
  private boolean isFinding(Omitted one) {
    return lexicon.matches(one.words()).stream().anyMatch(match -> match.is(Sense.Kind.VALUE));
  }

  private boolean isInTheWay(List<String> said) {
    return lexicon.says("in-the-way", said);
  }

  // "Kidneys, not examined", "stepping i never got, he was asleep, so not done", "left femoral
  // strong, right one not done".
  private boolean isOfBefore(int from) {
    for (int to = from; to > 0; ) {
      int end = breaks.at(to - 1) ? to - 1 : to;
      if (end == 0) {
        return false;
      }
      int begin = breaks.from(end - 1);
      List<WordItem> chunk = chunk(begin, end);
      List<Omitted> named = named(chunk);
      Set<Side> sides = sides(chunk);
      if (!named.isEmpty()) {
        Set<Boolean> found =
            named.stream().map(one -> finds(chunk, one.steps())).collect(Collectors.toSet());
        boolean ofOther = side != null && !sides.isEmpty() && !sides.contains(side);
        if (found.size() != 1 || found.contains(true) != ofOther) {
          return false;
        }
        if (!ofOther) {
          sideOf(sides);
          takeAll(begin, end);
        }
        omitted.addAll(named);
        return true;
      }
      boolean way = isInTheWay(words.subList(begin, end));
      if (!way
          && chunk.stream()
              .anyMatch(i -> i.kind() == WordItem.Kind.FINDING && !i.match().isBound())) {
        return false;
      }
      sideOf(sides);
      to = begin;
    }
    return false;
  }

  private void sideOf(Set<Side> sides) {
    if (side == null && !bothSides && sides.size() == 1) {
      side = sides.iterator().next();
    }
  }

  private static Set<Side> sides(List<WordItem> chunk) {
    return chunk.stream()
        .filter(item -> item.kind() == WordItem.Kind.SIDE)
        .flatMap(item -> item.sides().stream())
        .collect(Collectors.toSet());
  }

  // What a stretch names, but for what stands in the way ("left eye's clamped shut") and where
  // something is ("a red reflex in either eye").
  private List<Omitted> named(List<WordItem> chunk) {
    List<Omitted> named = new ArrayList<>();
    List<TermMatch> parts = new ArrayList<>();
    for (WordItem item : chunk) {
      String last = words.get(item.to() - 1);
      if (item.kind() == WordItem.Kind.PART && !item.match().steps(Sense.Kind.PART).isEmpty()) {
        parts.add(item.match());
      } else if (item.kind() == WordItem.Kind.FINDING && protocol.find(last).isPresent()) {
        named.add(new Omitted(List.of(last), Set.of(last)));
      } else if (item.kind() == WordItem.Kind.FINDING && !item.match().isBound()) {
        named.add(new Omitted(List.of(), item.match().steps(Sense.Kind.VALUE)));
      }
    }
    parts.removeIf(part -> isInTheWay(words.subList(part.to(), breaks.to(part.to()))));
    if (parts.size() > 1 && !common(parts).isEmpty()) {
      named.add(new Omitted(List.of(), common(parts)));
      return named;
    }
    List<TermMatch> things = parts.stream().filter(part -> !isPlace(part)).toList();
    for (TermMatch part : things.isEmpty() ? parts : things) {
      Set<String> one = common(List.of(part));
      named.add(
          new Omitted(
              words.subList(part.from(), part.to()),
              one.isEmpty() ? part.steps(Sense.Kind.PART) : one));
    }
    return named;
  }

  private boolean isPlace(TermMatch part) {
    int before = part.from() - 1;
    while (before >= 0
        && (SIDES.contains(words.get(before))
            || isListed("both", words.get(before))
            || isListed("determiner", words.get(before)))) {
      before--;
    }
    return before >= 0 && isListed("place-preposition", words.get(before));
  }

  // Whether the chunk finds something of the steps, and does not only miss or deny it.
  private boolean finds(List<WordItem> chunk, Set<String> steps) {
    return chunk.stream()
        .filter(item -> item.kind() == WordItem.Kind.FINDING)
        .filter(item -> item.match().steps(Sense.Kind.VALUE).stream().anyMatch(steps::contains))
        .anyMatch(
            item ->
                !lexicon.denies(item.match(), words) && !steps.contains(words.get(item.to() - 1)));
  }

  // Why

  // Takes the stretches beside it that are its reason; false where one of them speaks of somebody
  // else, or finds what was left out.
  private boolean takesReasons(int from) {
    int to = breaks.to(behind);
    while (to < words.size()) {
      int begin = to + 1;
      int end = breaks.to(begin);
      if (begin >= words.size() || !isTalk(begin, end)) {
        break;
      }
      boolean denied = words.subList(begin, end).stream().anyMatch(w -> isListed("undone-not", w));
      if (isOfAnother(begin, end)
          || finds(begin, end)
          || !denied && lexicon.says("done-after-all", words.subList(begin, end))) {
        return false;
      }
      if (!isWhere(begin, end)) {
        reason.add(TypedText.BREAK);
        reason.addAll(words.subList(begin, end));
      }
      takeAll(begin, end);
      to = end;
    }
    int before = breaks.at(from - 1) ? from - 1 : from;
    boolean so =
        from > 0
            && (isListed("parts-off", words.get(from))
                || isListed("parts-off", words.get(from - 1))
                || isListed("reason-begins", words.get(breaks.from(from - 1))));
    if (before > 0) {
      int begin = breaks.from(before - 1);
      if (!taken.contains(begin) && (so || isDried(begin, before)) && isTalk(begin, before)) {
        takeAll(begin, before);
      }
    }
    List<WordItem> left = items.stream().filter(item -> !taken.contains(item.from())).toList();
    return left.stream().noneMatch(item -> item.kind() == WordItem.Kind.FOREIGN);
  }

  // "Left or right", "neither side": where it was not done either.
  private boolean isWhere(int from, int to) {
    boolean where =
        chunk(from, to).stream()
            .allMatch(
                item ->
                    item.isEmpty()
                        || item.kind() == WordItem.Kind.SIDE
                        || item.kind() == WordItem.Kind.NOT
                        || item.kind() == WordItem.Kind.OR
                        || item.kind() == WordItem.Kind.AND
                        || item.kind() == WordItem.Kind.PART && joinsByOr(from, to));
    Set<Side> sides = sides(chunk(from, to));
    if (where) {
      sideOf(sides);
    }
    return where;
  }

  // "Hand or foot"
  private boolean joinsByOr(int from, int to) {
    return chunk(from, to).stream().anyMatch(item -> item.kind() == WordItem.Kind.OR);
  }

  // Whether a stretch names and finds nothing, but for how the baby is just now.
  private boolean isTalk(int from, int to) {
    return isListed("reason-begins", words.get(from))
        || isDried(from, to)
        || isWhere(from, to)
        || chunk(from, to).stream()
                .noneMatch(
                    item ->
                        item.kind() == WordItem.Kind.NUMBER
                            || item.kind() == WordItem.Kind.PART
                                && !item.match().steps(Sense.Kind.PART).isEmpty()
                                && !isOfOther(item)
                            || item.kind() == WordItem.Kind.FINDING && findsElse(item.match()))
            && !tells.test(words.subList(from, to));
  }

  // "He just settled on dad's chest"
  private boolean isOfOther(WordItem part) {
    return items.stream()
        .anyMatch(item -> item.to() == part.from() && item.kind() == WordItem.Kind.FOREIGN);
  }

  // "The cord's dried right up": why its vessels cannot be counted.
  private boolean isDried(int from, int to) {
    List<WordItem> findings =
        chunk(from, to).stream().filter(item -> item.kind() == WordItem.Kind.FINDING).toList();
    return !findings.isEmpty()
        && findings.stream()
            .allMatch(item -> lexicon.says("reason", words.subList(item.from(), item.to())));
  }

  private boolean findsElse(TermMatch finding) {
    return finding.senses().stream()
        .filter(sense -> !sense.bound())
        .anyMatch(
            sense -> !lexicon.isStepListed("state", sense.step()) || lexicon.isAbnormal(sense));
  }

  // "That was his brother": parents may be in the reason, others not behind a word that points.
  private boolean isOfAnother(int from, int to) {
    return chunk(from, to).stream().anyMatch(item -> item.kind() == WordItem.Kind.FOREIGN)
        && (isListed("refers-back", words.get(from))
            || isListed("refers-back", words.get(from).replace("'s", "")));
  }

  // Whether something is found there of what was left out.
  private boolean finds(int from, int to) {
    Set<String> steps =
        omitted.stream().flatMap(one -> one.steps().stream()).collect(Collectors.toSet());
    return chunk(from, to).stream()
        .filter(item -> item.kind() == WordItem.Kind.FINDING)
        .filter(item -> !lexicon.isListed("perceive", words.subList(item.from(), item.to())))
        .filter(item -> !item.match().isBound() || !isInTheWay(words.subList(from, to)))
        .filter(item -> item.from() == 0 || !isListed("baby-is", words.get(item.from() - 1)))
        .flatMap(item -> item.match().steps(Sense.Kind.VALUE).stream())
        .anyMatch(steps::contains);
  }

  // "If the baby screams, the murmur is not assessed", "it says hips not examined"
  // Or told of somebody else, or taken back at the end ("…, no").
  private boolean isSupposed(int from) {
    return words.subList(0, from).stream().anyMatch(word -> isListed("not-stated", word))
        || items.stream().anyMatch(item -> item.to() <= from && isOfOthers(item))
        || isTakenBack(from);
  }

  // "His brother had a red reflex, couldn't get it"; but "mum, …" is spoken to.
  private boolean isOfOthers(WordItem item) {
    return item.kind() == WordItem.Kind.FOREIGN
        && chunk(breaks.from(item.from()), breaks.to(item.from())).stream()
            .anyMatch(
                beside ->
                    beside.kind() == WordItem.Kind.PART || beside.kind() == WordItem.Kind.FINDING);
  }

  private boolean isTakenBack(int from) {
    int begin = breaks.from(words.size() - 1);
    List<WordItem> last =
        chunk(begin, words.size()).stream().filter(item -> !item.isEmpty()).toList();
    return begin > from
        && !last.isEmpty()
        && last.stream()
            .allMatch(
                item -> item.kind() == WordItem.Kind.NOT || item.kind() == WordItem.Kind.DOUBT);
  }

  private List<WordItem> chunk(int from, int to) {
    return items.stream().filter(item -> item.from() >= from && item.to() <= to).toList();
  }

  private void takeAll(int from, int to) {
    for (int at = from; at < to; at++) {
      taken.add(at);
    }
  }

  private boolean isListed(String list, String word) {
    return lexicon.isListed(list, word);
  }

  private int term(String list, int at, int to) {
    return lexicon.longest(list, words.subList(at, to));
  }
}
