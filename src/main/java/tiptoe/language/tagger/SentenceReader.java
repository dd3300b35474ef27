package tiptoe.language.tagger;

import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import tiptoe.protocol.Side;

/**
 * Reads one sentence word by word: what each word is, which words belong together, and what they
 * state. A structure stays the topic until another is named, a side until another is said; a denial
 * reaches to a turn, to what is normal, or to where a new statement begins (after Chapman et al.
 * 2001 and Harkema et al. 2009, see DEVELOPERS.md).
 */
final class SentenceReader {
  private static final Set<String> SIDES = Set.of("left", "right", "both", "each", "either");

  private final LayLexicon lexicon;
  private final List<String> words;
  private final Breaks breaks;
  private final List<WordItem> items;
  private final List<Statement> statements = new ArrayList<>();
  private Statement now = new Statement(null);
  private int at;
  private boolean behindComma;
  private int corrections;
  private final List<Statement> replaced = new ArrayList<>();

  /**
   * @param words with {@code ,} where the typed text has a break
   * @param items what the words are, in their order
   */
  SentenceReader(LayLexicon lexicon, List<String> words, List<WordItem> items) {
    this.lexicon = lexicon;
    this.words = words;
    this.breaks = new Breaks(words);
    this.items = items;
  }

  /** The statements of the sentence, one for each thing that is said. */
  List<Statement> read() {
    for (at = 0; at < items.size(); at++) {
      WordItem item = items.get(at);
      switch (item.kind()) {
        case COMMA -> {
          behindComma = true;
          if (now.denier >= 0 && now.findings.isEmpty() || isEchoed()) {
            next();
          }
        }
        case TURN -> {
          next();
          now.excepts = lexicon.isListed("except", words.subList(item.from(), item.to()));
        }
        case CORRECTION -> {
          // "A step on the left, right, I mean": the side before it puts right.
          boolean behind =
              now.isOnlySide()
                  && now.topicOf != null
                  && !now.corrects
                  && breaks.at(item.to())
                  && !breaks.at(item.from() - 1);
          now.corrects |= behind;
          next();
          now.corrects |= !behind;
        }
        case NOT -> deny(item);
        case SIDE -> side(item);
        case PART -> part(item);
        case FINDING -> finding(item);
        case OTHER -> other(item);
        case SAME -> {
          if (!now.findings.isEmpty()) {
            next();
          }
          now.same = item.from();
        }
        default -> {
          if (lexicon.isListed("alike", words.subList(item.from(), item.to()))) {
            // "Rooting is present, also the stepping"
            if (!now.findings.isEmpty() && (isFollowedBy(WordItem.Kind.PART) || isOfOtherSide())) {
              next();
            }
            now.alike = item.from();
          }
          // "Isn't moving so that's a facial palsy": no denial reaches over that.
          if (now.denier >= 0
              && now.findings.isEmpty()
              && lexicon.isListed("begins-clause", words.get(item.to() - 1))
              && lexicon.isListed("refers-back", words.get(item.to() - 1))
              && words.get(item.to() - 1).endsWith("'s")) {
            next();
          }
          if (isThatSide(words, item)) {
            // "Right hip's fine, a clunk on this side": it may be the other one.
            if (!words.get(item.to() - 2).equals("this")) {
              sideOfBefore(item);
            }
            now.ofOne = true;
          }
          if (lexicon.isListed("perceive", words.subList(item.from(), item.to()))) {
            now.perceived = item.from();
          }
        }
      }
      boolean joins = item.kind() == WordItem.Kind.COMMA || item.kind() == WordItem.Kind.AND;
      if (!joins && !item.isEmpty()) {
        behindComma = false;
      }
    }
    next();
    share();
    except();
    sayAgain();
    correct();
    return statements;
  }

  // "Right hip opens fully, so does the left, and the knees are level": no heading of the knees.
  private boolean isEchoed() {
    return now.alike >= 0
        && !now.sides.isEmpty()
        && now.parts.isEmpty()
        && now.findings.isEmpty()
        && lexicon.isListed("echoes", words.subList(now.alike, now.alike + 2));
  }

  private void next() {
    if (!now.isEmpty()) {
      statements.add(now);
      now = new Statement(now);
    }
  }

  // "Femorals strong apart from the left": said of the right one alone.
  private void except() {
    for (int i = 1; i < statements.size(); i++) {
      Statement left = statements.get(i);
      Statement before = statements.get(i - 1);
      boolean only = left.excepts && left.isOnlySide() && left.sides.size() == 1;
      if (only && before.sides.size() != 1 && !before.findings.isEmpty()) {
        Side side = left.sides.iterator().next();
        before.sides.clear();
        before.sides.add(side.other());
        before.sideWords.addAll(left.sideWords);
        left.sides.clear();
      }
    }
  }

  // "Barlow and Ortolani are both negative, on the left and on the right": the same sides again.
  private void sayAgain() {
    for (int i = 1; i < statements.size(); i++) {
      Statement again = statements.get(i);
      Statement before = statements.get(i - 1);
      boolean only = again.isOnlySide();
      // "Nor the kidneys, right or left"
      if (only && before.sides.isEmpty() && before.alike >= 0 && again.sides.size() == 2) {
        before.sides.addAll(again.sides);
      }
      if (only && again.same < 0 && !again.corrects && again.sides.equals(before.sides)) {
        before.sideWords.addAll(again.sideWords);
      }
      // "Together on the right, and on the left": on both.
      boolean last = i + 1 == statements.size() || isOfItsOwn(statements.get(i + 1));
      if (only
          && last
          && again.same < 0
          && !again.corrects
          && isAlsoOnSide(again)
          && before.sides.size() == 1
          && !before.findings.isEmpty()) {
        before.sides.addAll(again.sides);
        before.sideWords.addAll(again.sideWords);
      }
    }
  }

