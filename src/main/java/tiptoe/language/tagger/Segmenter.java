package tiptoe.language.tagger;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import tiptoe.protocol.Norm;
import tiptoe.protocol.Protocol;
import tiptoe.protocol.Side;

/**
 * Divides a sentence into segments: a new one begins where something is said a second time, or at a
 * turn such as "but". What is denied ends there too.
 */
final class Segmenter {
  private static final Set<String> JOINING =
      Set.of("and", "or", "nor", "any", "with", "also", "no", "obvious", "other", "signs");
  private static final Set<String> COPULAS =
      Set.of("is", "are", "was", "were", "looks", "look", "feels", "feel");
  private static final Set<String> PRONOUNS = Set.of("one", "side");

  private final LayLexicon lexicon;
  private final Protocol protocol;
  private final List<String> words;
  private final List<SegmentPart> parts;
  private final List<Segment> segments = new ArrayList<>();
  private Segment now = new Segment();
  private SegmentPart last;

  Segmenter(LayLexicon lexicon, Protocol protocol, List<String> words, List<SegmentPart> parts) {
    this.lexicon = lexicon;
    this.protocol = protocol;
    this.words = words;
    this.parts = parts;
  }

  List<Segment> segments() {
    for (int i = 0; i < parts.size(); i++) {
      SegmentPart part = parts.get(i);
      switch (part.role()) {
        case TURN -> next();
        case NOT -> deny(part);
        case SIDE -> side(part, i);
        case PART -> part(part);
        case FINDING -> {
          if (describes(part, i)) {
            continue;
          }
          if (denies(part.match()) && deniesNext(part, i)) {
            deny(part);
          } else {
            finding(part);
          }
        }
        default -> throw new IllegalStateException(part.role().toString());
      }
      last = part;
    }
    next();
    return segments;
  }

  private void next() {
    if (!now.isEmpty()) {
      segments.add(now);
    }
    now = new Segment();
  }

  private void deny(SegmentPart part) {
    if (!now.findings.isEmpty()) {
      next();
    }
    now.denier = part.from();
    now.deniesPart = now.parts.isEmpty();
  }

  private boolean denies(TermMatch match) {
    return lexicon.denies(match, words);
  }

  // "little clear blisters", "fine tufts of hair": a word that would be a normal finding of the
  // structure before it, but belongs to what was found
  private boolean describes(SegmentPart part, int index) {
    if (index + 1 >= parts.size()
        || parts.get(index + 1).from() != part.to()
        || isBehindPart(part)) {
      return false;
    }
    SegmentPart next = parts.get(index + 1);
    return next.role() == SegmentPart.Role.FINDING
        && isNormal(part.match())
        && next.match().senses().stream().anyMatch(sense -> !sense.bound() && !isNormal(sense))
        && next.match().senses().stream().noneMatch(this::isNormal);
  }

  private boolean isBehindPart(SegmentPart part) {
    return last != null
        && last.role() == SegmentPart.Role.PART
        && words.subList(last.to(), part.from()).stream().allMatch(COPULAS::contains);
  }

  // "can't feel any lumps" denies, "can't feel the spleen" is a finding
  private boolean deniesNext(SegmentPart part, int index) {
    return index + 1 < parts.size()
        && parts.get(index + 1).role() == SegmentPart.Role.FINDING
        && isJoined(part, parts.get(index + 1));
  }

  private void side(SegmentPart part, int index) {
    List<Side> said =
        part.match().isCue("both")
            ? List.of(Side.LEFT, Side.RIGHT)
            : List.of(part.match().isCue("left") ? Side.LEFT : Side.RIGHT);
    boolean taken =
        !now.sides.isEmpty() && !(last.role() == SegmentPart.Role.SIDE && isJoined(part));
    boolean ofNext = !now.findings.isEmpty() && belongsToNext(part, index);
    if (taken && (!now.findings.isEmpty() || now.denier >= 0 || !now.parts.isEmpty()) || ofNext) {
      next();
    }
    now.sides.addAll(said);
    for (int word = part.from(); word < part.to(); word++) {
      now.sideWords.add(word);
    }
  }

