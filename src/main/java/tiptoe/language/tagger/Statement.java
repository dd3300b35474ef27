package tiptoe.language.tagger;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import tiptoe.protocol.Side;

/** A stretch of a sentence that says one thing: structures, what was found there, on which side. */
final class Statement {

  /**
   * A finding with whether it was denied, and by which word.
   *
   * @param unclear whether the denial before it may or may not reach it
   */
  record Found(TermMatch match, boolean denied, int denier, boolean unclear) {}

  final List<TermMatch> parts = new ArrayList<>();
  final List<Found> findings = new ArrayList<>();
  final Set<Side> sides = EnumSet.noneOf(Side.class);
  final Set<Integer> sideWords = new LinkedHashSet<>();

  /** The steps it turned out to be about. */
  final Set<String> steps = new LinkedHashSet<>();

  /** The word that denies what comes behind it; −1 where there is none. */
  int denier = -1;

  /** Whether the word that denies stands before a structure, with no finding between. */
  boolean deniesPart;

  /** The words that say that a structure is there; −1 where there are none. */
  int perceived = -1;

  /** The word that says that it is as before, of another structure; −1 where there is none. */
  int alike = -1;

  /** Whether its structure is one of two: "one of her ears". */
  boolean ofOne;

  /** Whether it was said to correct what comes before. */
  boolean corrects;

  /** Whether it says of what that before it is not so. */
  boolean excepts;

  /** Whether it puts right a side and then names the other: nobody knows which. */
  boolean wavers;

  /** The words that say that this side is as the other; −1 where there are none. */
  int same = -1;

  /** Whether what it says was taken back. */
  boolean takenBack;

  /** The statement before, whose structure and side it goes on about; null for the first. */
  Statement topicOf;

  Statement(Statement before) {
    this.topicOf = before;
  }

  Set<String> partSteps() {
    Set<String> all = new LinkedHashSet<>();
    parts.forEach(part -> all.addAll(part.steps(Sense.Kind.PART)));
    return all;
  }

  /** Whether it has structures and each has its finding: what is named next begins anew. */
  boolean allOwnParts() {
    return !parts.isEmpty() && !findings.isEmpty();
  }

  /** The steps that the statement before was about. */
  Set<String> topicSteps() {
    return topicOf == null ? Set.of() : topicOf.steps;
  }

  /** The steps of the structure last named. */
  Set<String> topicParts() {
    for (Statement before = topicOf; before != null; before = before.topicOf) {
      if (!before.parts.isEmpty()) {
        return before.partSteps();
      }
    }
    return Set.of();
  }

  /** The sides of a finding of this step: its own, or those of what it goes on about. */
  Set<Side> sidesFor(String step) {
    if (!sides.isEmpty() || topicOf == null || !parts.isEmpty()) {
      return sides;
    }
    return topicOf.steps.contains(step) ? topicOf.sidesFor(step) : sides;
  }

  boolean isPair(String step) {
    if (ofOne) {
      return false;
    }
    boolean pair =
        parts.stream()
            .flatMap(part -> part.senses().stream())
            .anyMatch(sense -> sense.pair() && step.equals(sense.step()));
    return pair || parts.isEmpty() && sides.isEmpty() && topicOf != null && topicOf.isPair(step);
  }

  boolean isOnlySide() {
    return findings.isEmpty() && parts.isEmpty() && denier < 0;
  }

  boolean isEmpty() {
    return parts.isEmpty() && findings.isEmpty() && sides.isEmpty() && denier < 0 && same < 0;
  }
}