  // "…, and on the left", "and the left"
  private boolean isAlsoOnSide(Statement again) {
    if (again.sideWords.isEmpty()) {
      return false;
    }
    int first = Collections.min(again.sideWords);
    int last = Collections.max(again.sideWords);
    return words.get(breaks.from(first)).equals("and")
        && items.stream()
            .filter(item -> item.from() > breaks.from(first) && item.to() <= breaks.to(last))
            .allMatch(item -> item.isEmpty() || item.kind() == WordItem.Kind.SIDE);
  }

  // It names what it is of before what it finds.
  private static boolean isOfItsOwn(Statement statement) {
    return !statement.parts.isEmpty()
        && !statement.corrects
        && (statement.findings.isEmpty()
            || statement.parts.get(0).from() < statement.findings.get(0).match().from());
  }

  // "No pits, no tags on either ear": what is denied before in a row is denied of the same place.
  private void share() {
    for (int i = statements.size() - 1; i > 0; i--) {
      Statement named = statements.get(i);
      Statement before = statements.get(i - 1);
      boolean placed =
          !named.parts.isEmpty()
              && named.findings.stream().anyMatch(found -> denies(found))
              && named.findings.get(0).match().to() <= named.parts.get(0).from();
      boolean row =
          before.parts.isEmpty()
              && (before.sides.isEmpty() || before.sides.equals(named.sides))
              && (before.topicOf == null || before.topicParts().isEmpty())
              && !before.findings.isEmpty()
              && before.findings.stream()
                  .allMatch(
                      found ->
                          denies(found)
                              && named.parts.stream()
                                  .anyMatch(
                                      part ->
                                          part.steps(Sense.Kind.PART).stream()
                                              .anyMatch(
                                                  found.match().steps(Sense.Kind.VALUE)
                                                      ::contains)));
      if (placed && row) {
        before.parts.addAll(named.parts);
        before.sides.addAll(named.sides);
        before.sideWords.addAll(named.sideWords);
      } else if (isOfSameSide(before, named)) {
        before.sides.addAll(named.sides);
        before.sideWords.addAll(named.sideWords);
      }
    }
  }

  // "A click but no clunk in the left hip": both there.
  private boolean isOfSameSide(Statement before, Statement named) {
    return before.parts.isEmpty()
        && before.sides.isEmpty()
        && (before.topicOf == null || before.topicOf.sides.isEmpty())
        && named.sides.size() == 1
        && !named.sideWords.isEmpty()
        && !before.findings.isEmpty()
        && !named.findings.isEmpty()
        && named.findings.stream().allMatch(this::denies)
        && Collections.min(named.sideWords) > named.findings.get(0).match().from()
        && !breaks.between(before.findings.get(0).match().from(), Collections.min(named.sideWords));
  }

  private boolean denies(Statement.Found found) {
    return found.denied() || lexicon.denies(found.match(), words);
  }

  // "Crepitus over the right, no, wait, the left clavicle": the side is put right. Where it is not
  // plain what is put right, neither counts.
  private void correct() {
    for (int i = 1; i < statements.size(); i++) {
      Statement correction = statements.get(i);
      Statement before = statements.get(i - 1);
      if (!correction.corrects) {
        continue;
      }
      boolean samePart =
          before.parts.isEmpty()
              || correction.parts.isEmpty()
              || before.partSteps().stream().anyMatch(correction.partSteps()::contains);
      // "On the right, no, my right, baby's left": the side that it was puts nothing right.
      boolean puts = !correction.sides.isEmpty() && !correction.sides.equals(before.sides);
      // "Clavicle, left, no, I mean right, a step off": before anything was found.
      if (before.findings.isEmpty()
          && before.denier < 0
          && before.sides.size() == 1
          && puts
          && samePart
          && !correction.wavers) {
        before.takenBack = true;
        if (correction.parts.isEmpty()) {
          correction.parts.addAll(before.parts);
        }
        replaced.add(before);
        corrections++;
        continue;
      }
      if (correction.findings.isEmpty() && puts && samePart && !correction.wavers) {
        before.sides.clear();
        before.sides.addAll(correction.sides);
        before.sideWords.addAll(correction.sideWords);
        if (before.parts.isEmpty()) {
          before.parts.addAll(correction.parts);
        } else {
          correction.parts.forEach(part -> part.addTo(before.sideWords));
        }
        correction.takenBack = true;
        corrections++;
      } else if (isOtherPart(before, correction)) {
        Statement named = new Statement(null);
        named.parts.addAll(before.parts);
        replaced.add(named);
        TermMatch right = correction.parts.get(0);
        right.addTo(before.sideWords);
        TermMatch last = before.parts.isEmpty() ? right : before.parts.get(before.parts.size() - 1);
        before.parts.clear();
        before.parts.add(new TermMatch(last.from(), last.to(), last.words(), right.senses()));
        correction.takenBack = true;
        corrections++;
      } else if (!correction.findings.isEmpty()
          && before.findings.size() == 1
          && samePart
          && !isDoubtBetween(before, correction)) {
        before.takenBack = true;
        takeBackSide(i - 1, correction);
        if (correction.sides.isEmpty()) {
          correction.sides.addAll(before.sides);
        }
        if (correction.parts.isEmpty()) {
          correction.parts.addAll(before.parts);
        }
        replaced.add(before);
        corrections++;
        takeBackOther(i);
      } else {
        before.takenBack = true;
        correction.takenBack = true;
      }
    }
  }

