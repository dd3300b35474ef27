package tiptoe.language.tagger;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import tiptoe.language.SecondReading.LeftOut;
import tiptoe.language.SecondReading.Omitted;
import tiptoe.language.TypedText;
import tiptoe.language.tagger.LeftOutReasons.Reason;
import tiptoe.language.tagger.LeftOutStretches.Stretch;
import tiptoe.language.tagger.LeftOutThings.Things;
import tiptoe.protocol.Side;

/**
 * Reads what was not examined inside a sentence. One stretch says that it was not done, of what, on
 * which side and until when, and a word more in it is not read; what stands behind "because", or
 * behind a break and finds nothing, is the reason, which is free talk. The words are in {@code
 * cues.txt}.
 */
final class LeftOutReader {
  private final SentenceItems said;
  private final LeftOutStretches stretches;
  private final LeftOutThings things;
  private final LeftOutReasons reasons;
  private final LeftOutPlaces places;

  /**
   * @param tells whether words tell a fact that is no reason to leave something out
   */
  LeftOutReader(SentenceItems said, Predicate<List<String>> tells) {
    this.said = said;
    LeftOutNames names = new LeftOutNames(said);
    this.stretches = new LeftOutStretches(said, names);
    this.things = new LeftOutThings(said, names);
    this.reasons = new LeftOutReasons(said, tells);
    this.places = new LeftOutPlaces(said);
  }

  Optional<LeftOut> read() {
    return said.has(WordItem.Kind.CORRECTION, 0, said.words().size())
        ? Optional.empty()
        : IntStream.range(0, said.words().size())
            .mapToObj(stretches::from)
            .flatMap(Optional::stream)
            .filter(stretch -> !isSupposed(stretch.from()))
            .flatMap(stretch -> leftOut(stretch).stream())
            .findFirst();
  }

  // Where it is plain what was left out, and that it was.
  private Optional<LeftOut> leftOut(Stretch stretch) {
    return things
        .of(stretch)
        .filter(all -> !stretch.undone().perceived() || isUnexamined(stretch, all.omitted()))
        .flatMap(all -> leftOut(stretch, all));
  }

  private Optional<LeftOut> leftOut(Stretch stretch, Things all) {
    Set<String> steps =
        all.omitted().stream().flatMap(one -> one.steps().stream()).collect(Collectors.toSet());
    return reasons
        .of(stretch, all, steps)
        .filter(
            why ->
                said.items().stream()
                    .noneMatch(
                        item ->
                            item.kind() == WordItem.Kind.FOREIGN && !takes(item.from(), all, why)))
        .map(
            why -> {
              Side side = why.sides().or(places.sides(stretch, all.omitted())).one();
              return new LeftOut(
                  all.omitted(),
                  side,
                  said.says("unable", stretch.from(), stretch.behind()),
                  why.words(),
                  rest(all, why, side));
            });
  }

  private static boolean takes(int at, Things all, Reason why) {
    return all.from() <= at && at < all.to() || why.from() <= at && at < why.to();
  }

  private List<String> rest(Things all, Reason why, Side side) {
    List<String> rest = new ArrayList<>();
    for (int at = 0; at < said.words().size(); at++) {
      boolean joint = rest.isEmpty() || rest.get(rest.size() - 1).equals(TypedText.BREAK);
      if (said.breaks().at(at) ? !joint : !takes(at, all, why)) {
        if (side != null && isOfThatEye(at)) {
          rest.add(side.id());
        }
        rest.add(said.words().get(at));
      }
    }
    if (!rest.isEmpty() && rest.get(rest.size() - 1).equals(TypedText.BREAK)) {
      rest.remove(rest.size() - 1);
    }
    return rest;
  }

  // "Couldn't get the red reflex on the right, lids are swollen": both lids of that eye.
  private boolean isOfThatEye(int at) {
    int from = said.breaks().from(at);
    int end = said.words().size();
    return said.isListed("lids", at)
        && !said.has(WordItem.Kind.SIDE, from, end)
        && !said.says("of-both-eyes", from, end);
  }

  // What could not be seen, heard or felt was not examined only where something known was in the
  // way: "can't hear a murmur for the crying", there may be none.
  private boolean isUnexamined(Stretch stretch, List<Omitted> omitted) {
    boolean denied = stretch.undone().denied();
    List<String> others = new ArrayList<>(said.words().subList(0, stretch.from()));
    others.addAll(said.words().subList(stretch.behind(), said.words().size()));
    return (stretch.until() || !denied)
        && omitted.stream()
            .flatMap(one -> said.lexicon().matches(one.words()).stream())
            .noneMatch(match -> match.is(Sense.Kind.VALUE))
        && (omitted.stream().allMatch(one -> isMeasured(one, denied))
            || said.lexicon().says("in-the-way", others)
            || said.lexicon().says("reason", others) && !denied);
  }

  // "No length today"; but no temperature is no fever.
  private boolean isMeasured(Omitted one, boolean denied) {
    return !one.steps().isEmpty()
        && one.steps().stream()
            .allMatch(
                step ->
                    said.lexicon().isStepListed("measured", step)
                        || !denied && said.protocol().step(step).isMeasured());
  }

  // "If the baby screams, the murmur is not assessed", "it says hips not examined"; or told of
  // somebody else, or taken back at the end ("…, no").
  private boolean isSupposed(int from) {
    return said.words().subList(0, from).stream()
            .anyMatch(word -> said.lexicon().isListed("not-stated", word))
        || said.items(0, from).stream().anyMatch(this::isOfOthers)
        || isTakenBack(from);
  }

  // "His brother had a red reflex, couldn't get it"; but "mum, …" is spoken to.
  private boolean isOfOthers(WordItem item) {
    int from = said.breaks().from(item.from());
    int to = said.breaks().to(item.from());
    return item.kind() == WordItem.Kind.FOREIGN
        && (said.has(WordItem.Kind.PART, from, to) || said.has(WordItem.Kind.FINDING, from, to));
  }

  private boolean isTakenBack(int from) {
    int begin = said.breaks().from(said.words().size() - 1);
    List<WordItem> last =
        said.items(begin, said.words().size()).stream().filter(item -> !item.isEmpty()).toList();
    return begin > from
        && !last.isEmpty()
        && last.stream()
            .allMatch(
                item -> item.kind() == WordItem.Kind.NOT || item.kind() == WordItem.Kind.DOUBT);
  }
}
