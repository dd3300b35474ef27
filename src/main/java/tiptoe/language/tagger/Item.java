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
record Item(Role role, Hit hit) {
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
  static List<Item> of(List<Hit> hits, List<Label> labels, Predicate<Hit> denies) {
    Set<String> parts = new HashSet<>();
    Set<String> findings = new HashSet<>();
    boolean numbers = labels.contains(Label.NUMBER);
    for (Hit hit : hits) {
      if (isLabelled(hit, labels)) {
        parts.addAll(hit.steps(Sense.Kind.PART));
        findings.addAll(hit.steps(Sense.Kind.VALUE));
      }
    }
    List<Item> items = new ArrayList<>();
    for (Hit hit : hits) {
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

  private static boolean isLong(Hit hit) {
    return hit.words() >= LONG && hit.senses().stream().anyMatch(sense -> !sense.bound());
  }

  private static boolean isLabelled(Hit hit, List<Label> labels) {
    return labels.subList(hit.from(), hit.to()).stream().anyMatch(label -> label != null);
  }

  private static Item of(Hit hit, List<Label> labels) {
    if (hit.is(Sense.Kind.CUE)) {
      Role role = hit.isCue("turn") ? Role.TURN : hit.isCue("no") ? Role.NOT : Role.SIDE;
      return new Item(role, hit);
    }
    boolean finding = hit.is(Sense.Kind.VALUE);
    boolean part = hit.is(Sense.Kind.PART) || hit.is(Sense.Kind.PLACE);
    if (finding && part) {
      long findings =
          labels.subList(hit.from(), hit.to()).stream().filter(Label.FINDING::equals).count();
      finding = 2 * findings > hit.to() - hit.from();
    }
    return finding
        ? new Item(Role.FINDING, hit.only(Sense.Kind.VALUE))
        : new Item(Role.PART, hit.only(Sense.Kind.PART, Sense.Kind.PLACE));
  }
}