  // "Right hip slides out, Barlow positive, I mean left, left Barlow positive": the side that was
  // wrong was said before, and goes with all that was said of it.
  private void takeBackSide(int index, Statement correction) {
    int said = index;
    while (said >= 0 && statements.get(said).sides.isEmpty()) {
      said--;
    }
    boolean puts =
        said >= 0
            && said < index
            && correction.sides.size() == 1
            && statements.get(said).sides.size() == 1
            && !statements.get(said).sides.equals(correction.sides);
    for (int i = said; puts && i < index; i++) {
      statements.get(i).takenBack = true;
      replaced.add(statements.get(i));
    }
  }

  // "Left weak, right strong, no, it's the right that's weak and the left that's strong": both are
  // put right.
  private void takeBackOther(int index) {
    if (index < 2 || index + 1 >= statements.size()) {
      return;
    }
    Statement again = statements.get(index + 1);
    Statement first = statements.get(index - 2);
    boolean puts =
        again.sides.size() == 1
            && again.parts.isEmpty()
            && again.findings.size() == 1
            && !again.corrects
            && first.findings.size() == 1
            && first.sides.equals(again.sides)
            && !first.sides.equals(statements.get(index).sides);
    if (puts) {
      first.takenBack = true;
      replaced.add(first);
    }
  }

  // "The left hip is positive on Barlow, no, Ortolani"
  private static boolean isOtherPart(Statement before, Statement correction) {
    Set<String> named = correction.partSteps();
    return correction.findings.isEmpty()
        && correction.sides.isEmpty()
        && correction.denier < 0
        && correction.parts.size() == 1
        && before.findings.size() == 1
        && before.findings.get(0).match().steps(Sense.Kind.VALUE).stream()
            .anyMatch(named::contains);
  }

  // "The right's fine, or is it me holding the head crooked, no, it's low": it may be the doubt
  // that is put right.
  private boolean isDoubtBetween(Statement before, Statement correction) {
    int from = before.findings.get(0).match().to();
    int to = correction.findings.get(0).match().from();
    return items.stream()
        .filter(item -> item.from() >= from && item.to() <= to)
        .anyMatch(item -> item.kind() == WordItem.Kind.DOUBT);
  }

  /** How many corrections could be told what they correct. */
  int corrections() {
    return corrections;
  }

  /** Words that were said and then put right. */
  Set<Integer> replacedWords() {
    Set<Integer> all = new TreeSet<>();
    for (Statement statement : replaced) {
      statement.findings.forEach(found -> found.match().addTo(all));
      statement.parts.forEach(part -> part.addTo(all));
      all.addAll(statement.sideWords);
      if (statement.denier >= 0) {
        all.add(statement.denier);
      }
    }
    return all;
  }

  private void deny(WordItem item) {
    // "Kidney on the left, enlarged, right one, not": it is the right one that is not.
    boolean ofSide =
        now.findings.isEmpty() && now.parts.isEmpty() && now.denier < 0 && endsChunk(at + 1);
    if (!now.findings.isEmpty() || behindComma && !now.isEmpty() && !ofSide) {
      next();
    }
    List<String> said = words.subList(item.from(), item.to());
    // "Nor the spleen", "neither's the spleen"
    if (lexicon.isListed("alike", said.stream().map(LayLexicon::plain).toList())) {
      now.alike = item.from();
    }
    now.denier = item.from();
    now.deniesPart = now.parts.isEmpty();
  }

  // Sides

  private void side(WordItem item) {
    Set<Side> said = item.sides();
    boolean joined =
        isJoinedToSide() && !(said.equals(now.sides) && isFollowedBy(WordItem.Kind.PART));
    boolean anew = !now.sides.isEmpty() && !joined && !(now.sides.equals(said));
    boolean says = !now.findings.isEmpty() || now.denier >= 0 || !now.parts.isEmpty();
    // "Left, eleven millimetres, kidneys not enlarged on either side": both of these.
    int chunk = breaks.from(item.from());
    if (anew
        && said.size() == 2
        && now.parts.stream().anyMatch(part -> part.from() >= chunk)
        && !now.findings.isEmpty()
        && now.findings.stream().allMatch(found -> found.match().from() >= chunk)
        && now.sideWords.stream().allMatch(word -> word < chunk)) {
      now.sides.clear();
      now.sideWords.clear();
      anew = false;
    }
    if (anew && says || !joined && !now.findings.isEmpty() && leads(item)) {
      next();
    } else if (anew && now.corrects) {
      now.wavers = true;
      next();
    } else if (anew && isOfOther()) {
      now.sides.clear();
      now.sideWords.clear();
    }
    now.sides.addAll(said);
    for (int word = item.from(); word < item.to(); word++) {
      now.sideWords.add(word);
    }
    if (said.size() == 2 || joined) {
      shareBack();
    }
  }

  // "Holding the left one shut, right nostril patent": what nobody knows was said of the other
  // side.
  private boolean isOfOther() {
    for (int i = at - 1; i >= 0 && items.get(i).kind() != WordItem.Kind.SIDE; i--) {
      if (items.get(i).kind() == WordItem.Kind.UNKNOWN) {
        return behindComma;
      }
    }
    return false;
  }

