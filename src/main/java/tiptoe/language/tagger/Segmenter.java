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

  private final LayLexicon lay;
  private final Protocol protocol;
  private final List<String> words;
  private final List<SegmentPart> items;
  private final List<Segment> segments = new ArrayList<>();
  private Segment now = new Segment();
  private SegmentPart last;

  Segmenter(LayLexicon lay, Protocol protocol, List<String> words, List<SegmentPart> items) {
    this.lay = lay;
    this.protocol = protocol;
    this.words = words;
    this.items = items;
  }

  List<Segment> segments() {
    for (int i = 0; i < items.size(); i++) {
      SegmentPart item = items.get(i);
      switch (item.role()) {
        case TURN -> next();
        case NOT -> deny(item);
        case SIDE -> side(item, i);
        case PART -> part(item);
        case FINDING -> {
          if (describes(item, i)) {
            continue;
          }
          if (denies(item.hit()) && deniesNext(item, i)) {
            deny(item);
          } else {
            finding(item);
          }
        }
        default -> throw new IllegalStateException(item.role().toString());
      }
      last = item;
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

  private void deny(SegmentPart item) {
    if (!now.findings.isEmpty()) {
      next();
    }
    now.denier = item.from();
    now.deniesPart = now.parts.isEmpty();
  }

  private boolean denies(TermMatch hit) {
    return lay.denies(hit, words);
  }

  // "little clear blisters", "fine tufts of hair": a word that would be a normal finding of the
  // structure before it, but belongs to what was found
  private boolean describes(SegmentPart item, int index) {
    if (index + 1 >= items.size()
        || items.get(index + 1).from() != item.to()
        || isBehindPart(item)) {
      return false;
    }
    SegmentPart next = items.get(index + 1);
    return next.role() == SegmentPart.Role.FINDING
        && isNormal(item.hit())
        && next.hit().senses().stream().anyMatch(sense -> !sense.bound() && !isNormal(sense))
        && next.hit().senses().stream().noneMatch(this::isNormal);
  }

  private boolean isBehindPart(SegmentPart item) {
    return last != null
        && last.role() == SegmentPart.Role.PART
        && words.subList(last.to(), item.from()).stream().allMatch(COPULAS::contains);
  }

  // "can't feel any lumps" denies, "can't feel the spleen" is a finding
  private boolean deniesNext(SegmentPart item, int index) {
    return index + 1 < items.size()
        && items.get(index + 1).role() == SegmentPart.Role.FINDING
        && isJoined(item, items.get(index + 1));
  }

  private void side(SegmentPart item, int index) {
    List<Side> said =
        item.hit().isCue("both")
            ? List.of(Side.LEFT, Side.RIGHT)
            : List.of(item.hit().isCue("left") ? Side.LEFT : Side.RIGHT);
    boolean taken =
        !now.sides.isEmpty() && !(last.role() == SegmentPart.Role.SIDE && isJoined(item));
    boolean ofNext = !now.findings.isEmpty() && belongsToNext(item, index);
    if (taken && (!now.findings.isEmpty() || now.denier >= 0 || !now.parts.isEmpty()) || ofNext) {
      next();
    }
    now.sides.addAll(said);
    for (int word = item.from(); word < item.to(); word++) {
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
    if (index + 1 >= items.size() || items.get(index + 1).from() - side.to() > 0) {
      return false;
    }
    SegmentPart following = items.get(index + 1);
    if (following.role() == SegmentPart.Role.FINDING) {
      return !isBehindPreposition(side) && !now.parts.isEmpty() && !takesTurns(side, index);
    }
    if (narrows(side, following)) {
      return false;
    }
    return following.role() == SegmentPart.Role.PART
        && !isPlace(following.hit())
        && !(now.parts.isEmpty() && fits(following.hit()));
  }

  // "Barlow positive right, negative left": each side stands behind its finding
  private boolean takesTurns(SegmentPart side, int index) {
    return now.sides.isEmpty()
        && last.role() == SegmentPart.Role.FINDING
        && last.to() == side.from()
        && index + 2 < items.size()
        && items.get(index + 2).role() == SegmentPart.Role.SIDE
        && items.get(index + 2).from() == items.get(index + 1).to();
  }

  // "webbing of two toes on the left foot": the foot only tells where the toes are
  private boolean narrows(SegmentPart side, SegmentPart part) {
    Set<String> steps = part.hit().steps(Sense.Kind.PART);
    return part.role() == SegmentPart.Role.PART
        && side.to() == part.from()
        && isBehindPreposition(side)
        && now.findings.stream()
            .flatMap(found -> found.hit().senses().stream())
            .map(Sense::step)
            .anyMatch(step -> steps.contains(step) && now.partSteps().contains(step));
  }

  private boolean isBehindPreposition(SegmentPart side) {
    return side.from() > 1 && Set.of("on", "over", "in", "at", "of").contains(before(side));
  }

  private String before(SegmentPart item) {
    String before = words.get(item.from() - 1);
    return before.equals("the") ? words.get(item.from() - 2) : before;
  }

  private void part(SegmentPart item) {
    boolean second =
        !now.parts.isEmpty()
            && !now.findings.isEmpty()
            && !(last.role() == SegmentPart.Role.SIDE && narrows(last, item));
    boolean stranger = now.parts.isEmpty() && !now.findings.isEmpty() && !fits(item.hit());
    if ((second || stranger) && !isPlace(item.hit())) {
      next();
    }
    boolean onlyPlace = !now.parts.isEmpty() && isPlace(item.hit());
    now.parts.add(onlyPlace ? item.hit().only(Sense.Kind.PLACE) : item.hit());
  }

  // "a bruise on the forehead", "caput over the vertex", "a red reflex in the left eye"
  private boolean isPlace(TermMatch part) {
    Set<String> places = part.steps(Sense.Kind.PLACE);
    return now.partSteps().stream().anyMatch(places::contains)
        || now.findings.stream()
            .flatMap(found -> found.hit().senses().stream())
            .filter(sense -> !sense.bound())
            .anyMatch(sense -> lay.isAnywhere(sense.step()) || places.contains(sense.step()));
  }

  private boolean fits(TermMatch part) {
    Set<String> steps = part.steps(Sense.Kind.PART);
    steps.addAll(part.steps(Sense.Kind.PLACE));
    return now.findings.stream().anyMatch(found -> denies(found.hit()))
        || now.findings.stream()
            .flatMap(found -> found.hit().senses().stream())
            .anyMatch(sense -> steps.contains(sense.step()) || lay.isAnywhere(sense.step()));
  }

  private void finding(SegmentPart item) {
    boolean more = !now.findings.isEmpty();
    int denier = now.denier;
    if (more && !(isJoined(item) && last.role() == SegmentPart.Role.FINDING)) {
      boolean or = last.to() < words.size() && words.get(last.to()).equals("or");
      next();
      now.denier = or ? denier : -1;
    }
    boolean denied = now.denier >= 0 && !(isNormal(item.hit()) && hasDenied());
    now.findings.add(new Segment.Found(item.hit(), denied, now.denier));
  }

  private boolean hasDenied() {
    return now.findings.stream().anyMatch(Segment.Found::denied);
  }

  private boolean isNormal(TermMatch hit) {
    return hit.senses().stream().allMatch(this::isNormal);
  }

  private boolean isNormal(Sense sense) {
    return protocol.step(sense.step()).value(sense.value()).orElseThrow().norm() == Norm.NORMAL;
  }

  private boolean isJoined(SegmentPart item) {
    return last != null && isJoined(last, item);
  }

  private boolean isJoined(SegmentPart first, SegmentPart second) {
    return words.subList(first.to(), second.from()).stream()
        .allMatch(word -> JOINING.contains(word) || lay.isLittle(word));
  }
}
