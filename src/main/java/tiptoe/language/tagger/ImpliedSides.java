package tiptoe.language.tagger;

import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import tiptoe.protocol.Side;

/**
 * The sides of a finding that its own stretch between breaks does not name: those of a heading
 * before it ("left hip first, Barlow negative, Ortolani negative"), of the same found just before
 * it in other words ("clunk on the left, Ortolani positive"), or of a stretch behind it that names
 * both ("sole creases present, plantar grasp present, both feet") or ends the sentence with one
 * structure ("Barlow positive, right hip").
 */
final class ImpliedSides {
  private final LayLexicon lexicon;
  private final List<String> words;
  private final List<List<WordItem>> chunks;

  /**
   * Sides, and the words that name them.
   *
   * @param sides one or both
   */
  record Implied(Set<Side> sides, Set<Integer> words) {}

  ImpliedSides(LayLexicon lexicon, List<String> words, List<WordItem> items) {
    this.lexicon = lexicon;
    this.words = words;
    this.chunks = WordItem.chunks(items);
  }

  /**
   * The sides of a finding of this step.
   *
   * @param evidence its words, none of which names a side
   */
  Optional<Implied> of(String step, Set<Integer> evidence) {
    int first = chunk(evidence.stream().min(Integer::compare).orElse(0));
    int last = chunk(evidence.stream().max(Integer::compare).orElse(0));
    if (chunks.subList(first, last + 1).stream().anyMatch(ImpliedSides::names)) {
      return Optional.empty();
    }
    return heading(step, first)
        .or(() -> saidBefore(step, first))
        .or(() -> behind(step, last))
        .or(() -> at(step, last));
  }

  // "Clunk on the left, Ortolani positive": what is not normal, in other words for the same step.
  private Optional<Implied> saidBefore(String step, int first) {
    if (first == 0) {
      return Optional.empty();
    }
    List<WordItem> before = chunks.get(first - 1);
    List<WordItem> found = findings(before);
    boolean same =
        !found.isEmpty()
            && found.stream().allMatch(item -> isOfAbnormal(step, item))
            && findings(chunks.get(first)).stream().allMatch(item -> isOfAbnormal(step, item));
    return same && sides(before).size() == 1 && isBareBut(found, before)
        ? Optional.of(implied(before))
        : Optional.empty();
  }

  // "Barlow positive, right hip": the structure at the end, which heads nothing.
  private Optional<Implied> at(String step, int last) {
    int end = chunks.size() - 1;
    boolean ends =
        end > last
            && chunks.subList(last + 1, end).stream().noneMatch(ImpliedSides::names)
            && sides(chunks.get(end)).size() == 1
            && chunks.get(end).stream().anyMatch(item -> item.kind() == WordItem.Kind.PART)
            && isBare(chunks.get(end));
    return ends && isOfOneRegion(step, last, end + 1)
        ? Optional.of(implied(chunks.get(end)))
        : Optional.empty();
  }

  private static List<WordItem> findings(List<WordItem> chunk) {
    return chunk.stream().filter(item -> item.kind() == WordItem.Kind.FINDING).toList();
  }

  private boolean isOfAbnormal(String step, WordItem item) {
    List<Sense> senses =
        item.match().senses().stream().filter(sense -> step.equals(sense.step())).toList();
    return !senses.isEmpty() && senses.stream().allMatch(lexicon::isAbnormal);
  }

  private static boolean isBareBut(List<WordItem> findings, List<WordItem> chunk) {
    return isBare(chunk.stream().filter(item -> !findings.contains(item)).toList());
  }

  private Optional<Implied> heading(String step, int first) {
    int at = first - 1;
    while (at >= 0 && !names(chunks.get(at))) {
      at--;
    }
    // "Left first, then right": of both.
    boolean more = at > 0 && names(chunks.get(at - 1)) && isBare(chunks.get(at - 1));
    return at >= 0 && isBare(chunks.get(at)) && !more && isOfOneRegion(step, at, first + 1)
        ? Optional.of(implied(chunks.get(at)))
        : Optional.empty();
  }

  private Optional<Implied> behind(String step, int last) {
    int at = last + 1;
    while (at < chunks.size() && !names(chunks.get(at)) && !saysBoth(chunks.get(at))) {
      at++;
    }
    return at < chunks.size()
            && (saysBoth(chunks.get(at)) || sides(chunks.get(at)).size() == 2)
            && isBare(chunks.get(at))
            && isOfOneRegion(step, last, at + 1)
        ? Optional.of(implied(chunks.get(at)))
        : Optional.empty();
  }

  private int chunk(int word) {
    int at = 0;
    while (at + 1 < chunks.size()
        && (chunks.get(at).isEmpty() || last(chunks.get(at)).to() <= word)) {
      at++;
    }
    return at;
  }

  private static WordItem last(List<WordItem> chunk) {
    return chunk.get(chunk.size() - 1);
  }

  private static boolean names(List<WordItem> chunk) {
    return chunk.stream().anyMatch(item -> item.kind() == WordItem.Kind.SIDE);
  }

  // "Both feet" is one term.
  private boolean saysBoth(List<WordItem> chunk) {
    return chunk.stream()
        .filter(item -> item.kind() == WordItem.Kind.PART)
        .anyMatch(item -> lexicon.says("both", words.subList(item.from(), item.to())));
  }

  private static Set<Side> sides(List<WordItem> chunk) {
    Set<Side> sides = EnumSet.noneOf(Side.class);
    chunk.stream()
        .filter(item -> item.kind() == WordItem.Kind.SIDE)
        .forEach(item -> sides.addAll(item.sides()));
    return sides;
  }

  // Sides, structures and words of no weight.
  private static boolean isBare(List<WordItem> chunk) {
    return chunk.stream()
        .allMatch(
            item ->
                item.isEmpty()
                    || item.kind() == WordItem.Kind.SIDE
                    || item.kind() == WordItem.Kind.PART
                    || item.kind() == WordItem.Kind.AND);
  }

  // All that is named there, each by one of the steps that it may be of.
  private boolean isOfOneRegion(String step, int from, int to) {
    return chunks.subList(from, to).stream()
        .flatMap(List::stream)
        .map(
            item -> {
              Set<String> steps = new HashSet<>(item.match().steps(Sense.Kind.PART));
              steps.addAll(item.match().steps(Sense.Kind.VALUE));
              return steps;
            })
        .allMatch(
            steps -> steps.isEmpty() || steps.stream().anyMatch(one -> lexicon.near(one, step)));
  }

  private Implied implied(List<WordItem> chunk) {
    Set<Side> sides = sides(chunk);
    Set<Integer> named = new TreeSet<>();
    chunk.stream()
        .filter(item -> item.kind() == WordItem.Kind.SIDE || item.kind() == WordItem.Kind.PART)
        .forEach(item -> item.match().addTo(named));
    return new Implied(sides.isEmpty() ? EnumSet.allOf(Side.class) : sides, named);
  }
}