  // "The left's gunky, the other one's clean."
  private void other(WordItem item) {
    next();
    Statement before = now.topicOf;
    while (before != null && before.sides.isEmpty()) {
      before = before.topicOf;
    }
    if (before != null && before.sides.size() == 1) {
      now.sides.add(before.sides.iterator().next().other());
      for (int word = item.from(); word < item.to(); word++) {
        now.sideWords.add(word);
      }
    }
  }

  /** "Left arm hanging, grasp's weak on that side too" */
  static boolean isThatSide(List<String> words, WordItem item) {
    return item.kind() != WordItem.Kind.SIDE
        && words.get(item.to() - 1).equals("side")
        && item.to() >= 2
        && Set.of("that", "this", "same").contains(words.get(item.to() - 2));
  }

  private void sideOfBefore(WordItem item) {
    Statement before = now;
    while (before != null && before.sides.isEmpty()) {
      before = before.topicOf;
    }
    if (now.sides.isEmpty() && before != null && before.sides.size() == 1) {
      now.sides.addAll(before.sides);
      for (int word = item.from(); word < item.to(); word++) {
        now.sideWords.add(word);
      }
    }
  }

  // "Barlow negative, ortolani negative, both sides": said of all that had no side yet.
  private void shareBack() {
    if (now.sides.size() < 2 || now.findings.isEmpty() && !now.parts.isEmpty()) {
      return;
    }
    for (int i = statements.size() - 1; i >= 0; i--) {
      Statement earlier = statements.get(i);
      if (!earlier.sides.isEmpty() || earlier.findings.isEmpty()) {
        return;
      }
      earlier.sides.addAll(now.sides);
    }
  }

  private boolean isJoinedToSide() {
    boolean limb = false;
    boolean and = false;
    for (int i = at - 1; i >= 0; i--) {
      WordItem before = items.get(i);
      if (before.kind() == WordItem.Kind.SIDE) {
        return !limb || and && !now.sides.isEmpty() && isLonely();
      }
      // "On the right hand and on the left"
      if (before.kind() == WordItem.Kind.PART && and && !limb) {
        limb = true;
        continue;
      }
      and |= before.kind() == WordItem.Kind.AND;
      boolean joins =
          before.kind() == WordItem.Kind.AND
              || before.kind() == WordItem.Kind.OR
              || before.isEmpty();
      if (!joins) {
        return false;
      }
    }
    return false;
  }

  // Whether the side ends its stretch, and what comes next is not said of it.
  private boolean isLonely() {
    if (!endsChunk(at + 1)) {
      return false;
    }
    int next = at + 1;
    while (next < items.size()
        && (items.get(next).isEmpty() || items.get(next).kind() == WordItem.Kind.COMMA)) {
      next++;
    }
    return next == items.size()
        || items.get(next).kind() != WordItem.Kind.FINDING
            && items.get(next).kind() != WordItem.Kind.NOT;
  }

  // Whether a side begins something new: it stands before a structure or a finding of its own and
  // not behind a preposition, or before "one".
  private boolean leads(WordItem side) {
    String behind = side.to() < words.size() ? words.get(side.to()) : ",";
    int before = side.from() - 1;
    while (before >= 0 && lexicon.isListed("pointing", words.get(before))) {
      before--;
    }
    // "Negative on both her hips": some terms for both begin with it.
    boolean preposition =
        lexicon.isListed("preposition", words.get(side.from()))
            || before >= 0 && lexicon.isListed("preposition", words.get(before));
    Optional<WordItem> following = following(at + 1);
    boolean lonely = endsChunk(at + 1);
    if (lonely) {
      // "Ortolani negative, then the right, Barlow negative"
      return behindComma
          && lexicon.says("next-side", words.subList(breaks.from(side.from()), side.from()));
    }
    if (behind.equals("one") || behind.equals("side") && !preposition) {
      return true;
    }
    if (preposition) {
      return behindComma
          && following.map(item -> item.kind() == WordItem.Kind.FINDING).orElse(false);
    }
    if (following.isEmpty()) {
      return false;
    }
    WordItem next = following.get();
    if (next.kind() == WordItem.Kind.FINDING) {
      return behindComma || !takesTurns(side);
    }
    if (next.kind() == WordItem.Kind.PART) {
      // "Grasp weak right hand": it is the hand's.
      if (now.sides.isEmpty() && next.from() == side.to() && isLimb(next)) {
        return false;
      }
      // "Weak on the right, and that right arm": the arm is spoken of anew.
      // "Undescended, right testis descended": it has a finding of its own.
      return now.allOwnParts()
          || !fits(next.match())
          || behindComma && (!now.sides.isEmpty() || hasFinding(next));
    }
    return behindComma || next.kind() == WordItem.Kind.NOT;
  }

  private boolean hasFinding(WordItem part) {
    for (int i = items.indexOf(part) + 1; i < items.size(); i++) {
      WordItem.Kind kind = items.get(i).kind();
      if (kind == WordItem.Kind.FINDING || kind == WordItem.Kind.NOT) {
        return true;
      }
      if (!items.get(i).isEmpty()) {
        return false;
      }
    }
    return false;
  }