  // "liver fine, right kidney enlarged": the side leads what comes next; "crepitus over the left
  // clavicle": it does not, since the finding still lacks its structure.
  private boolean belongsToNext(SegmentPart side, int index) {
    if (side.to() < words.size() && PRONOUNS.contains(words.get(side.to()))) {
      boolean begins = side.from() > 0 && words.get(side.from() - 1).equals("and");
      return !now.parts.isEmpty() && (words.get(side.to()).equals("one") || begins);
    }
    if (index + 1 >= parts.size() || parts.get(index + 1).from() - side.to() > 0) {
      return false;
    }
    SegmentPart following = parts.get(index + 1);
    if (following.role() == SegmentPart.Role.FINDING) {
      return !isBehindPreposition(side) && !now.parts.isEmpty() && !takesTurns(side, index);
    }
    if (narrows(side, following)) {
      return false;
    }
    return following.role() == SegmentPart.Role.PART
        && !isPlace(following.match())
        && !(now.parts.isEmpty() && fits(following.match()));
  }

  // "Barlow positive right, negative left": each side stands behind its finding
  private boolean takesTurns(SegmentPart side, int index) {
    return now.sides.isEmpty()
        && last.role() == SegmentPart.Role.FINDING
        && last.to() == side.from()
        && index + 2 < parts.size()
        && parts.get(index + 2).role() == SegmentPart.Role.SIDE
        && parts.get(index + 2).from() == parts.get(index + 1).to();
  }

  // "webbing of two toes on the left foot": the foot only tells where the toes are
  private boolean narrows(SegmentPart side, SegmentPart part) {
    Set<String> steps = part.match().steps(Sense.Kind.PART);
    return part.role() == SegmentPart.Role.PART
        && side.to() == part.from()
        && isBehindPreposition(side)
        && now.findings.stream()
            .flatMap(found -> found.match().senses().stream())
            .map(Sense::step)
            .anyMatch(step -> steps.contains(step) && now.partSteps().contains(step));
  }

  private boolean isBehindPreposition(SegmentPart side) {
    return side.from() > 1 && Set.of("on", "over", "in", "at", "of").contains(before(side));
  }

  private String before(SegmentPart part) {
    String before = words.get(part.from() - 1);
    return before.equals("the") ? words.get(part.from() - 2) : before;
  }

  private void part(SegmentPart part) {
    boolean second =
        !now.parts.isEmpty()
            && !now.findings.isEmpty()
            && !(last.role() == SegmentPart.Role.SIDE && narrows(last, part));
    boolean stranger = now.parts.isEmpty() && !now.findings.isEmpty() && !fits(part.match());
    if ((second || stranger) && !isPlace(part.match())) {
      next();
    }
    boolean onlyPlace = !now.parts.isEmpty() && isPlace(part.match());
    now.parts.add(onlyPlace ? part.match().only(Sense.Kind.PLACE) : part.match());
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
    return now.findings.stream().anyMatch(found -> denies(found.match()))
        || now.findings.stream()
            .flatMap(found -> found.match().senses().stream())
            .anyMatch(sense -> steps.contains(sense.step()) || lexicon.isAnywhere(sense.step()));
  }

  private void finding(SegmentPart part) {
    boolean more = !now.findings.isEmpty();
    int denier = now.denier;
    if (more && !(isJoined(part) && last.role() == SegmentPart.Role.FINDING)) {
      boolean or = last.to() < words.size() && words.get(last.to()).equals("or");
      next();
      now.denier = or ? denier : -1;
    }
    boolean denied = now.denier >= 0 && !(isNormal(part.match()) && hasDenied());
    now.findings.add(new Segment.Found(part.match(), denied, now.denier));
  }

  private boolean hasDenied() {
    return now.findings.stream().anyMatch(Segment.Found::denied);
  }

  private boolean isNormal(TermMatch match) {
    return match.senses().stream().allMatch(this::isNormal);
  }

  private boolean isNormal(Sense sense) {
    return protocol.step(sense.step()).value(sense.value()).orElseThrow().norm() == Norm.NORMAL;
  }

  private boolean isJoined(SegmentPart part) {
    return last != null && isJoined(last, part);
  }

  private boolean isJoined(SegmentPart first, SegmentPart second) {
    return words.subList(first.to(), second.from()).stream()
        .allMatch(word -> JOINING.contains(word) || lexicon.isLittle(word));
  }
}
