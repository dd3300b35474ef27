package tiptoe.language.tagger;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import tiptoe.protocol.Side;

/** A stretch of a sentence that says one thing: structures, what was found there, on which side. */
final class Segment {

  /** A finding with whether it was denied, and by which word. */
  record Found(TermMatch match, boolean denied, int denier) {}

  final List<TermMatch> parts = new ArrayList<>();
  final List<Found> findings = new ArrayList<>();
  final Set<Side> sides = EnumSet.noneOf(Side.class);
  final Set<Integer> sideWords = new LinkedHashSet<>();

  /** The word that denies what comes behind it; −1 where there is none. */
  int denier = -1;

  /** Whether the word that denies stands before a structure, with no finding between. */
  boolean deniesPart;

  Set<String> partSteps() {
    Set<String> steps = new LinkedHashSet<>();
    parts.forEach(part -> steps.addAll(part.steps(Sense.Kind.PART)));
    return steps;
  }

  boolean isPair(String step) {
    return parts.stream()
        .flatMap(part -> part.senses().stream())
        .anyMatch(sense -> sense.pair() && step.equals(sense.step()));
  }

  boolean isEmpty() {
    return parts.isEmpty() && findings.isEmpty() && sides.isEmpty();
  }
}
