package tiptoe.language.tagger;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Predicate;

/**
 * A hit with the part it plays in its sentence.
 *
 * @param role what it is here
 * @param hit with the senses of that role only
 */
record SegmentPart(Role role, TermMatch hit) {
  private static final int LONG = 2;

  /** Parts that words can play. */
  enum Role {
    PART,
    FINDING,
    SIDE,
    NOT,
    TURN
  }

  int from() {
    return hit.from();
  }

  int to() {
    return hit.to();
  }

  /**
   * The items of a sentence, given what its words were labelled. A hit that the model passed over
   * still counts where it belongs to one that it did not, or is too long to stand there by chance.
   *
   * @param denies whether a hit begins with a word that denies
   */
  static List<SegmentPart> of(
      List<TermMatch> hits, List<Label> labels, Predicate<TermMatch> denies) {
    Set<String> parts = new HashSet<>();
    Set<String> findings = new HashSet<>();
    boolean numbers = labels.contains(Label.NUMBER);
    for (TermMatch hit : hits) {
      if (isLabelled(hit, labels)) {
        parts.addAll(hit.steps(Sense.Kind.PART));
        findings.addAll(hit.steps(Sense.Kind.VALUE));
      }
    }
    List<SegmentPart> items = new ArrayList<>();
    for (TermMatch hit : hits) {
      boolean fits =
          hit.steps(Sense.Kind.PART).stream().anyMatch(findings::contains)
              || hit.steps(Sense.Kind.VALUE).stream().anyMatch(parts::contains)
              || numbers && hit.is(Sense.Kind.PART)
              || hit.is(Sense.Kind.VALUE) && (denies.test(hit) || isLong(hit));
      if (hit.isCue("talk")) {
        continue;
      }
      if (hit.is(Sense.Kind.CUE) || isLabelled(hit, labels) || fits) {
        items.add(of(hit, labels));
      }
    }
    return items;
  }

  private static boolean isLong(TermMatch hit) {
    return hit.words() >= LONG && hit.senses().stream().anyMatch(sense -> !sense.bound());
  }

  private static boolean isLabelled(TermMatch hit, List<Label> labels) {
    return labels.subList(hit.from(), hit.to()).stream().anyMatch(label -> label != null);
  }

  private static SegmentPart of(TermMatch hit, List<Label> labels) {
    if (hit.is(Sense.Kind.CUE)) {
      Role role = hit.isCue("turn") ? Role.TURN : hit.isCue("no") ? Role.NOT : Role.SIDE;
      return new SegmentPart(role, hit);
    }
    boolean finding = hit.is(Sense.Kind.VALUE);
    boolean part = hit.is(Sense.Kind.PART) || hit.is(Sense.Kind.PLACE);
    if (finding && part) {
      long findings =
          labels.subList(hit.from(), hit.to()).stream().filter(Label.FINDING::equals).count();
      finding = 2 * findings > hit.to() - hit.from();
    }
    return finding
        ? new SegmentPart(Role.FINDING, hit.only(Sense.Kind.VALUE))
        : new SegmentPart(Role.PART, hit.only(Sense.Kind.PART, Sense.Kind.PLACE));
  }
}
