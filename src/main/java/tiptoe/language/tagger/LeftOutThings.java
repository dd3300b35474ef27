package tiptoe.language.tagger;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import tiptoe.language.SecondReading.Omitted;
import tiptoe.language.tagger.LeftOutStretches.Stretch;
import tiptoe.protocol.Side;

/** Says what a stretch is about, which may have been named before it. */
final class LeftOutThings {

  /**
   * What was left out.
   *
   * @param from first word of the stretch that named it before
   * @param to behind its last one; the same where nothing else is said there
   */
  record Things(List<Omitted> omitted, LeftOutSides sides, int from, int to) {}

  private final LeftOutSentence said;
  private final LeftOutNames names;

  LeftOutThings(LeftOutSentence said, LeftOutNames names) {
    this.said = said;
    this.names = names;
  }

  /** None where it is not plain. */
  Optional<Things> of(Stretch stretch) {
    List<String> deed = stretch.undone().deed();
    List<List<String>> named =
        stretch.names().isEmpty() && !deed.isEmpty() && !names.steps(deed).isEmpty()
            ? List.of(deed)
            : stretch.names();
    return named.isEmpty()
        ? before(stretch)
        : Optional.of(
            new Things(named.stream().map(names::omitted).toList(), stretch.sides(), 0, 0));
  }

  // "Kidneys, not examined", "stepping i never got, he was asleep, so not done", "left femoral
  // strong, right one not done".
  private Optional<Things> before(Stretch stretch) {
    LeftOutSides sides = stretch.sides();
    int end = endBefore(stretch.from());
    while (end > 0) {
      int begin = said.breaks().from(end - 1);
      List<WordItem> items = said.items(begin, end);
      List<Omitted> named = names.in(items);
      Set<Side> here = said.sides(begin, end);
      if (!named.isEmpty()) {
        boolean ofOther = sides.side() != null && !here.isEmpty() && !here.contains(sides.side());
        return named.stream().allMatch(one -> finds(items, one.steps()) == ofOther)
            ? Optional.of(new Things(named, sides.or(here), begin, ofOther ? begin : end))
            : Optional.empty();
      }
      if (!said.says("in-the-way", begin, end)
          && items.stream()
              .anyMatch(i -> i.kind() == WordItem.Kind.FINDING && !i.match().isBound())) {
        return Optional.empty();
      }
      sides = sides.or(here);
      end = endBefore(begin);
    }
    return Optional.empty();
  }

  private int endBefore(int word) {
    return said.breaks().at(word - 1) ? word - 1 : word;
  }

  // Whether something is found of the steps, and not only missed or denied.
  private boolean finds(List<WordItem> items, Set<String> steps) {
    return items.stream()
        .filter(item -> item.kind() == WordItem.Kind.FINDING)
        .filter(item -> item.match().steps(Sense.Kind.VALUE).stream().anyMatch(steps::contains))
        .anyMatch(
            item ->
                !said.lexicon().denies(item.match(), said.words())
                    && !steps.contains(said.words().get(item.to() - 1)));
  }
}
