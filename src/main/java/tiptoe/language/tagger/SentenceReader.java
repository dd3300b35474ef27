package tiptoe.language.tagger;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import tiptoe.language.SecondReading.Claim;
import tiptoe.protocol.Norm;
import tiptoe.protocol.Protocol;
import tiptoe.protocol.Side;
import tiptoe.protocol.Step;
import tiptoe.protocol.Value;

/**
 * Reads one sentence word by word: what each word is, which words belong together, and what they
 * state. A structure stays the topic until another is named, a side until another is said; a denial
 * reaches to a turn, to what is normal, or to where a new statement begins (after Chapman et al.
 * 2001 and Harkema et al. 2009, see DEVELOPERS.md).
 */
final class SentenceReader {
  private static final Set<String> SIDES = Set.of("left", "right");

  private final LayLexicon lexicon;
  private final Protocol protocol;
  private final Set<String> deniable;
  private final List<String> words;
  private final Breaks breaks;
  private final List<WordItem> items;
  private final List<Statement> statements = new ArrayList<>();
  private Statement now = new Statement(null);
  private int at;
  private boolean behindComma;
  private int corrections;
  private final Set<Integer> deniedAside = new TreeSet<>();
  private final Set<String> deniedValues = new TreeSet<>();
  private final List<Statement> replaced = new ArrayList<>();

  /**
   * @param words with {@code ,} where the typed text has a break
   * @param items what the words are, in their order
   */
  SentenceReader(
      LayLexicon lexicon,
      Protocol protocol,
      Set<String> deniable,
      List<String> words,
      List<WordItem> items) {
    this.lexicon = lexicon;
    this.protocol = protocol;
    this.deniable = deniable;
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
          if (now.denier >= 0 && now.findings.isEmpty()) {
            next();
          }
        }
        case TURN -> next();
        case CORRECTION -> {
          next();
          now.corrects = true;
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
            if (!now.findings.isEmpty()
                && following(at + 1).filter(i -> i.kind() == WordItem.Kind.PART).isPresent()) {
              next();
            }
            now.alike = item.from();
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
    correct();
    return statements;
  }