  // "Barlow positive right negative left": each side stands behind its finding.
  private boolean takesTurns(WordItem side) {
    if (!now.sides.isEmpty() || at == 0 || items.get(at - 1).kind() != WordItem.Kind.FINDING) {
      return false;
    }
    for (int i = at + 2; i < items.size(); i++) {
      if (items.get(i).kind() == WordItem.Kind.SIDE) {
        return items.subList(at + 2, i).stream().allMatch(WordItem::isEmpty) && endsChunk(i + 1);
      }
    }
    return false;
  }

  private boolean endsChunk(int from) {
    for (int i = from; i < items.size(); i++) {
      WordItem item = items.get(i);
      boolean joins = item.isEmpty() || item.kind() == WordItem.Kind.SIDE;
      boolean joinsSides =
          (item.kind() == WordItem.Kind.AND || item.kind() == WordItem.Kind.OR)
              && i + 1 < items.size()
              && items.get(i + 1).kind() == WordItem.Kind.SIDE;
      if (item.kind() == WordItem.Kind.COMMA || item.kind() == WordItem.Kind.TURN) {
        return true;
      }
      if (!joins && !joinsSides) {
        return item.kind() == WordItem.Kind.AND;
      }
    }
    return true;
  }

  // "Vernix in the folds and sole creases absent": the structure is joined to what was found.
  private boolean isBehindFinding() {
    return lastJoint() == WordItem.Kind.AND
        && items.subList(0, at).stream()
            .filter(item -> !item.isEmpty() && item.kind() != WordItem.Kind.AND)
            .reduce((one, other) -> other)
            .filter(item -> item.kind() == WordItem.Kind.FINDING)
            .isPresent();
  }

  private boolean isFollowedBy(WordItem.Kind kind) {
    return following(at + 1).filter(item -> item.kind() == kind).isPresent();
  }

  // "It's well formed, and so is the left"
  private boolean isOfOtherSide() {
    WordItem.Kind joint = lastJoint();
    return isFollowedBy(WordItem.Kind.SIDE)
        && (joint == WordItem.Kind.AND || joint == WordItem.Kind.COMMA)
        && words.get(items.get(at).from()).equals("so");
  }

  private Optional<WordItem> following(int from) {
    for (int i = from; i < items.size(); i++) {
      if (!items.get(i).isEmpty()) {
        return Optional.of(items.get(i)).filter(item -> item.kind() != WordItem.Kind.COMMA);
      }
    }
    return Optional.empty();
  }

  // Structures

  private void part(WordItem item) {
    TermMatch part = item.match();
    // "A murmur under the left clavicle"
    if (!now.findings.isEmpty() && isBehind("next-to", item) && !isPlace(part)) {
      return;
    }
    // "The swelling goes right down to the nape": how far it reaches.
    if (!now.findings.isEmpty() && !behindComma && isReached(item) && !isPlace(part)) {
      return;
    }
    // "Brachials good in both arms", "femorals good in both groins": nothing is told of these.
    if (isWhereFound(item)) {
      part.senses().stream()
          .filter(sense -> sense.pair() && now.sides.isEmpty())
          .findFirst()
          .ifPresent(sense -> now.sides.addAll(EnumSet.allOf(Side.class)));
      return;
    }
    // "Grasp weak right hand, good left": of the grasp.
    if (now.sideWords.contains(item.from() - 1) && isLimb(item)) {
      return;
    }
    // "A pearl on the palate": it is not the palate that is spoken of.
    if (!now.findings.isEmpty()
        && !behindComma
        && isBehindPreposition(item)
        && !fits(part)
        && now.findings.stream().noneMatch(found -> found.match().isBound())) {
      return;
    }
    // "Red reflex present, eyes without discharge": a place has no finding of its own.
    boolean ownFinding =
        (behindComma || isBehindFinding())
            && !now.findings.isEmpty()
            && following(at + 1)
                .filter(
                    next ->
                        next.kind() == WordItem.Kind.FINDING || next.kind() == WordItem.Kind.NOT)
                .isPresent();
    boolean place = isPlace(part) && !ownFinding;
    if (!place && !now.findings.isEmpty()) {
      boolean stranger = now.parts.isEmpty() && !fits(part) || now.allOwnParts();
      boolean needsPart =
          now.findings.stream().allMatch(found -> found.match().isBound())
              && now.topicOf == null
              && now.findings.stream().noneMatch(this::isExclaimed);
      // "Six toes" is one thing, and of the foot before it.
      boolean whole = isBehindPreposition(item) || isCounted(part);
      boolean told = !behindComma && whole && fits(part);
      if (stranger && !told || behindComma && !(needsPart && fits(part))) {
        boolean joined = lastJoint() == WordItem.Kind.AND;
        int denier = lastJoint() == WordItem.Kind.OR ? now.denier : -1;
        next();
        // "Can't feel the liver or the spleen being big": denied of both.
        now.denier = denier;
        now.deniesPart = false;
        // "Normal hands and feet", "rooting's there and stepping"
        if (joined && following(at + 1).isEmpty()) {
          now.alike = item.from();
        }
      }
    } else if (!place && behindComma && now.denier >= 0 && now.parts.isEmpty()) {
      next();
    }
    // "In the right eye i don't see the red reflex": what is denied stands behind where.
    if (now.denier >= 0 && !now.deniesPart && now.findings.isEmpty()) {
      now.deniesPart = true;
    }
    now.ofOne |= isOneOf(item);
    // "No grasp in the left hand, and that arm hardly moves"
    if (now.sides.isEmpty() && item.from() > 0 && words.get(item.from() - 1).equals("that")) {
      sideOfBefore(WordItem.of(WordItem.Kind.FILLER, item.from() - 1, item.from()));
    }
    Set<String> steps = part.steps(Sense.Kind.PART);
    boolean itsOwn =
        now.parts.isEmpty()
            && now.findings.stream()
                .flatMap(found -> found.match().senses().stream())
                .anyMatch(sense -> steps.contains(sense.step()));
    boolean onlyPlace = place && !itsOwn && (!now.parts.isEmpty() || !now.findings.isEmpty());
    now.parts.add(onlyPlace ? part.only(Sense.Kind.PLACE) : part);
  }

