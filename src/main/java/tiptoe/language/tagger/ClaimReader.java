package tiptoe.language.tagger;

import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import tiptoe.language.SecondReading.Claim;
import tiptoe.protocol.Norm;
import tiptoe.protocol.Protocol;
import tiptoe.protocol.Side;
import tiptoe.protocol.Step;
import tiptoe.protocol.Value;

/**
 * Says what the statements of a sentence claim: which step a finding is of, on which side, and what
 * a denial of it comes to.
 */
final class ClaimReader {
  private final LayLexicon lexicon;
  private final Protocol protocol;
  private final Set<String> deniable;
  private final List<String> words;
  private final Breaks breaks;
  private final List<WordItem> items;
  private final Set<Integer> deniedAside = new TreeSet<>();
  private final Set<String> deniedValues = new TreeSet<>();
  private final List<Denied> deniedNormal = new ArrayList<>();
  private final Set<String> saidOfOneSide = new TreeSet<>();
  private final ImpliedSides implied;
  private final FoundElsewhere elsewhere;

  private record Denied(String step, Statement.Found found) {}

  /**
   * @param deniable {@code step value} of what may be denied
   * @param words with {@code ,} where the typed text has a break
   * @param items what the words are, in their order
   */
  ClaimReader(
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
    this.implied = new ImpliedSides(lexicon, words, items);
    this.elsewhere = new FoundElsewhere(new SentenceItems(lexicon, protocol, words, items));
  }

  /** Words that deny what no answer of the protocol says: "that isn't a bruise". */
  Set<Integer> deniedAside() {
    return deniedAside;
  }

  /** Words that deny what is normal where it is said what was found instead: "not flexed". */
  Set<Integer> deniedFor(List<Claim> claims) {
    Set<Integer> words = new TreeSet<>();
    deniedNormal.stream()
        .filter(
            denied ->
                claims.stream()
                    .anyMatch(
                        claim ->
                            claim.step().equals(denied.step())
                                && claim.value() != null
                                && !protocol.step(claim.step()).isNormal(claim.value())))
        .forEach(
            denied -> {
              denied.found().match().addTo(words);
              words.add(denied.found().denier());
            });
    return words;
  }

  /** {@code step value} of what these deny. */
  Set<String> deniedValues() {
    return deniedValues;
  }

  /** What the statements claim; words that belong to a claim are told to the account. */
  List<Claim> claims(List<Statement> read) {
    List<Claim> claims = new ArrayList<>();
    for (Statement statement : read) {
      List<Claim> said = statement.same >= 0 ? same(statement, claims) : claims(statement);
      // What was taken back tells what its correction is about.
      claims.addAll(statement.takenBack ? List.of() : said);
      if (statement.sides.size() == 1) {
        saidOfOneSide.addAll(statement.steps);
      }
    }
    claims.replaceAll(claim -> onThatSide(claim, claims));
    for (Claim claim : List.copyOf(claims)) {
      if (isSaidOfBoth(claim, claims)) {
        claims.remove(claim);
      }
    }
    return claims;
  }

  // "Toes curl both sides, grasp there": the same of both.
  private boolean isSaidOfBoth(Claim claim, List<Claim> claims) {
    List<Claim> same =
        claims.stream()
            .filter(other -> other.side() != null && other.step().equals(claim.step()))
            .filter(other -> claim.value() != null && claim.value().equals(other.value()))
            .toList();
    boolean both = same.stream().map(Claim::side).distinct().count() == 2;
    if (claim.side() != null || !both || !protocol.step(claim.step()).sided()) {
      return false;
    }
    for (Claim one : same) {
      Set<Integer> evidence = new TreeSet<>(one.evidence());
      evidence.addAll(claim.evidence());
      claims.set(claims.indexOf(one), one.with(evidence));
    }
    return true;
  }

  // "Hydrocele right, the testis is down in it": on that side.
  private Claim onThatSide(Claim claim, List<Claim> claims) {
    int first = Collections.min(claim.evidence());
    if (claim.side() != null
        || !protocol.step(claim.step()).sided()
        || !lexicon.says("of-that", words.subList(first, breaks.to(first)))) {
      return claim;
    }
    List<Claim> before =
        claims.stream()
            .filter(other -> other.step().equals(claim.step()) && other.side() != null)
            .filter(other -> Collections.max(other.evidence()) < first)
            .toList();
    Set<Side> sides = before.stream().map(Claim::side).collect(Collectors.toSet());
    return sides.size() == 1
        ? new Claim(
            claim.step(),
            before.get(0).side(),
            claim.value(),
            claim.denied(),
            claim.numbers(),
            claim.evidence())
        : claim;
  }

