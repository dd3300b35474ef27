package tiptoe.language.tagger;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Predicate;

/**
 * A match with the part it plays in its sentence.
 *
 * @param role what it is here
 * @param match with the senses of that role only
 */
record SegmentPart(Role role, TermMatch match) {
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
    return match.from();
  }

  int to() {
    return match.to();
  }

  /**
   * The parts of a sentence, given what its words were labelled. A match that the model passed over
   * still counts where it belongs to one that it did not, or is too long to stand there by chance.
   *
   * @param denies whether a match begins with a word that denies
   */
  static List<SegmentPart> of(
      List<TermMatch> matches, List<Label> labels, Predicate<TermMatch> denies) {
    Set<String> steps = new HashSet<>();
    Set<String> findings = new HashSet<>();
    boolean numbers = labels.contains(Label.NUMBER);
    for (TermMatch match : matches) {
      if (isLabelled(match, labels)) {
        steps.addAll(match.steps(Sense.Kind.PART));
        findings.addAll(match.steps(Sense.Kind.VALUE));
      }
    }
    List<SegmentPart> parts = new ArrayList<>();
    for (TermMatch match : matches) {
      boolean fits =
          match.steps(Sense.Kind.PART).stream().anyMatch(findings::contains)
              || match.steps(Sense.Kind.VALUE).stream().anyMatch(steps::contains)
              || numbers && match.is(Sense.Kind.PART)
              || match.is(Sense.Kind.VALUE) && (denies.test(match) || isLong(match));
      if (match.isCue("talk")) {
        continue;
      }
      if (match.is(Sense.Kind.CUE) || isLabelled(match, labels) || fits) {
        parts.add(of(match, labels));
      }
    }
    return parts;
  }

  private static boolean isLong(TermMatch match) {
    return match.words() >= LONG && match.senses().stream().anyMatch(sense -> !sense.bound());
  }

  private static boolean isLabelled(TermMatch match, List<Label> labels) {
    return labels.subList(match.from(), match.to()).stream().anyMatch(label -> label != null);
  }

  private static SegmentPart of(TermMatch match, List<Label> labels) {
    if (match.is(Sense.Kind.CUE)) {
      Role role = match.isCue("turn") ? Role.TURN : match.isCue("no") ? Role.NOT : Role.SIDE;
      return new SegmentPart(role, match);
    }
    boolean finding = match.is(Sense.Kind.VALUE);
    boolean part = match.is(Sense.Kind.PART) || match.is(Sense.Kind.PLACE);
    if (finding && part) {
      long findings =
          labels.subList(match.from(), match.to()).stream().filter(Label.FINDING::equals).count();
      finding = 2 * findings > match.to() - match.from();
    }
    return finding
        ? new SegmentPart(Role.FINDING, match.only(Sense.Kind.VALUE))
        : new SegmentPart(Role.PART, match.only(Sense.Kind.PART, Sense.Kind.PLACE));
  }
}