  // "Left foot has six toes, an extra digit there": the number needs what it counts.
  private boolean isCounted(TermMatch part) {
    return at > 0
        && items.get(at - 1).kind() == WordItem.Kind.FINDING
        && lexicon.isListed("count", words.get(part.from() - 1));
  }

  // "One of his testicles"
  private boolean isOneOf(WordItem item) {
    int before = item.from() - 1;
    while (before >= 0 && lexicon.isListed("determiner", words.get(before))) {
      before--;
    }
    return before >= 1
        && words.get(before).equals("of")
        && Set.of("one", "either").contains(words.get(before - 1));
  }

  private boolean isBehindPreposition(WordItem item) {
    return isBehind("preposition", item);
  }

  private boolean isWhereFound(WordItem item) {
    Set<String> named = now.partSteps();
    return now.allOwnParts()
        && !behindComma
        && isBehindPreposition(item)
        && named.stream().allMatch(step -> lexicon.isStepListed("felt-in-limb", step))
        && item.match().steps(Sense.Kind.PART).stream()
            .noneMatch(step -> named.contains(step) || isFoundLater(step))
        && now.findings.stream()
            .allMatch(
                found ->
                    found.match().isBound()
                        && found.match().steps(Sense.Kind.VALUE).stream()
                            .anyMatch(named::contains));
  }

  // A limb at the end of a stretch that has named something found there.
  private boolean isLimb(WordItem item) {
    Set<String> limb = item.match().steps(Sense.Kind.PART);
    return now.allOwnParts()
        && !behindComma
        && breaks.at(item.to())
        && now.partSteps().stream().noneMatch(limb::contains)
        && now.partSteps().stream()
            .anyMatch(step -> limb.stream().anyMatch(one -> lexicon.near(one, step)))
        && now.findings.stream().allMatch(found -> found.match().isBound());
  }

  private boolean isFoundLater(String step) {
    return items.subList(at + 1, items.size()).stream()
        .filter(item -> item.kind() == WordItem.Kind.FINDING)
        .anyMatch(item -> item.match().steps(Sense.Kind.VALUE).contains(step));
  }

  private boolean isReached(WordItem item) {
    int before = item.from() - 1;
    while (before >= 0 && lexicon.isListed("pointing", words.get(before))) {
      before--;
    }
    // "It goes from the brow to the nape"
    return before >= 1
        && (lexicon.isListed("reaches", words.subList(before - 1, before + 1))
            || words.get(before).equals("to")
                && words.subList(breaks.from(before), before).contains("from"));
  }

  private boolean isBehind(String prepositions, WordItem item) {
    int before = item.from() - 1;
    while (before >= 0
        && (lexicon.isListed("pointing", words.get(before)) || SIDES.contains(words.get(before)))) {
      before--;
    }
    return before >= 0 && lexicon.isListed(prepositions, words.get(before));
  }

  // "a bruise on the forehead", "caput over the vertex", "a red reflex in the left eye"
  private boolean isPlace(TermMatch part) {
    Set<String> places = part.steps(Sense.Kind.PLACE);
    return now.partSteps().stream().anyMatch(places::contains)
        || now.findings.stream()
            .flatMap(found -> found.match().senses().stream())
            .filter(sense -> !sense.bound())
            .anyMatch(sense -> lexicon.isAnywhere(sense.step()) || places.contains(sense.step()));
  }

  private boolean fits(TermMatch part) {
    Set<String> steps = part.steps(Sense.Kind.PART);
    steps.addAll(part.steps(Sense.Kind.PLACE));
    return now.findings.stream()
            .anyMatch(found -> found.match().isBound() && lexicon.denies(found.match(), words))
        || now.findings.stream()
            .flatMap(found -> found.match().senses().stream())
            .anyMatch(sense -> steps.contains(sense.step()) || lexicon.isAnywhere(sense.step()));
  }

  // "Lovely, now the palate": said of nothing that follows.
  private boolean isExclaimed(Statement.Found found) {
    return lexicon.isListed("filler", words.subList(found.match().from(), found.match().to()));
  }

  // Findings

