package tiptoe.language.tagger;

import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import tiptoe.language.SecondReading.Omitted;
import tiptoe.language.tagger.LeftOutStretches.Stretch;
import tiptoe.protocol.Side;

/**
 * Says on which side something was left out where only the limb or structure that it is in is named
 * with a side: "left hand's splinted, so I've not counted those fingers".
 */
final class LeftOutPlaces {
  private final SentenceItems said;

  LeftOutPlaces(SentenceItems said) {
    this.said = said;
  }

  /** Whether a structure is of a step, or a place of it. */
  static boolean isOf(TermMatch structure, String step) {
    return structure.steps(Sense.Kind.PART).contains(step)
        || structure.steps(Sense.Kind.PLACE).contains(step);
  }

  /** The sides that the rest of the sentence names of where all of it is. */
  Set<Side> sides(Stretch stretch, List<Omitted> omitted) {
    Set<String> steps =
        omitted.stream().flatMap(one -> one.steps().stream()).collect(Collectors.toSet());
    Set<Side> sides = EnumSet.noneOf(Side.class);
    if (omitted.stream().anyMatch(this::isOfBoth)) {
      return sides;
    }
    boolean pointed = said.says("pointed-at", stretch.from(), stretch.behind());
    int from = 0;
    while (from < said.words().size()) {
      int to = said.breaks().to(from);
      if (from < stretch.from()) {
        to = Math.min(to, stretch.from());
      }
      if (from == stretch.from()) {
        from = stretch.behind();
        to = said.breaks().to(from);
      }
      if (from < to && (pointed || !finds(from, to) && !isFound(steps, from, to))) {
        sides.addAll(sides(from, to, steps));
      }
      from = said.breaks().at(to) ? to + 1 : to;
    }
    return sides;
  }

  // "The red reflexes", of one side each; but "the fingers" may be of one hand.
  private boolean isOfBoth(Omitted omitted) {
    String name = String.join(" ", omitted.words());
    return omitted.steps().isEmpty()
        || omitted.steps().stream()
            .anyMatch(
                step ->
                    said.lexicon().namesPair(step, omitted.words())
                        && !said.protocol().step(step).name(Side.LEFT).endsWith(" " + name));
  }

  // "Palm creases not looked at, and the right hand's creases are ordinary": it was, on that side.
  private boolean isFound(Set<String> steps, int from, int to) {
    List<WordItem> items = said.items(from, to);
    return items.stream().anyMatch(item -> item.kind() == WordItem.Kind.FINDING)
        && items.stream()
            .filter(item -> item.kind() == WordItem.Kind.PART)
            .anyMatch(
                item -> item.match().steps(Sense.Kind.PART).stream().anyMatch(steps::contains));
  }

  private boolean finds(int from, int to) {
    return !said.says("in-the-way", from, to)
        && said.items(from, to).stream()
            .anyMatch(item -> item.kind() == WordItem.Kind.FINDING && !item.match().isBound());
  }

  private Set<Side> sides(int from, int to, Set<String> steps) {
    Set<Side> sides = EnumSet.noneOf(Side.class);
    for (TermMatch structure : said.lexicon().matches(said.words().subList(from, to))) {
      if (steps.stream().allMatch(step -> isOf(structure, step))) {
        sides.addAll(side(from, from + structure.from(), to));
      }
    }
    for (int at = from; at < to; at++) {
      if (isAtEnd(at, steps)) {
        sides.addAll(side(from, at, to));
      }
    }
    return sides;
  }

  // "Her right arm's in a backslab": of her fingers.
  private boolean isAtEnd(int at, Set<String> steps) {
    String word = LayLexicon.plain(said.words().get(at)).replace("'s", "");
    return Stream.of("arm", "leg")
        .filter(limb -> said.lexicon().isListed(limb, word))
        .anyMatch(
            limb ->
                steps.stream().allMatch(step -> said.lexicon().isStepListed("in-" + limb, step)));
  }

  private Set<Side> side(int from, int structure, int to) {
    int before = structure - 1;
    return before >= from && said.isSide(before)
        ? Set.of(Side.of(said.words().get(before)))
        : said.sides(from, to);
  }
}