  private void next() {
    if (!now.isEmpty()) {
      statements.add(now);
      now = new Statement(now);
    }
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
      if (correction.findings.isEmpty() && !correction.sides.isEmpty() && samePart) {
        before.sides.clear();
        before.sides.addAll(correction.sides);
        before.sideWords.addAll(correction.sideWords);
        if (before.parts.isEmpty()) {
          before.parts.addAll(correction.parts);
        } else {
          correction.parts.forEach(part -> addWords(part, before.sideWords));
        }
        correction.takenBack = true;
        corrections++;
      } else if (!correction.findings.isEmpty() && before.findings.size() == 1 && samePart) {
        before.takenBack = true;
        if (correction.sides.isEmpty()) {
          correction.sides.addAll(before.sides);
        }
        if (correction.parts.isEmpty()) {
          correction.parts.addAll(before.parts);
        }
        replaced.add(before);
        corrections++;
      } else {
        before.takenBack = true;
        correction.takenBack = true;
      }
    }
  }

  /** Words that deny what no answer of the protocol says: "that isn't a bruise". */
  Set<Integer> deniedAside() {
    return deniedAside;
  }

  /** {@code step value} of what these deny. */
  Set<String> deniedValues() {
    return deniedValues;
  }

  /** How many corrections could be told what they correct. */
  int corrections() {
    return corrections;
  }

  /** Words that were said and then put right. */
  Set<Integer> replacedWords() {
    Set<Integer> all = new TreeSet<>();
    for (Statement statement : replaced) {
      statement.findings.forEach(found -> addWords(found.match(), all));
      statement.parts.forEach(part -> addWords(part, all));
      all.addAll(statement.sideWords);
      if (statement.denier >= 0) {
        all.add(statement.denier);
      }
    }
    return all;
  }

  private void deny(WordItem item) {
    if (!now.findings.isEmpty() || behindComma && !now.isEmpty()) {
      next();
    }
    if (lexicon.isListed("alike", words.subList(item.from(), item.to()))) {
      now.alike = item.from();
    }
    now.denier = item.from();
    now.deniesPart = now.parts.isEmpty();
  }

  // Sides

  private void side(WordItem item) {
    Set<Side> said = item.sides();
    boolean joined = isJoinedToSide();
    boolean anew = !now.sides.isEmpty() && !joined && !(now.sides.equals(said));
    boolean says = !now.findings.isEmpty() || now.denier >= 0 || !now.parts.isEmpty();
    if (anew && says || !joined && !now.findings.isEmpty() && leads(item)) {
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
    for (int i = at - 1; i >= 0; i--) {
      WordItem before = items.get(i);
      if (before.kind() == WordItem.Kind.SIDE) {
        return true;
      }
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

  // Whether a side begins something new: it stands before a structure or a finding of its own and
  // not behind a preposition, or before "one".
  private boolean leads(WordItem side) {
    String behind = side.to() < words.size() ? words.get(side.to()) : ",";
    int before = side.from() - 1;
    while (before >= 0 && lexicon.isListed("pointing", words.get(before))) {
      before--;
    }
    boolean preposition = before >= 0 && lexicon.isListed("preposition", words.get(before));
    Optional<WordItem> following = following(at + 1);
    boolean lonely = endsChunk(at + 1);
    if (lonely) {
      return false;
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
      if (items.get(i).kind() == WordItem.Kind.FINDING) {
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
    // "A pearl on the palate": it is not the palate that is spoken of.
    if (!now.findings.isEmpty()
        && !behindComma
        && isBehindPreposition(item)
        && !fits(part)
        && now.findings.stream().noneMatch(this::isBound)) {
      return;
    }
    // "Red reflex present, eyes without discharge": a place has no finding of its own.
    boolean ownFinding =
        behindComma
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
          now.findings.stream().allMatch(this::isBound)
              && now.topicOf == null
              && now.findings.stream().noneMatch(this::isExclaimed);
      boolean told = !behindComma && isBehindPreposition(item) && fits(part);
      if (stranger && !told || behindComma && !(needsPart && fits(part))) {
        boolean joined = lastJoint() == WordItem.Kind.AND;
        next();
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
    Set<String> steps = part.steps(Sense.Kind.PART);
    boolean itsOwn =
        now.parts.isEmpty()
            && now.findings.stream()
                .flatMap(found -> found.match().senses().stream())
                .anyMatch(sense -> steps.contains(sense.step()));
    boolean onlyPlace = place && !itsOwn && (!now.parts.isEmpty() || !now.findings.isEmpty());
    now.parts.add(onlyPlace ? part.only(Sense.Kind.PLACE) : part);
  }

  private boolean isBehindPreposition(WordItem item) {
    return isBehind("preposition", item);
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
            .anyMatch(found -> isBound(found) && lexicon.denies(found.match(), words))
        || now.findings.stream()
            .flatMap(found -> found.match().senses().stream())
            .anyMatch(sense -> steps.contains(sense.step()) || lexicon.isAnywhere(sense.step()));
  }

  // "Lovely, now the palate": said of nothing that follows.
  private boolean isExclaimed(Statement.Found found) {
    return lexicon.isListed("filler", words.subList(found.match().from(), found.match().to()));
  }

  private boolean isBound(Statement.Found found) {
    return isBound(found.match());
  }

  private static boolean isBound(TermMatch match) {
    return match.senses().stream().allMatch(Sense::bound);
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
    if (beginsAnew(match)) {
      next();
    }
    // "Strong cry, nothing wrong with the lungs": what needs a structure begins anew.
    if (behindComma
        && now.parts.isEmpty()
        && now.sides.isEmpty()
        && now.denier < 0
        && isBound(match)
        && now.findings.stream().anyMatch(found -> !isBound(found))) {
      next();
    }
    // "Reduced left, clear right": each with the side behind it.
    if (!now.findings.isEmpty()
        && (!now.sides.isEmpty() || behindComma)
        && now.denier < 0
        && hasOwnSide()) {
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
    if (denies && now.denier < 0 && isNormal(match)) {
      now.denier = item.from();
    }
  }

  // "Soft spot sunken and he's lethargic", "sutures normal, can't feel the spleen": a finding of
  // something else than the structures before it, or of the one right behind it.
  private boolean beginsAnew(TermMatch match) {
    if (now.parts.isEmpty() || now.denier >= 0) {
      return false;
    }
    boolean joined = lastJoint() == WordItem.Kind.AND;
    boolean free = match.senses().stream().noneMatch(Sense::bound);
    boolean related =
        match.senses().stream()
            .anyMatch(
                sense ->
                    lexicon.isAnywhere(sense.step())
                        || now.parts.stream().anyMatch(part -> isNear(part, sense.step())));
    if (free && !related && (behindComma || joined && !now.findings.isEmpty())) {
      return true;
    }
    Optional<WordItem> behind = following(at + 1).filter(next -> next.kind() == WordItem.Kind.PART);
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
    for (int i = at + 1; i < items.size(); i++) {
      WordItem item = items.get(i);
      if (item.kind() == WordItem.Kind.SIDE) {
        return endsChunk(i + 1);
      }
      if (!item.isEmpty()) {
        return false;
      }
    }
    return false;
  }

  private enum Reach {
    DENIED,
    ENDED,
    UNCLEAR
  }

  // "no caput or bruising": denied; "no recession, comfortable": not; "no crepitus, a step": who
  // knows, but for the article.
  private Reach reach(TermMatch match) {
    if (isNormal(match)) {
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
        && isNormal(match)
        && next.senses().stream().anyMatch(sense -> !sense.bound())
        && next.senses().stream().noneMatch(this::isNormal);
  }

  // "Head shape normal with a small caput": it is the caput that is small.
  private boolean isSizeOf(WordItem item) {
    List<String> said = words.subList(item.from(), item.to());
    boolean describes = lexicon.isListed("severity", said) || lexicon.isListed("neutral", said);
    return describes
        && isBound(item.match())
        && at + 1 < items.size()
        && items.get(at + 1).kind() == WordItem.Kind.FINDING
        && items.get(at + 1).match().senses().stream().anyMatch(sense -> !sense.bound())
        && !isNormal(items.get(at + 1).match());
  }

  // "Good creases on the soles, both feet": it is the creases that are good.
  private boolean isPraiseOf(WordItem item) {
    List<String> said = words.subList(item.from(), item.to());
    return lexicon.isListed("good", said)
        && lexicon.isListed("filler", said)
        && now.parts.isEmpty()
        && at + 1 < items.size()
        && items.get(at + 1).kind() == WordItem.Kind.FINDING
        && items.get(at + 1).match().words() > 1
        && items.get(at + 1).match().senses().stream().noneMatch(Sense::bound);
  }

  private boolean isNormal(TermMatch match) {
    return match.senses().stream()
        .filter(sense -> sense.kind() == Sense.Kind.VALUE)
        .allMatch(this::isNormal);
  }

  private boolean isNormal(Sense sense) {
    return protocol.step(sense.step()).value(sense.value()).orElseThrow().norm() == Norm.NORMAL;
  }

  // What the statements come to

  /** What the statements claim; words that belong to a claim are told to the account. */
  List<Claim> claims(List<Statement> read) {
    List<Claim> claims = new ArrayList<>();
    for (Statement statement : read) {
      List<Claim> said = statement.same >= 0 ? same(statement, claims) : claims(statement);
      // What was taken back tells what its correction is about.
      claims.addAll(statement.takenBack ? List.of() : said);
    }
    return claims;
  }

  // "Left one's intact, and it's the same on the other side."
  private List<Claim> same(Statement statement, List<Claim> before) {
    Side last =
        before.stream()
            .map(Claim::side)
            .filter(side -> side != null)
            .reduce((a, b) -> b)
            .orElse(null);
    boolean other = lexicon.says("other", words);
    if (last == null || statement.sides.size() > 1 || statement.sides.isEmpty() && !other) {
      return List.of();
    }
    Side to = statement.sides.isEmpty() ? last.other() : statement.sides.iterator().next();
    Set<Integer> evidence = new TreeSet<>(statement.sideWords);
    evidence.add(statement.same);
    return before.stream()
        .filter(claim -> claim.side() == to.other())
        .filter(
            claim ->
                before.stream().noneMatch(c -> c.step().equals(claim.step()) && c.side() == to))
        .map(c -> new Claim(c.step(), to, c.value(), c.denied(), c.numbers(), evidence))
        .toList();
  }

  private List<Claim> claims(Statement statement) {
    List<Claim> claims = new ArrayList<>();
    Set<String> resolved = new LinkedHashSet<>();
    for (Statement.Found found : statement.findings) {
      if (isOfOther(statement, found) || isOfTopic(statement, found)) {
        if (isNormal(found.match())) {
          addWords(found.match(), deniedAside);
        }
        continue;
      }
      if (isComment(statement, found)) {
        addWords(found.match(), deniedAside);
        continue;
      }
      List<Sense> senses = resolve(statement, found.match(), resolved);
      for (Sense sense : senses) {
        List<Claim> made = claim(statement, found, sense);
        if (!made.isEmpty()) {
          resolved.add(sense.step());
          claims.addAll(made);
        }
      }
      if (senses.isEmpty() && lexicon.denies(found.match(), words)) {
        statement.denier = found.match().from();
        claims.addAll(absent(statement));
      }
    }
    if (statement.findings.isEmpty() && statement.parts.isEmpty()) {
      claims.addAll(denials(statement));
    }
    if (statement.findings.isEmpty() && statement.denier < 0 && statement.perceived >= 0) {
      claims.addAll(present(statement));
    }
    if (statement.findings.isEmpty() && !statement.parts.isEmpty() && statement.alike >= 0) {
      claims.addAll(alike(statement));
    }
    if (statement.findings.isEmpty()
        && statement.denier >= 0
        && statement.deniesPart
        && statement.alike < 0) {
      claims.addAll(absent(statement));
      resolved.addAll(statement.partSteps());
    }
    if (resolved.isEmpty() && !statement.parts.isEmpty()) {
      resolved.addAll(statement.partSteps());
    }
    statement.steps.addAll(resolved.isEmpty() ? statement.topicSteps() : resolved);
    return claims;
  }

  // "Hips stable, thigh creases equal": of what the protocol does not ask for.
  private boolean isOfOther(Statement statement, Statement.Found found) {
    int from = breaks.from(found.match().from());
    int to = breaks.to(found.match().to());
    return statement.parts.isEmpty()
        && isBound(found.match())
        && items.stream()
            .filter(item -> item.from() >= from && item.to() <= to)
            .anyMatch(item -> lexicon.isListed("elsewhere", words.subList(item.from(), item.to())));
  }

  // "Scalp's clear, no lumps": of what is spoken of, and not of the belly that may have them too.
  private boolean isOfTopic(Statement statement, Statement.Found found) {
    TermMatch match = found.match();
    List<String> thing = words.subList(match.from(), match.to());
    boolean things =
        lexicon.denies(match, words)
            ? lexicon.isListed("thing", thing.subList(1, thing.size()))
            : found.denied() && lexicon.isListed("thing", thing);
    Set<String> parts = statement.topicParts();
    Set<String> topic = parts.isEmpty() ? statement.topicSteps() : parts;
    return things
        && statement.parts.isEmpty()
        && !topic.isEmpty()
        && match.senses().stream()
            .noneMatch(sense -> topic.stream().anyMatch(step -> lexicon.near(step, sense.step())));
  }

  // "A stork mark, that's normal": said of what was found.
  private boolean isComment(Statement statement, Statement.Found found) {
    Statement topic = statement.topicOf;
    return topic != null
        && !found.denied()
        && statement.parts.isEmpty()
        && statement.sides.isEmpty()
        && lexicon.isListed("good", words.subList(found.match().from(), found.match().to()))
        && !topic.findings.isEmpty()
        && topic.findings.stream().allMatch(f -> !f.denied() && lexicon.isAbnormal(f.match()))
        && refersBack(found.match());
  }

  private boolean refersBack(TermMatch good) {
    return lexicon.says("said-of-it", words.subList(breaks.from(good.from()), good.from()));
  }

  /** The senses a finding has here: one for each structure it is about. */
  private List<Sense> resolve(Statement statement, TermMatch finding, Set<String> resolved) {
    if (statement.parts.isEmpty()) {
      List<Sense> free = finding.senses().stream().filter(sense -> !sense.bound()).toList();
      List<Sense> topical = forEach(statement.topicSteps(), finding);
      if (!free.isEmpty()) {
        // "Neck supple, no masses": of what is being spoken of, though the belly may have them too.
        // "No organomegaly" is of both organs.
        return topical.size() == 1 && distinct(free).size() == 1 ? topical : distinct(free);
      }
      List<Sense> here = forEach(resolved, finding);
      if (!here.isEmpty()) {
        return here;
      }
      List<Sense> same = forEach(statement.topicSteps(), finding);
      if (same.isEmpty()) {
        same = forEach(statement.topicParts(), finding);
      }
      return same.isEmpty() && finding.words() > 1 ? ofRegion(statement, finding) : same;
    }
    // "White reflex in the left, correction, white in the right pupil"
    List<Sense> corrected =
        statement.corrects ? forEach(statement.topicSteps(), finding) : List.of();
    if (!corrected.isEmpty()) {
      return corrected;
    }
    Optional<TermMatch> modified =
        statement.parts.stream()
            .filter(part -> part.from() == finding.to())
            .filter(part -> !matching(part.steps(Sense.Kind.PART), finding).isEmpty())
            .findFirst();
    List<Sense> found = new ArrayList<>();
    List<TermMatch> behind =
        modified
            .map(
                first ->
                    statement.parts.stream().filter(part -> part.from() >= first.from()).toList())
            .orElse(beside(statement, finding));
    for (TermMatch part : behind) {
      List<Sense> fitting = matching(part.steps(Sense.Kind.PART), finding);
      List<Sense> here = oneStep(fitting);
      if (here.isEmpty()) {
        here = oneStep(fitting.stream().filter(s -> !isLoose(part, s.step())).toList());
      }
      if (here.isEmpty()) {
        here = oneStep(fitting.stream().filter(s -> isTopic(statement, s.step())).toList());
      }
      List<Sense> firm = fitting.stream().filter(s -> !isLoose(part, s.step())).toList();
      if (here.isEmpty() && isOfAll(finding, firm)) {
        here = distinct(firm);
      }
      here.stream().filter(sense -> !found.contains(sense)).forEach(found::add);
    }
    if (!found.isEmpty()) {
      return found;
    }
    List<Sense> placed =
        finding.senses().stream()
            .filter(sense -> !sense.bound())
            .filter(
                sense ->
                    lexicon.isAnywhere(sense.step())
                        || statement.parts.stream().allMatch(part -> isNear(part, sense.step())))
            .toList();
    return oneStep(placed);
  }

  // "Both hands on the belly, sutures normal": what is named in its own stretch between breaks is
  // what it is said of, and what a bare list before that names; else the nearest before it.
  private List<TermMatch> beside(Statement statement, TermMatch finding) {
    List<TermMatch> parts = statement.parts;
    if (!isBound(finding)) {
      return parts;
    }
    int to = breaks.to(finding.to());
    int from = breaks.from(finding.from());
    boolean own = names(from, to);
    while (!own && from > 0 && !isNamedFor(parts, finding, from, to)) {
      to = from - 1;
      from = breaks.from(to);
    }
    if (!own && !isNamedFor(parts, finding, from, to)) {
      return parts;
    }
    while (from > 0 && isBareList(breaks.from(from - 1), from - 1)) {
      from = breaks.from(from - 1);
    }
    int begin = from;
    int end = to;
    return parts.stream().filter(part -> part.from() >= begin && part.to() <= end).toList();
  }

  private static boolean isNamedFor(List<TermMatch> parts, TermMatch finding, int from, int to) {
    return parts.stream()
        .filter(part -> part.from() >= from && part.to() <= to)
        .anyMatch(part -> !matching(part.steps(Sense.Kind.PART), finding).isEmpty());
  }

  private boolean names(int from, int to) {
    return items.stream()
        .filter(item -> item.from() >= from && item.to() <= to)
        .anyMatch(
            item ->
                item.kind() == WordItem.Kind.PART
                    && !item.match().steps(Sense.Kind.PART).isEmpty());
  }

  // "Hips, femorals, palate normal"
  private boolean isBareList(int from, int to) {
    return names(from, to)
        && items.stream()
            .filter(item -> item.from() >= from && item.to() <= to)
            .allMatch(
                item ->
                    item.kind() == WordItem.Kind.PART
                        || item.kind() == WordItem.Kind.SIDE
                        || item.kind() == WordItem.Kind.AND
                        || item.isEmpty()
                            && words.subList(item.from(), item.to()).stream()
                                .allMatch(word -> lexicon.isListed("pointing", word)));
  }

  // "No lumps in the neck, turns both ways": so much is said of nothing else there.
  private List<Sense> ofRegion(Statement statement, TermMatch finding) {
    return oneStep(
        finding.senses().stream()
            .filter(
                sense ->
                    statement.topicSteps().stream()
                        .anyMatch(step -> lexicon.near(step, sense.step())))
            .toList());
  }

  private static boolean isLoose(TermMatch part, String step) {
    return part.senses().stream()
        .filter(sense -> sense.kind() == Sense.Kind.PART && sense.step().equals(step))
        .allMatch(Sense::isLoose);
  }

  // "Ears look fine": of all that is said of ears, where none of it must be stated for itself.
  private boolean isOfAll(TermMatch finding, List<Sense> fitting) {
    return lexicon.isListed("good", words.subList(finding.from(), finding.to()))
        && fitting.stream().allMatch(this::isNormal)
        && fitting.stream().noneMatch(sense -> protocol.step(sense.step()).key());
  }

  // "Extra digit on the left hand, right hand normal": said of the same as before.
  private static boolean isTopic(Statement statement, String step) {
    return statement.topicSteps().contains(step);
  }

  private boolean isNear(TermMatch part, String step) {
    String region = protocol.step(step).region();
    return part.steps(Sense.Kind.PLACE).stream()
            .anyMatch(other -> other.equals(step) || lexicon.near(other, step))
        || part.steps(Sense.Kind.PART).stream()
            .anyMatch(other -> protocol.step(other).region().equals(region));
  }

  private static List<Sense> forEach(Set<String> steps, TermMatch finding) {
    List<Sense> senses = new ArrayList<>();
    for (String step : steps) {
      senses.addAll(oneStep(matching(Set.of(step), finding)));
    }
    return senses;
  }

  private static List<Sense> matching(Set<String> steps, TermMatch finding) {
    return finding.senses().stream()
        .filter(sense -> sense.kind() == Sense.Kind.VALUE && steps.contains(sense.step()))
        .toList();
  }

  // Several steps or values that the words fit equally well are no statement; words that are bound
  // to their structure lose against those that are not.
  private static List<Sense> oneStep(List<Sense> senses) {
    List<Sense> distinct = distinct(senses);
    if (distinct.size() > 1) {
      distinct = distinct(senses.stream().filter(sense -> !sense.bound()).toList());
    }
    return distinct.size() == 1 ? distinct : List.of();
  }

  private static List<Sense> distinct(List<Sense> senses) {
    List<Sense> distinct = new ArrayList<>();
    for (Sense sense : senses) {
      if (distinct.stream()
          .noneMatch(one -> one.step().equals(sense.step()) && one.value().equals(sense.value()))) {
        distinct.add(sense);
      }
    }
    return distinct;
  }

  private List<Claim> claim(Statement statement, Statement.Found found, Sense sense) {
    Step step = protocol.step(sense.step());
    Value value = step.value(sense.value()).orElseThrow();
    String stated = value.id();
    List<String> denied = List.of();
    // "I cannot bring it straight" denies what can be done, and that is no finding.
    boolean unable =
        found.denied()
            && lexicon.isListed("able", words.get(Math.max(0, found.match().from() - 1)));
    if (found.unclear() || unable && value.norm() != Norm.NORMAL) {
      return List.of();
    }
    if (found.denied()) {
      Optional<String> opposite = lexicon.opposite(step.id(), value.id());
      boolean abnormal = value.norm() != Norm.NORMAL;
      if (opposite.isPresent()) {
        if (isGraded(found.match())) {
          return List.of();
        }
        stated = opposite.get();
      } else if (abnormal && deniable.contains(step.id() + " " + value.id())) {
        stated = step.normal().orElseThrow().id();
        denied = List.of(value.id());
      } else {
        if (abnormal) {
          addWords(found.match(), deniedAside);
          deniedAside.add(found.denier());
          deniedValues.add(step.id() + " " + value.id());
        }
        return List.of();
      }
    }
    if (!found.denied() && value.norm() == Norm.NORMAL && lexicon.denies(found.match(), words)) {
      denied =
          lexicon
              .denied(step.id(), words.subList(found.match().from(), found.match().to()))
              .stream()
              .filter(id -> step.value(id).orElseThrow().norm() != Norm.NORMAL)
              .toList();
    }
    if (statement.sides.isEmpty() && statement.alike >= 0 && statement.topicOf != null) {
      statement.sides.addAll(
          statement.topicOf.sidesFor(statement.topicOf.steps.stream().findFirst().orElse("")));
    }
    boolean neither = found.denied() && words.get(found.denier()).equals("neither");
    if (statement.sides.isEmpty() && (neither || saysBoth(found.match()))) {
      statement.sides.addAll(List.of(Side.LEFT, Side.RIGHT));
    }
    return placed(statement, step, stated, denied, evidence(statement, found, step.id()));
  }

  // "Not strong" may be weak; only "not felt" is absent.
  private boolean isGraded(TermMatch match) {
    List<String> said = words.subList(match.from(), match.to());
    return (lexicon.isListed("good", said) || lexicon.isListed("strong", said))
        && !lexicon.isListed("seen", said);
  }

  // "five fingers on each hand"
  private boolean saysBoth(TermMatch match) {
    List<String> said = words.subList(match.from(), match.to());
    return lexicon.says("of-both", said) || lexicon.says("both", said);
  }

  // "Crepitus on the right, on the left no."
  private List<Claim> denials(Statement statement) {
    Statement topic = statement.topicOf;
    boolean other =
        topic != null
            && statement.sides.size() == 1
            && topic.sides.size() == 1
            && !topic.sides.equals(statement.sides);
    if (!other || statement.denier < 0) {
      return List.of();
    }
    List<Claim> claims = new ArrayList<>();
    for (Statement.Found found : topic.findings) {
      if (found.denied() || isNormal(found.match())) {
        return List.of();
      }
      Statement.Found denied =
          new Statement.Found(found.match(), true, statement.denier, found.unclear());
      for (Sense sense : forEach(topic.steps, found.match())) {
        claims.addAll(claim(statement, denied, sense));
      }
    }
    return claims;
  }

  // "The liver's not enlarged, neither is the spleen", "rooting is present, stepping too."
  private List<Claim> alike(Statement statement) {
    Statement topic = statement.topicOf;
    List<Claim> claims = new ArrayList<>();
    if (topic == null || topic.findings.size() != 1) {
      return claims;
    }
    Statement.Found said = topic.findings.get(0);
    boolean denies = said.denied() || lexicon.denies(said.match(), words);
    if (said.unclear() || statement.denier >= 0 && !denies) {
      return claims;
    }
    for (Sense sense : forEach(statement.partSteps(), said.match())) {
      for (Claim claim : claim(statement, said, sense)) {
        Set<Integer> evidence = new TreeSet<>(claim.evidence());
        evidence.add(statement.alike);
        claims.add(
            new Claim(
                claim.step(), claim.side(), claim.value(), claim.denied(), List.of(), evidence));
      }
    }
    return claims;
  }

  // "I can see the red reflex in both eyes."
  private List<Claim> present(Statement statement) {
    List<String> steps =
        statement.partSteps().stream()
            .filter(
                step ->
                    protocol.step(step).normal().stream()
                        .anyMatch(
                            value -> value.id().equals("present") || value.id().equals("strong")))
            .filter(lexicon::isSeen)
            .toList();
    if (steps.size() != 1) {
      return List.of();
    }
    Set<Integer> evidence = new TreeSet<>(statement.sideWords);
    evidence.add(statement.perceived);
    statement.parts.forEach(part -> addWords(part, evidence));
    Step step = protocol.step(steps.get(0));
    return placed(statement, step, step.normal().orElseThrow().id(), List.of(), evidence);
  }

  private List<Claim> absent(Statement statement) {
    List<Step> steps =
        statement.partSteps().stream()
            .map(protocol::step)
            .filter(step -> step.value("absent").isPresent())
            .toList();
    // "Can't hear the heart sounds for the crying" denies no cry.
    boolean one =
        statement.parts.stream()
            .filter(part -> part.is(Sense.Kind.PART))
            .allMatch(
                part ->
                    steps.size() == 1 && part.steps(Sense.Kind.PART).contains(steps.get(0).id()));
    if (steps.size() != 1 || !one) {
      return List.of();
    }
    Set<Integer> evidence = new TreeSet<>(statement.sideWords);
    evidence.add(statement.denier);
    statement.parts.forEach(part -> addWords(part, evidence));
    return placed(statement, steps.get(0), "absent", List.of(), evidence);
  }

  private List<Claim> placed(
      Statement statement, Step step, String value, List<String> denied, Set<Integer> evidence) {
    boolean normal = step.value(value).orElseThrow().norm() == Norm.NORMAL;
    boolean ofSides = step.value(value).orElseThrow().sided();
    Set<Side> sides = statement.sidesFor(step.id());
    List<Claim> claims = new ArrayList<>();
    if (step.sided()) {
      if (sides.isEmpty() && statement.isPair(step.id())) {
        sides = EnumSet.allOf(Side.class);
      }
      if (sides.isEmpty()) {
        claims.add(new Claim(step.id(), null, value, denied, List.of(), evidence));
      }
      for (Side side : new TreeSet<>(sides)) {
        claims.add(new Claim(step.id(), side, value, denied, List.of(), evidence));
      }
    } else {
      Side side = ofSides && !normal && sides.size() == 1 ? sides.iterator().next() : null;
      claims.add(new Claim(step.id(), side, value, denied, List.of(), evidence));
    }
    return claims;
  }

  private static Set<Integer> evidence(Statement statement, Statement.Found found, String step) {
    Set<Integer> evidence = new TreeSet<>(statement.sideWords);
    addWords(found.match(), evidence);
    statement.parts.stream()
        .filter(
            part ->
                part.steps(Sense.Kind.PART).contains(step)
                    || part.steps(Sense.Kind.PLACE).contains(step))
        .forEach(part -> addWords(part, evidence));
    if (statement.parts.isEmpty() && statement.topicOf != null) {
      Statement topic = statement.topicOf;
      if (statement.sides.isEmpty() && topic.steps.contains(step)) {
        evidence.addAll(topic.sideWords);
      }
      if (topic.findings.isEmpty()) {
        topic.parts.stream()
            .filter(part -> part.steps(Sense.Kind.PART).contains(step))
            .forEach(part -> addWords(part, evidence));
      }
    }
    if (found.denied()) {
      evidence.add(found.denier());
    }
    return evidence;
  }

  private static void addWords(TermMatch match, Set<Integer> words) {
    for (int word = match.from(); word < match.to(); word++) {
      words.add(word);
    }
  }
}