  private void finding(WordItem item) {
    TermMatch match = item.match();
    boolean denies = lexicon.denies(match, words);
    if (denies && deniesNext()) {
      deny(item);
      return;
    }
    if (describes(match) || isSizeOf(item) || isPraiseOf(item)) {
      return;
    }
    // "Same both sides, and her knees are level", "… on the right, normal creases on both palms",
    // "… on the right, no hernias in the groins".
    boolean ofBoth = now.sides.size() == 1 && isOfBoth(match);
    if (beginsAnew(match) || hasOwnSubject(match) || (now.same >= 0 || ofBoth) && behindComma) {
      next();
    }
    // "Strong cry, nothing wrong with the lungs": what needs a structure begins anew.
    if (behindComma
        && now.parts.isEmpty()
        && now.sides.isEmpty()
        && now.denier < 0
        && match.isBound()
        && now.findings.stream().anyMatch(found -> !found.match().isBound())) {
      next();
    }
    // "Positive on the right, sorry, on the left, and it is negative on the right": what was put
    // right is said.
    if (now.corrects && now.findings.isEmpty() && !now.sides.isEmpty() && hasOwnSide()) {
      next();
    }
    // "Reduced left, clear right": each with the side behind it.
    if (!now.findings.isEmpty()
        && (!now.sides.isEmpty() || behindComma)
        && now.denier < 0
        && (hasOwnSide() || isOfAnotherSide())) {
      next();
    }
    boolean denied = now.denier >= 0;
    boolean unclear = false;
    if (denied && !now.findings.isEmpty()) {
      Reach reach = reach(match);
      denied = reach != Reach.ENDED;
      unclear = reach == Reach.UNCLEAR;
      if (reach == Reach.ENDED) {
        Statement before = now;
        next();
        if (!before.parts.isEmpty()) {
          now.topicOf = before;
        }
      }
    } else if (denied && behindComma) {
      unclear = true;
    }
    now.findings.add(new Statement.Found(match, denied, now.denier, unclear));
    // "no dimples or hairy patches" where "no dimples" is a term of its own
    if (denies && now.denier < 0 && lexicon.isNormal(match)) {
      now.denier = item.from();
    }
  }

  // "With her feet on the blanket she's stepping": it needs no structure.
  private boolean hasOwnSubject(TermMatch match) {
    return match.words() > 1
        && lexicon.isListed("subject", words.get(match.from()))
        && now.denier < 0
        && now.sides.isEmpty()
        && !now.parts.isEmpty()
        && match.senses().stream().noneMatch(Sense::bound)
        && match.senses().stream()
            .noneMatch(
                sense -> now.parts.stream().anyMatch(part -> lexicon.isNear(part, sense.step())));
  }

  private boolean isOfBoth(TermMatch match) {
    List<String> said = words.subList(match.from(), match.to());
    return lexicon.says("both", said)
        || !now.findings.isEmpty()
            && (lexicon.says("of-both", said)
                || match.steps(Sense.Kind.VALUE).stream()
                    .anyMatch(step -> lexicon.namesPair(step, said)));
  }

  // "Soft spot sunken and he's lethargic", "sutures normal, can't feel the spleen": a finding of
  // something else than the structures before it, or of the one right behind it.
  private boolean beginsAnew(TermMatch match) {
    if (now.parts.isEmpty() || now.denier >= 0) {
      return false;
    }
    boolean joined = lastJoint() == WordItem.Kind.AND;
    Set<String> named = now.partSteps();
    boolean free =
        match.senses().stream().anyMatch(sense -> !sense.bound())
            && !lexicon.says("good", words.subList(match.from(), match.to()))
            && match.senses().stream()
                .noneMatch(sense -> sense.bound() && named.contains(sense.step()));
    boolean related =
        match.senses().stream()
            .anyMatch(
                sense ->
                    lexicon.isAnywhere(sense.step())
                        || now.parts.stream().anyMatch(part -> lexicon.isNear(part, sense.step())));
    if (free && !related && (behindComma || joined && !now.findings.isEmpty())) {
      return true;
    }
    Optional<WordItem> behind = followingPart();
    return behindComma
        && !now.findings.isEmpty()
        && behind
            .map(
                part ->
                    match.steps(Sense.Kind.VALUE).stream()
                            .anyMatch(part.match().steps(Sense.Kind.PART)::contains)
                        && now.parts.get(now.parts.size() - 1).steps(Sense.Kind.PART).stream()
                            .noneMatch(part.match().steps(Sense.Kind.PART)::contains))
            .orElse(false);
  }

  // "He's not moving the left arm": a side may stand before it.
  private Optional<WordItem> followingPart() {
    return items.subList(at + 1, items.size()).stream()
        .filter(item -> !item.isEmpty() && item.kind() != WordItem.Kind.SIDE)
        .findFirst()
        .filter(item -> item.kind() == WordItem.Kind.PART);
  }

  // What joins this item to the one before it, little words aside.
  private WordItem.Kind lastJoint() {
    for (int i = at - 1; i >= 0; i--) {
      if (!items.get(i).isEmpty()) {
        return items.get(i).kind();
      }
    }
    return null;
  }

  private boolean hasOwnSide() {
    if (isCompared()) {
      return false;
    }
    for (int i = at + 1; i < items.size(); i++) {
      WordItem item = items.get(i);
      if (item.kind() == WordItem.Kind.SIDE) {
        return endsChunk(i + 1);
      }
      // "Negative, I'm glad to say, on the left"
      if (item.kind() == WordItem.Kind.COMMA && isAsideBehind(i)) {
        while (items.get(i + 1).isEmpty()) {
          i++;
        }
        i++;
      } else if (!item.isEmpty()) {
        return false;
      }
    }
    return false;
  }

  // A stretch that carries nothing, with a lone side in the next.
  private boolean isAsideBehind(int comma) {
    int end = comma + 1;
    while (end < items.size() && items.get(end).isEmpty()) {
      end++;
    }
    int side = end + 1;
    while (side < items.size() && items.get(side).isEmpty()) {
      side++;
    }
    return end > comma + 1
        && side < items.size()
        && items.get(end).kind() == WordItem.Kind.COMMA
        && items.get(side).kind() == WordItem.Kind.SIDE
        && lexicon.isListed("preposition", words.get(items.get(end).to()));
  }

