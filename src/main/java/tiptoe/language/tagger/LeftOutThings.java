package tiptoe.language.tagger;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
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

  private final SentenceItems said;
  private final LeftOutNames names;

  LeftOutThings(SentenceItems said, LeftOutNames names) {
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
            narrowed(
                stretch, named.stream().flatMap(name -> omitted(stretch, name).stream()).toList()));
  }

  // "Hips not done, Barlow and Ortolani", "I'll leave the hips, Barlow not examined": these of
  // them.
  private Things narrowed(Stretch stretch, List<Omitted> omitted) {
    Things all = new Things(omitted, stretch.sides(), 0, 0);
    int begin = stretch.behind() + 1;
    if (omitted.size() > 1 || begin >= said.words().size() || !said.breaks().at(begin - 1)) {
      return all;
    }
    int to = said.breaks().to(begin);
    List<WordItem> items = said.items(begin, to);
    List<Omitted> parts = names.in(items);
    Set<String> whole = names.all(omitted.get(0).words());
    boolean names =
        items.stream()
            .allMatch(
                item ->
                    item.isEmpty()
                        || item.kind() == WordItem.Kind.PART
                        || item.kind() == WordItem.Kind.AND
                        || item.kind() == WordItem.Kind.OR
                        || said.lexicon().isListed("left-out-outright", said.said(item)));
    return names
            && !parts.isEmpty()
            && parts.stream().allMatch(one -> whole.containsAll(one.steps()))
            && parts.stream().mapToInt(one -> one.steps().size()).sum() < whole.size()
        ? new Things(parts, stretch.sides(), begin, to)
        : all;
  }

  // What was found on the other side of the place that is named.
  private Set<String> ofOtherSide(Stretch stretch, List<String> name) {
    Set<String> found = new TreeSet<>();
    List<TermMatch> places = said.lexicon().matches(name);
    Side side = stretch.sides().one();
    int end = side == null ? 0 : said.endBefore(stretch.from());
    while (end > 0) {
      int begin = said.breaks().from(end - 1);
      List<WordItem> items = said.items(begin, end);
      Set<Side> here = said.sides(begin, end);
      List<Omitted> named = names.in(items);
      if (here.contains(side) || here.isEmpty() && !named.isEmpty()) {
        break;
      }
      named.stream()
          .filter(one -> finds(items, one.steps()) && !isWhere(one, named))
          .flatMap(one -> one.steps().stream())
          .filter(step -> places.stream().anyMatch(place -> LeftOutPlaces.isOf(place, step)))
          .forEach(found::add);
      end = said.endBefore(begin);
    }
    return found;
  }

  // "Left eye red reflex good": where something is, which is found.
  private boolean isWhere(Omitted one, List<Omitted> named) {
    return named.stream()
        .filter(other -> other != one && !other.steps().isEmpty())
        .anyMatch(
            other ->
                said.lexicon().matches(one.words()).stream()
                    .anyMatch(part -> part.steps(Sense.Kind.PLACE).containsAll(other.steps())));
  }

  // "A good red reflex in the right eye, the left I haven't been able to check"
  private List<Omitted> withoutPlaces(List<Omitted> named) {
    return named.stream().filter(one -> !isWhere(one, named)).toList();
  }

  // "Left red reflex good, right eye not checked": the red reflex of it.
  private List<Omitted> omitted(Stretch stretch, List<String> name) {
    Omitted alone = names.omitted(name, stretch.undone().deed());
    Set<String> found = ofOtherSide(stretch, name);
    return found.isEmpty() || found.stream().anyMatch(alone.steps()::contains)
        ? List.of(alone)
        : found.stream().map(step -> new Omitted(List.of(), Set.of(step))).toList();
  }

  // "Kidneys, not examined", "stepping i never got, he was asleep, so not done", "left femoral
  // strong, right one not done".
  private Optional<Things> before(Stretch stretch) {
    LeftOutSides sides = stretch.sides();
    int end = said.endBefore(stretch.from());
    while (end > 0) {
      int begin = said.breaks().from(end - 1);
      List<WordItem> items = said.items(begin, end);
      List<Omitted> named =
          isWhy(begin, end) ? List.of() : withoutPlaces(ofNoState(names.in(items)));
      Set<Side> here = said.sides(begin, end);
      if (!named.isEmpty() && said.says("is-told", begin, end)) {
        return Optional.empty();
      }
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
      end = said.endBefore(begin);
    }
    return Optional.empty();
  }

  // "Didn't get the red reflexes, the lids are glued shut, so not examined": the red reflexes.
  private boolean isWhy(int begin, int end) {
    return said.says("in-the-way", begin, end)
        && said.words().subList(0, begin).stream()
            .anyMatch(word -> said.lexicon().isListed("undone-not", word));
  }

  // "Haven't done Barlow as he's crying so hard, so not examined": not the cry.
  private List<Omitted> ofNoState(List<Omitted> named) {
    List<Omitted> others =
        named.stream()
            .filter(
                one ->
                    one.steps().isEmpty()
                        || !one.steps().stream()
                            .allMatch(step -> said.lexicon().isStepListed("state", step)))
            .toList();
    return others.isEmpty() ? named : others;
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
