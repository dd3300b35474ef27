package tiptoe.language.tagger;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import tiptoe.language.TypedText;
import tiptoe.language.tagger.LeftOutStretches.Stretch;
import tiptoe.language.tagger.LeftOutThings.Things;

/** Reads why something was left out: free talk beside the stretch that says that it was. */
final class LeftOutReasons {

  /**
   * Why.
   *
   * @param from first word of the stretch and what says why, which stand side by side
   * @param to behind their last word
   * @param words those that say why behind it, with {@link TypedText#BREAK}
   * @param sides with what is said there of where it was not done either
   */
  record Reason(int from, int to, List<String> words, LeftOutSides sides) {}

  private final SentenceItems said;
  private final Predicate<List<String>> tells;

  /**
   * @param tells whether words tell a fact that is no reason to leave something out
   */
  LeftOutReasons(SentenceItems said, Predicate<List<String>> tells) {
    this.said = said;
    this.tells = tells;
  }

  /** None where what stands there takes it back, or finds what was left out. */
  Optional<Reason> of(Stretch stretch, Things things, Set<String> steps) {
    LeftOutSides sides = things.sides();
    int to = Math.max(things.to(), said.breaks().to(stretch.behind()));
    List<String> why = new ArrayList<>(said.words().subList(stretch.behind(), to));
    if (finds(steps, stretch.behind(), to)) {
      return Optional.empty();
    }
    while (to + 1 < said.words().size() && isTalk(to + 1, said.breaks().to(to + 1), steps)) {
      int begin = to + 1;
      to = said.breaks().to(begin);
      if (takesBack(begin, to) || finds(steps, begin, to)) {
        return Optional.empty();
      }
      if (isWhere(begin, to)) {
        sides = sides.or(said.sides(begin, to));
      } else {
        why.add(TypedText.BREAK);
        why.addAll(said.words().subList(begin, to));
      }
    }
    int from = stretch.from();
    int end = said.breaks().at(from - 1) ? from - 1 : from;
    int begin = end > 0 ? said.breaks().from(end - 1) : from;
    boolean named = things.from() <= begin && begin < things.to();
    if (end > 0
        && !named
        && (isSo(begin, from) || isDried(begin, end))
        && isTalk(begin, end, Set.of())) {
      sides = isWhere(begin, end) ? sides.or(said.sides(begin, end)) : sides;
      from = begin;
    }
    return Optional.of(new Reason(from, to, why, sides));
  }

  // "…, so not done", "because …, not done"
  private boolean isSo(int begin, int from) {
    return said.isListed("parts-off", from)
        || said.isListed("parts-off", from - 1)
        || said.isListed("reason-begins", begin)
        || IntStream.range(begin + 1, from - 1).anyMatch(at -> said.isListed("degree", at));
  }

  // "That was his brother": parents may be in the reason, others not behind a word that points.
  private boolean takesBack(int from, int to) {
    boolean denied =
        said.words().subList(from, to).stream()
            .anyMatch(word -> said.lexicon().isListed("undone-not", word));
    boolean another =
        said.has(WordItem.Kind.FOREIGN, from, to)
            && (said.isListed("refers-back", from)
                || said.lexicon()
                    .isListed("refers-back", said.words().get(from).replace("'s", "")));
    return another || !denied && said.says("done-after-all", from, to);
  }

  // "Left or right", "hand or foot", "neither side": where it was not done either.
  private boolean isWhere(int from, int to) {
    if (said.says("rightly", from, to)) {
      return false;
    }
    if (said.says("side-meant", from, to) && said.has(WordItem.Kind.SIDE, from, to)) {
      return true;
    }
    return said.items(from, to).stream()
        .allMatch(
            item ->
                switch (item.kind()) {
                  case SIDE, NOT, OR, AND -> true;
                  case PART ->
                      said.has(WordItem.Kind.OR, from, to)
                          || said.has(WordItem.Kind.SIDE, from, to);
                  default -> item.isEmpty();
                });
  }

  // Whether a stretch names and finds nothing, but for how the baby is just now.
  private boolean isTalk(int from, int to, Set<String> steps) {
    return said.isListed("reason-begins", from)
        || isDried(from, to)
        || isWhere(from, to)
        || said.items(from, to).stream()
                .noneMatch(
                    item ->
                        isOfExamination(item) && !isTensed(item, from, to) && !names(item, steps))
            && !tells.test(said.words().subList(from, to));
  }

  private boolean isOfExamination(WordItem item) {
    return switch (item.kind()) {
      case NUMBER -> true;
      case PART -> !item.match().steps(Sense.Kind.PART).isEmpty() && !isOfOther(item);
      case FINDING -> findsElse(item.match());
      default -> false;
    };
  }

  // "The Moro not done, mother asked me not to startle him": what was left out, in other words.
  private static boolean names(WordItem item, Set<String> steps) {
    return item.kind() == WordItem.Kind.PART
        && !steps.isEmpty()
        && steps.containsAll(item.match().steps(Sense.Kind.PART));
  }

  // "He just settled on dad's chest"
  private boolean isOfOther(WordItem part) {
    return said.items().stream()
        .anyMatch(item -> item.to() == part.from() && item.kind() == WordItem.Kind.FOREIGN);
  }

  // "The cord's dried right up": why its vessels cannot be counted.
  private boolean isDried(int from, int to) {
    List<WordItem> findings =
        said.items(from, to).stream().filter(item -> item.kind() == WordItem.Kind.FINDING).toList();
    return !findings.isEmpty()
        && findings.stream().allMatch(item -> said.says("reason", item.from(), item.to()));
  }

  private boolean findsElse(TermMatch finding) {
    return finding.senses().stream()
        .filter(sense -> !sense.bound())
        .anyMatch(
            sense ->
                !said.lexicon().isStepListed("state", sense.step())
                    || said.lexicon().isAbnormal(sense));
  }

  // "Screaming and stiff as a board, so Barlow not done": stiff for that.
  private boolean isTensed(WordItem item, int from, int to) {
    return item.kind() == WordItem.Kind.FINDING
        && said.says("in-the-way", from, to)
        && item.match().steps(Sense.Kind.VALUE).stream()
            .allMatch(step -> said.lexicon().isStepListed("tensed", step));
  }

  // Whether something is found there of the steps.
  private boolean finds(Set<String> steps, int from, int to) {
    return said.items(from, to).stream()
        .filter(item -> item.kind() == WordItem.Kind.FINDING)
        .filter(
            item ->
                !said.lexicon().isListed("perceive", said.words().subList(item.from(), item.to())))
        .filter(item -> !item.match().isBound() || !said.says("in-the-way", from, to))
        .filter(item -> item.from() == 0 || !said.isListed("baby-is", item.from() - 1))
        .flatMap(item -> item.match().steps(Sense.Kind.VALUE).stream())
        .anyMatch(steps::contains);
  }
}