  // "Left one's intact, and it's the same on the other side."
  private List<Claim> same(Statement statement, List<Claim> before) {
    if (!statement.parts.isEmpty() && statement.sides.isEmpty()) {
      return sameFor(statement);
    }
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

  // "Barlow negative on the right, negative on the left, and the same for Ortolani."
  private List<Claim> sameFor(Statement statement) {
    List<Claim> claims = new ArrayList<>();
    Statement last = statement.topicOf;
    for (Statement before = last;
        before != null && before.steps.equals(last.steps) && !before.takenBack;
        before = before.topicOf) {
      if (before.findings.size() != 1 || before.findings.get(0).unclear()) {
        return List.of();
      }
      Statement of = new Statement(null);
      of.parts.addAll(statement.parts);
      of.sides.addAll(before.sides);
      Set<String> steps = stepsNamed(statement, statement.same);
      for (Sense sense : forEach(steps, before.findings.get(0).match())) {
        claim(of, before.findings.get(0), sense)
            .forEach(claim -> claims.add(with(claim, statement.same)));
      }
    }
    return claims;
  }

  private List<Claim> claims(Statement statement) {
    List<Claim> claims = new ArrayList<>();
    Set<String> resolved = new LinkedHashSet<>();
    for (Statement.Found found : statement.findings) {
      if (isOfOther(statement, found) || isOfTopic(statement, found)) {
        if (lexicon.isNormal(found.match())) {
          found.match().addTo(deniedAside);
        }
        continue;
      }
      if (isComment(statement, found)) {
        found.match().addTo(deniedAside);
        continue;
      }
      if (isToldApart(found) || isAmongPulses(statement, found)) {
        found.match().addTo(deniedAside);
        deniedAside.add(denier(found));
        continue;
      }
      List<Sense> senses =
          resolve(statement, found.match(), resolved).stream()
              .filter(sense -> !isOfManoeuvre(sense, found.match()))
              .toList();
      if (elsewhere.is(
          found.match(), senses, resolved.isEmpty() ? statement.topicSteps() : resolved)) {
        if (found.denied() || lexicon.isNormal(found.match())) {
          found.match().addTo(deniedAside);
        }
        if (found.denied()) {
          deniedAside.add(found.denier());
        }
        continue;
      }
      for (Sense sense : senses) {
        List<Claim> made = claim(statement, found, sense);
        if (!made.isEmpty()) {
          resolved.add(sense.step());
          claims.addAll(made);
        }
      }
      if (senses.isEmpty()) {
        for (Sense sense : withJoined(statement, found)) {
          claims.addAll(claim(statement, found, sense));
          resolved.add(sense.step());
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
    if (statement.findings.isEmpty()
        && (!statement.parts.isEmpty() || !statement.sides.isEmpty())
        && statement.alike >= 0) {
      claims.addAll(alike(statement));
    }
    if (statement.findings.isEmpty()
        && statement.denier >= 0
        && !statement.deniesPart
        && statement.alike < 0) {
      claims.addAll(isNot(statement));
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

  // "Palmar grasp and plantar grasp there": the words name the second, and what is so of both.
  private List<Sense> withJoined(Statement statement, Statement.Found found) {
    int and = found.match().from() - 1;
    List<Sense> own =
        distinct(found.match().senses().stream().filter(sense -> !sense.bound()).toList());
    if (found.denied() || own.size() != 1 || and < 1 || !words.get(and).equals("and")) {
      return List.of();
    }
    List<Sense> senses = new ArrayList<>();
    statement.parts.stream()
        .filter(part -> part.to() == and)
        .map(part -> ofAll(part.steps(Sense.Kind.PART), found.match()))
        .filter(joined -> joined.size() == 1)
        .forEach(senses::addAll);
    senses.addAll(senses.isEmpty() ? List.of() : own);
    return senses;
  }

  // "With the startle her left arm stays down": what the arm does in it is told of the Moro.
  private boolean isOfManoeuvre(Sense sense, TermMatch finding) {
    return lexicon.isStepListed("seen-in-manoeuvre", sense.step())
        && !lexicon.isNormal(sense)
        && items.stream()
            .filter(item -> item.kind() == WordItem.Kind.PART && item.from() < finding.from())
            .flatMap(item -> item.match().steps(Sense.Kind.PART).stream())
            .anyMatch(step -> lexicon.isStepListed("manoeuvre", step));
  }

  // "Hips stable, thigh creases equal": of what the protocol does not ask for.
  private boolean isOfOther(Statement statement, Statement.Found found) {
    int from = breaks.from(found.match().from());
    int to = breaks.to(found.match().to());
    return statement.parts.isEmpty()
        && found.match().isBound()
        && items.stream()
            .filter(item -> item.from() >= from && item.to() <= to)
            .anyMatch(item -> lexicon.isListed("elsewhere", words.subList(item.from(), item.to())));
  }

  // "Scalp's clear, no lumps": of what is spoken of, and not of the belly that may have them too.
  private boolean isOfTopic(Statement statement, Statement.Found found) {
    TermMatch match = found.match();
    boolean things = isThing(match) && (found.denied() || lexicon.denies(match, words));
    Set<String> parts = statement.topicParts();
    Set<String> topic = parts.isEmpty() ? statement.topicSteps() : parts;
    return things
        && statement.parts.isEmpty()
        && !topic.isEmpty()
        && match.senses().stream()
            .noneMatch(sense -> topic.stream().anyMatch(step -> lexicon.near(step, sense.step())));
  }

  // "A click but no clunk": it tells what the click was not.
  private boolean isToldApart(Statement.Found found) {
    TermMatch match = found.match();
    int stretch = breaks.from(match.from());
    int from =
        stretch > 0 && lexicon.isListed("parting", words.get(stretch))
            ? breaks.from(stretch - 1)
            : stretch;
    return (found.denied() || lexicon.denies(match, words))
        && lexicon.says("told-apart", words.subList(match.from(), match.to()))
        && items.stream()
            .filter(item -> item.kind() == WordItem.Kind.FINDING)
            .filter(item -> item.from() >= from && item.to() <= match.from())
            .flatMap(item -> item.match().steps(Sense.Kind.VALUE).stream())
            .anyMatch(step -> lexicon.isStepListed("told-apart-from", step));
  }

  // "No femoral pulse, and the arms are fine, strong brachials": how the arms move is not told.
  private boolean isAmongPulses(Statement statement, Statement.Found found) {
    TermMatch match = found.match();
    return statement.parts.size() == 1
        && lexicon.isListed("good", words.subList(match.from(), match.to()))
        && statement.partSteps().equals(Set.of("arm-movement"))
        && isPulse(items.stream().filter(item -> item.to() <= statement.parts.get(0).from()), true)
        && isPulse(items.stream().filter(item -> item.from() >= match.to()), false);
  }

  // Whether the nearest structure of these is a pulse.
  private boolean isPulse(Stream<WordItem> beside, boolean last) {
    List<Set<String>> named =
        beside
            .filter(
                item -> item.kind() == WordItem.Kind.PART || item.kind() == WordItem.Kind.FINDING)
            .map(
                item -> {
                  Set<String> steps = item.match().steps(Sense.Kind.PART);
                  return steps.isEmpty() ? item.match().steps(Sense.Kind.VALUE) : steps;
                })
            .toList();
    int from = last ? named.size() - 1 : 0;
    int to = last ? named.size() : Math.min(2, named.size());
    return from >= 0
        && named.subList(from, to).stream()
            .anyMatch(
                steps ->
                    !steps.isEmpty()
                        && steps.stream()
                            .allMatch(step -> lexicon.isStepListed("felt-in-limb", step)));
  }

  private boolean pointsBack(TermMatch finding) {
    int to = Math.min(words.size(), finding.to() + 2);
    return breaks.to(finding.from()) <= to
        && lexicon.says("points-back", words.subList(finding.from(), breaks.to(finding.from())));
  }

  // "Lumps", "no lumps or bumps", "no masses felt"
  private boolean isThing(TermMatch match) {
    int from = match.from() + (lexicon.denies(match, words) ? 1 : 0);
    return from < match.to()
        && words.subList(from, match.to()).stream()
            .allMatch(
                word ->
                    lexicon.isListed("thing", word)
                        || word.equals("or")
                        || lexicon.isListed("none-behind", word));
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
      if (topical.isEmpty()) {
        topical = forEach(resolved, finding);
      }
      if (topical.isEmpty() && free.stream().allMatch(sense -> lexicon.isAnywhere(sense.step()))) {
        topical = ofFormer(statement, finding);
      }
      // "Neck supple, full rotation, no masses": of the neck, whatever was last said of it.
      if (topical.isEmpty() && isThing(finding)) {
        topical = ofRegion(resolved.isEmpty() ? statement.topicSteps() : resolved, finding);
      }
      // "Lips are whole, no cleft there": of what was spoken of.
      if (!topical.isEmpty() && pointsBack(finding)) {
        return topical;
      }
      if (!free.isEmpty()) {
        // "Neck supple, no masses": of what is being spoken of, though the belly may have them too.
        // "No organomegaly" is of both organs.
        boolean ofOneRegion =
            distinct(free).stream()
                .allMatch(sense -> lexicon.near(sense.step(), free.get(0).step()));
        boolean ofTopic =
            topical.size() == 1
                && (distinct(free).size() == 1 || !ofOneRegion)
                && !topical.equals(distinct(free));
        return ofTopic ? topical : distinct(free);
      }
      List<Sense> here = forEach(resolved, finding);
      if (!here.isEmpty()) {
        return here;
      }
      List<Sense> same = forEach(statement.topicSteps(), finding);
      if (same.isEmpty()) {
        same = forEach(statement.topicParts(), finding);
      }
      // "No murmur, regular"
      boolean plain =
          finding.words() > 1 || lexicon.isListed("of-region", words.get(finding.from()));
      return same.isEmpty() && plain ? ofRegion(statement.topicSteps(), finding) : same;
    }
    // "White reflex in the left, correction, white in the right pupil"
    List<Sense> corrected =
        statement.corrects ? forEach(statement.topicSteps(), finding) : List.of();
    if (!corrected.isEmpty()) {
      return corrected;
    }
    List<Sense> meant =
        isOfPronoun(statement, finding) ? forEach(statement.topicSteps(), finding) : List.of();
    if (!meant.isEmpty()) {
      return meant;
    }
    // "Femorals, strong, no delay with the brachial": what is named behind a break is not meant.
    boolean later =
        statement.parts.stream().allMatch(part -> part.from() > breaks.to(finding.to()));
    List<Sense> former = later ? forEach(statement.topicSteps(), finding) : List.of();
    if (!former.isEmpty()) {
      return former;
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
      if (isOwnerOf(part, behind, finding)) {
        continue;
      }
      List<Sense> fitting = ofSharedName(statement, part, resolved, finding);
      if (fitting.isEmpty()) {
        fitting = matching(part.steps(Sense.Kind.PART), finding);
      }
      List<Sense> here = oneStep(fitting);
      // "Right hip has limited abduction, reduced there": of what was just said of it.
      if (here.isEmpty()) {
        here = oneStep(fitting.stream().filter(s -> resolved.contains(s.step())).toList());
      }
      // "Single crease on the left hand, the right hand is normal": of the same as before.
      if (here.isEmpty() && statement.topicOf != null) {
        Set<String> before = statement.topicOf.steps;
        here = oneStep(fitting.stream().filter(s -> before.contains(s.step())).toList());
      }
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
    // "Red reflex, right eye, present, left eye, absent": the same structure of the other side.
    Statement topic = statement.topicOf;
    if (topic != null && statement.sides.size() == 1 && isAgain(statement, topic)) {
      return forEach(topic.steps, finding);
    }
    List<Sense> placed =
        finding.senses().stream()
            .filter(sense -> !sense.bound())
            .filter(
                sense ->
                    lexicon.isAnywhere(sense.step())
                        || statement.parts.stream()
                            .allMatch(part -> lexicon.isNear(part, sense.step())))
            .toList();
    // "I can't tell you about the vessels, a bit moist": of the stump.
    boolean plain = finding.words() > 1 && lexicon.isAbnormal(finding);
    // "Lub dub, neat as you please, perfectly regular": of the rhythm.
    if (placed.isEmpty() && lexicon.isListed("of-region", words.get(finding.from()))) {
      return ofRegion(statement.partSteps(), finding);
    }
    return placed.isEmpty() && plain && later(statement, finding)
        ? oneStep(matching(namedBefore(finding), finding))
        : oneStep(placed);
  }

  // "Left foot has five toes, separate and perfect": it is the toes that are.
  private boolean isOwnerOf(TermMatch whole, List<TermMatch> parts, TermMatch finding) {
    Set<String> steps = whole.steps(Sense.Kind.PART);
    return lexicon.isListed("good", words.subList(finding.from(), finding.to()))
        && parts.stream()
            .filter(part -> part.from() >= whole.to() && part.to() <= finding.from())
            .filter(part -> !words.subList(whole.to(), part.from()).contains("and"))
            .filter(part -> !breaks.between(whole.to(), part.from()))
            .map(part -> part.steps(Sense.Kind.PART))
            .anyMatch(of -> !of.isEmpty() && steps.containsAll(of) && steps.size() > of.size());
  }

  // All that the structures before it may be.
  private Set<String> namedBefore(TermMatch finding) {
    return items.stream()
        .filter(item -> item.kind() == WordItem.Kind.PART && item.to() <= finding.from())
        .flatMap(item -> item.match().steps(Sense.Kind.PART).stream())
        .collect(Collectors.toSet());
  }

  // Whether nothing is named in its own stretch between breaks.
  private boolean later(Statement statement, TermMatch finding) {
    return statement.parts.stream().allMatch(part -> part.to() <= breaks.from(finding.from()));
  }

  // "Toes curl round my finger, grasp there": that of the toes.
  private List<Sense> ofSharedName(
      Statement statement, TermMatch part, Set<String> resolved, TermMatch finding) {
    Set<String> topic = resolved.isEmpty() ? statement.topicSteps() : resolved;
    return isSharedName(part)
        ? oneStep(
            matching(topic, finding).stream()
                .filter(sense -> lexicon.isStepListed("shared-by", sense.step()))
                .toList())
        : List.of();
  }

  private boolean isSharedName(TermMatch part) {
    return lexicon.isListed("shared-name", words.subList(part.from(), part.to()));
  }

  private boolean isAgain(Statement statement, Statement topic) {
    return !topic.sides.equals(statement.sides)
        && statement.parts.stream()
            .allMatch(
                part ->
                    topic.parts.stream()
                        .anyMatch(
                            before ->
                                before.to() - before.from() == part.to() - part.from()
                                    && words
                                        .subList(before.from(), before.to())
                                        .equals(words.subList(part.from(), part.to()))));
  }

  // "Both hands on the belly, sutures normal": what is named in its own stretch between breaks is
  // what it is said of, and what a bare list before that names; else the nearest before it.
  private List<TermMatch> beside(Statement statement, TermMatch finding) {
    List<TermMatch> parts = statement.parts;
    if (!finding.isBound()) {
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

  // "In the right eye it is good": said of what was spoken of before.
  private boolean isOfPronoun(Statement statement, TermMatch finding) {
    return statement.topicOf != null
        && statement.parts.stream()
            .allMatch(
                part ->
                    part.to() <= finding.from()
                        && words.subList(part.to(), finding.from()).stream()
                            .anyMatch(word -> lexicon.isListed("pronoun", word))
                        && words.subList(breaks.from(part.from()), part.from()).stream()
                            .anyMatch(word -> lexicon.isListed("preposition", word)));
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
  private List<Sense> ofRegion(Set<String> steps, TermMatch finding) {
    return oneStep(
        finding.senses().stream()
            .filter(sense -> steps.stream().anyMatch(step -> lexicon.near(step, sense.step())))
            .toList());
  }

  // "Caput on the crown, and a scratch, well, a laceration": of what was last spoken of.
  private static List<Sense> ofFormer(Statement statement, TermMatch finding) {
    for (Statement before = statement.topicOf; before != null; before = before.topicOf) {
      List<Sense> former = forEach(before.steps, finding);
      if (!former.isEmpty()) {
        return former;
      }
    }
    return List.of();
  }

  private static boolean isLoose(TermMatch part, String step) {
    return part.senses().stream()
        .filter(sense -> sense.kind() == Sense.Kind.PART && sense.step().equals(step))
        .allMatch(Sense::isLoose);
  }

  // "Ears look fine": of all that is said of ears, where none of it must be stated for itself.
  private boolean isOfAll(TermMatch finding, List<Sense> fitting) {
    return lexicon.isListed("good", words.subList(finding.from(), finding.to()))
        && fitting.stream().allMatch(lexicon::isNormal)
        && fitting.stream().noneMatch(sense -> protocol.step(sense.step()).key());
  }

  // "Extra digit on the left hand, right hand normal": said of the same as before.
  private static boolean isTopic(Statement statement, String step) {
    return statement.topicSteps().contains(step);
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
    boolean unseen =
        value.id().equals("absent")
            && lexicon.denies(found.match(), words)
            && isHindered(found.match().from());
    boolean tried = lexicon.isListed("tries", words.get(denier(found)));
    boolean inVain = tried && lexicon.says("in-the-way", words);
    // "Not blue, pale"
    if (value.norm() == Norm.NORMAL
        && words.get(found.match().from()).equals("not")
        && statement.findings.stream()
            .filter(other -> other != found && other.unclear())
            .anyMatch(other -> other.match().steps(Sense.Kind.VALUE).contains(step.id()))) {
      found.match().addTo(deniedAside);
      return List.of();
    }
    if (found.unclear() || unable && value.norm() != Norm.NORMAL || unseen || inVain) {
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
      } else if (abnormal
          && deniable.contains(step.id() + " " + value.id())
          && !isNothingSuch(statement, found, step)) {
        stated = step.normal().orElseThrow().id();
        denied = List.of(value.id());
      } else {
        if (abnormal) {
          found.match().addTo(deniedAside);
          deniedAside.add(found.denier());
          deniedValues.add(step.id() + " " + value.id());
        } else {
          deniedNormal.add(new Denied(step.id(), found));
        }
        return List.of();
      }
    }
    if (!found.denied() && value.norm() == Norm.NORMAL && lexicon.denies(found.match(), words)) {
      denied =
          lexicon
              .denied(step.id(), words.subList(found.match().from(), found.match().to()))
              .stream()
              .filter(id -> !step.isNormal(id))
              .toList();
    }
    if (statement.sides.isEmpty() && statement.alike >= 0 && statement.topicOf != null) {
      statement.sides.addAll(
          statement.topicOf.sidesFor(statement.topicOf.steps.stream().findFirst().orElse("")));
    }
    boolean neither = found.denied() && words.get(found.denier()).equals("neither");
    if (statement.sides.isEmpty()
        && !statement.ofOne
        && (neither
            || saysBoth(found.match())
            || lexicon.namesPair(step.id(), said(found)) && !isOnOneSide(step, value))) {
      statement.sides.addAll(List.of(Side.LEFT, Side.RIGHT));
    }
    return placed(statement, step, stated, denied, evidence(statement, found, step.id()));
  }

  // "Six toes" are those of one foot; "five toes" are so on each.
  private boolean isOnOneSide(Step step, Value value) {
    return value.norm() != Norm.NORMAL && lexicon.isStepListed("digits", step.id());
  }

  private static int denier(Statement.Found found) {
    return found.denied() ? found.denier() : found.match().from();
  }

  private List<String> said(Statement.Found found) {
    return words.subList(found.match().from(), found.match().to());
  }

  // "Both arms going, nothing stiff": of what is not named it denies one thing, and says no more.
  private boolean isNothingSuch(Statement statement, Statement.Found found, Step step) {
    return words.get(found.denier()).equals("nothing")
        && step.values().stream().filter(value -> value.norm() != Norm.NORMAL).count() > 1
        && statement.parts.stream()
            .noneMatch(part -> part.steps(Sense.Kind.PART).contains(step.id()));
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

  // "Crepitus on the right, on the left no", "no hernia on the left, none on the right"
  private List<Claim> denials(Statement statement) {
    Statement topic = statement.topicOf;
    boolean other =
        topic != null
            && statement.sides.size() == 1
            && topic.sides.size() == 1
            && !topic.sides.equals(statement.sides);
    // "Positive on the right no forgive me on the left": who knows what it denies.
    boolean leads =
        statement.denier >= 0
            && words.get(statement.denier).equals("no")
            && statement.sideWords.stream().allMatch(word -> word > statement.denier + 3);
    if (!other || statement.denier < 0 || leads) {
      return List.of();
    }
    List<Claim> claims = new ArrayList<>();
    for (Statement.Found found : topic.findings) {
      boolean again =
          words.get(statement.denier).equals("none")
              && (found.denied() || lexicon.denies(found.match(), words));
      if (found.unclear() || !again && (found.denied() || lexicon.isNormal(found.match()))) {
        return List.of();
      }
      if (again) {
        for (Sense sense : forEach(topic.steps, found.match())) {
          claim(statement, found, sense)
              .forEach(claim -> claims.add(with(claim, statement.denier)));
        }
        continue;
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
    while (topic != null && topic.findings.isEmpty() && topic.alike >= 0) {
      topic = topic.topicOf;
    }
    List<Claim> claims = new ArrayList<>();
    if (topic == null || topic.findings.size() != 1) {
      return claims;
    }
    Statement.Found said = topic.findings.get(0);
    boolean denies =
        said.denied() || lexicon.denies(said.match(), words) || lexicon.says("no", said(said));
    if (said.unclear() || statement.denier >= 0 && !denies) {
      return claims;
    }
    Set<String> steps =
        statement.parts.isEmpty() ? topic.steps : stepsNamed(statement, statement.alike);
    for (Sense sense : ofAll(steps, said.match())) {
      for (Claim claim : claim(statement, said, sense)) {
        claims.add(with(claim, statement.alike));
      }
    }
    return claims;
  }

  // The steps of the structures between the breaks around a word: "… both hands, plantar grasps
  // too".
  private Set<String> stepsNamed(Statement statement, int word) {
    Set<String> steps = new LinkedHashSet<>();
    statement.parts.stream()
        .filter(part -> part.from() >= breaks.from(word) && part.to() <= breaks.to(word))
        .forEach(part -> steps.addAll(part.steps(Sense.Kind.PART)));
    return steps;
  }

  // "Palmar grasp present, plantar grasp too": the words name the one step, the value both have.
  private List<Sense> ofAll(Set<String> steps, TermMatch said) {
    List<Sense> senses = new ArrayList<>(forEach(steps, said));
    List<Sense> values = said.senses().stream().filter(one -> one.value() != null).toList();
    for (String step : steps) {
      List<String> same =
          values.stream()
              .filter(one -> !lexicon.isListed("good", one.value()))
              .filter(one -> protocol.step(step).value(one.value()).isPresent())
              .filter(
                  one ->
                      protocol.step(step).isNormal(one.value())
                          == protocol.step(one.step()).isNormal(one.value()))
              .map(Sense::value)
              .distinct()
              .toList();
      if (same.size() == 1 && senses.stream().noneMatch(one -> one.step().equals(step))) {
        senses.add(new Sense(Sense.Kind.VALUE, step, same.get(0), false, false));
      }
    }
    return senses;
  }

  // "The spleen is enlarged, the liver is not", "left kidney enlarged, right kidney isn't".
  private List<Claim> isNot(Statement statement) {
    Statement topic = statement.topicOf;
    boolean ends =
        items.stream()
            .filter(item -> item.from() > statement.denier)
            .filter(item -> item.to() <= breaks.to(statement.denier))
            .allMatch(WordItem::isEmpty);
    if (topic == null || topic.findings.isEmpty() || !ends) {
      return List.of();
    }
    // "Three centimetres, enlarged, spleen not": each says the same of it.
    Statement.Found said = topic.findings.get(topic.findings.size() - 1);
    Set<String> steps = stepsNamed(statement, statement.denier);
    List<Sense> meant = forEach(steps, said.match());
    boolean same =
        topic.findings.stream()
            .allMatch(
                found ->
                    !found.denied()
                        && !found.unclear()
                        && lexicon.isAbnormal(found.match())
                        && forEach(steps, found.match()).equals(meant));
    if (!same) {
      return List.of();
    }
    List<Claim> claims = new ArrayList<>();
    Statement.Found denied = new Statement.Found(said.match(), true, statement.denier, false);
    for (Sense sense : meant) {
      boolean other =
          !topic.steps.contains(sense.step())
              || !statement.sides.isEmpty() && !statement.sides.equals(topic.sides);
      if (other) {
        claims.addAll(claim(statement, denied, sense));
      }
    }
    return claims;
  }

  private static Claim with(Claim claim, int word) {
    Set<Integer> evidence = new TreeSet<>(claim.evidence());
    evidence.add(word);
    return new Claim(
        claim.step(), claim.side(), claim.value(), claim.denied(), List.of(), evidence);
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
    statement.parts.forEach(part -> part.addTo(evidence));
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
    if (steps.size() != 1 || !one || isHindered(statement.denier)) {
      return List.of();
    }
    Set<Integer> evidence = new TreeSet<>(statement.sideWords);
    evidence.add(statement.denier);
    statement.parts.forEach(part -> part.addTo(evidence));
    return placed(statement, steps.get(0), "absent", List.of(), evidence);
  }

  // "Eyes screwed shut, no red reflex", "couldn't do the Moro": what nobody could look for is not
  // absent.
  private boolean isHindered(int denier) {
    return lexicon.says("hindrance", words)
        || words.subList(denier, breaks.to(denier)).stream()
            .anyMatch(word -> lexicon.isListed("deed", word));
  }

  // "Nipples right where they belong" names no side.
  private boolean isSide(int word) {
    return words.get(word).equals("left")
        || word > 0 && List.of("the", "on").contains(words.get(word - 1));
  }

  private List<Claim> placed(
      Statement statement, Step step, String value, List<String> denied, Set<Integer> evidence) {
    boolean normal = step.isNormal(value);
    boolean ofSides = step.value(value).orElseThrow().sided();
    Set<Side> sides = statement.sidesFor(step.id());
    List<Claim> claims = new ArrayList<>();
    if (step.sided()) {
      if (sides.isEmpty()
          && statement.isPair(step.id())
          && (normal || !isOfOne(statement, step, evidence))) {
        sides = EnumSet.allOf(Side.class);
      }
      Set<Integer> said = new TreeSet<>(evidence);
      if (sides.isEmpty()) {
        Optional<ImpliedSides.Implied> other = implied.of(step.id(), evidence);
        sides = other.map(ImpliedSides.Implied::sides).orElse(sides);
        other.ifPresent(found -> said.addAll(found.words()));
      }
      if (sides.isEmpty()) {
        claims.add(new Claim(step.id(), null, value, denied, List.of(), said));
      }
      for (Side side : new TreeSet<>(sides)) {
        claims.add(new Claim(step.id(), side, value, denied, List.of(), said));
      }
    } else {
      Side side = ofSides && !normal && sides.size() == 1 ? sides.iterator().next() : null;
      Set<Integer> accounted = new TreeSet<>(evidence);
      if (normal && sides.size() == 1 && statement.sideWords.stream().anyMatch(this::isSide)) {
        // "Moro present on the right" tells nothing of the left.
        accounted.removeAll(statement.sideWords);
      }
      claims.add(new Claim(step.id(), side, value, denied, List.of(), accounted));
    }
    return claims;
  }

  // "Left eye sticky, red reflexes present, swollen lids", "the feet are normal, an extra digit
  // there": of one side, and nobody knows of which.
  private boolean isOfOne(Statement statement, Step step, Set<Integer> evidence) {
    return saidOfOneSide.contains(step.id())
        || isOfSeveral(statement, step)
        || items.stream()
            .filter(item -> item.kind() == WordItem.Kind.FINDING)
            .filter(item -> evidence.contains(item.from()) && item.from() > 0)
            .filter(item -> lexicon.isListed("article", words.get(item.from() - 1)))
            .anyMatch(
                item ->
                    statement.parts.stream()
                        .allMatch(part -> part.to() <= breaks.from(item.from())));
  }

  // "Second and third toes are joined": of one foot there are several; and so there are lids of one
  // eye, where one side was spoken of: "red reflex present on the left, lids swollen".
  private boolean isOfSeveral(Statement statement, Step step) {
    boolean oneSide = saidOfOneSide.stream().anyMatch(one -> lexicon.near(one, step.id()));
    List<String> lists = oneSide ? List.of("digits", "lids") : List.of("digits");
    Statement named = statement;
    while (named.parts.isEmpty() && named.topicOf != null) {
      named = named.topicOf;
    }
    List<TermMatch> pairs =
        named.parts.stream()
            .filter(
                part ->
                    part.senses().stream()
                        .anyMatch(sense -> sense.pair() && sense.step().equals(step.id())))
            .toList();
    return !pairs.isEmpty()
        && pairs.stream()
            .allMatch(
                part ->
                    lists.stream()
                        .anyMatch(list -> lexicon.isListed(list, words.get(part.to() - 1))));
  }

  private Set<Integer> evidence(Statement statement, Statement.Found found, String step) {
    Set<Integer> evidence = new TreeSet<>(statement.sideWords);
    found.match().addTo(evidence);
    statement.parts.stream()
        .filter(
            part ->
                part.steps(Sense.Kind.PART).contains(step)
                    || part.steps(Sense.Kind.PLACE).contains(step)
                    || isSharedName(part) && lexicon.isStepListed("shared-by", step))
        .forEach(part -> part.addTo(evidence));
    if (statement.parts.isEmpty() && statement.topicOf != null) {
      Statement topic = statement.topicOf;
      if (statement.sides.isEmpty() && topic.steps.contains(step)) {
        evidence.addAll(topic.sideWords);
      }
      if (topic.findings.isEmpty()) {
        topic.parts.stream()
            .filter(part -> part.steps(Sense.Kind.PART).contains(step))
            .forEach(part -> part.addTo(evidence));
      }
    }
    if (found.denied()) {
      evidence.add(found.denier());
    }
    return evidence;
  }
}