  // "It doesn't open like the right one": it is said of the other.
  private boolean isCompared() {
    return lexicon.isListed("like", words.get(items.get(at).to() - 1));
  }

  // "Lids swollen both sides, and a coloboma in the left eye": the side behind it is not the one
  // said before.
  private boolean isOfAnotherSide() {
    if (now.sides.isEmpty() || isCompared() || !behindComma && lastJoint() != WordItem.Kind.AND) {
      return false;
    }
    int side = at + 1;
    while (side < items.size() && items.get(side).isEmpty()) {
      side++;
    }
    if (side == items.size()
        || items.get(side).kind() != WordItem.Kind.SIDE
        || items.get(side).sides().equals(now.sides)) {
      return false;
    }
    // "A bleed, the right eye's clear": the side of what is found there.
    int behind = side + 1;
    while (behind < items.size()
        && (items.get(behind).isEmpty() || items.get(behind).kind() == WordItem.Kind.PART)) {
      behind++;
    }
    return behind == items.size()
        || items.get(behind).kind() != WordItem.Kind.FINDING
            && items.get(behind).kind() != WordItem.Kind.NOT;
  }

  private enum Reach {
    DENIED,
    ENDED,
    UNCLEAR
  }

  // "no caput or bruising": denied; "no recession, comfortable": not; "no crepitus, a step": who
  // knows, but for the article.
  private Reach reach(TermMatch match) {
    if (lexicon.isNormal(match)) {
      return Reach.ENDED;
    }
    WordItem.Kind joint = null;
    boolean article = false;
    for (int i = at - 1; i >= 0 && items.get(i).kind() != WordItem.Kind.FINDING; i--) {
      WordItem between = items.get(i);
      boolean joins =
          between.kind() == WordItem.Kind.OR
              || between.kind() == WordItem.Kind.AND
              || between.kind() == WordItem.Kind.COMMA;
      if (joins && joint != WordItem.Kind.OR && joint != WordItem.Kind.AND) {
        joint = between.kind();
      }
      String word = words.get(between.from());
      article |= lexicon.isListed("begins-anew", word);
    }
    if (joint == WordItem.Kind.OR) {
      return Reach.DENIED;
    }
    if (joint == null) {
      return Reach.UNCLEAR;
    }
    return article ? Reach.ENDED : orFollows() ? Reach.DENIED : Reach.UNCLEAR;
  }

  private boolean orFollows() {
    for (int i = at + 1; i < items.size(); i++) {
      WordItem item = items.get(i);
      if (item.kind() == WordItem.Kind.OR) {
        return true;
      }
      if (item.kind() != WordItem.Kind.FINDING
          && item.kind() != WordItem.Kind.COMMA
          && !item.isEmpty()) {
        return false;
      }
    }
    return false;
  }

  // "can't feel any lumps" denies, "can't feel the spleen" is a finding
  private boolean deniesNext() {
    WordItem item = items.get(at);
    String first = words.get(item.from());
    String last = words.get(item.to() - 1);
    boolean verb =
        lexicon.isListed("tries", first)
            || first.equals("not") && (last.endsWith("ing") || last.equals("to"));
    Optional<WordItem> following = following(at + 1);
    return verb
        && following
            .map(
                next ->
                    next.kind() == WordItem.Kind.FINDING && !lexicon.denies(next.match(), words))
            .orElse(false);
  }

  // "little clear blisters": a word that would be a normal finding, but belongs to what was found
  private boolean describes(TermMatch match) {
    if (at + 1 >= items.size() || items.get(at + 1).kind() != WordItem.Kind.FINDING) {
      return false;
    }
    TermMatch next = items.get(at + 1).match();
    boolean behindPart = at > 0 && items.get(at - 1).kind() == WordItem.Kind.PART;
    return !behindPart
        && lexicon.isNormal(match)
        && next.senses().stream().anyMatch(sense -> !sense.bound())
        && next.senses().stream().noneMatch(lexicon::isNormal);
  }

  // "Head shape normal with a small caput": it is the caput that is small.
  private boolean isSizeOf(WordItem item) {
    List<String> said = words.subList(item.from(), item.to());
    boolean describes = lexicon.isListed("severity", said) || lexicon.isListed("neutral", said);
    return describes
        && item.match().isBound()
        && at + 1 < items.size()
        && items.get(at + 1).kind() == WordItem.Kind.FINDING
        && items.get(at + 1).match().senses().stream().anyMatch(sense -> !sense.bound())
        && !lexicon.isNormal(items.get(at + 1).match());
  }

  // "Good creases on the soles, both feet": it is the creases that are good.
  private boolean isPraiseOf(WordItem item) {
    List<String> said = words.subList(item.from(), item.to());
    boolean praises =
        lexicon.isListed("good", said)
            && lexicon.isListed("filler", said)
            && at + 1 < items.size()
            && items.get(at + 1).kind() == WordItem.Kind.FINDING;
    // "A braw red glow back at me from the left eye"
    boolean noun = item.from() > 0 && Set.of("a", "an").contains(words.get(item.from() - 1));
    return praises
        && (noun
            || (now.parts.isEmpty() || behindComma)
                && items.get(at + 1).match().words() > 1
                && items.get(at + 1).match().senses().stream().noneMatch(Sense::bound));
  }
}
