package tiptoe.language.tagger;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Set;

/** Labels the words of a sentence whose meaning is known. */
final class Labeller {
  private final LayLexicon lexicon;

  Labeller(LayLexicon lexicon) {
    this.lexicon = lexicon;
  }

  /**
   * The labels.
   *
   * @param meant {@code step} and {@code step value} of all that the sentence states or denies
   */
  List<Label> labels(List<String> words, Set<String> meant) {
    List<Label> labels = new ArrayList<>(Collections.nCopies(words.size(), null));
    if (meant.isEmpty()) {
      return labels;
    }
    List<TermMatch> matches = lexicon.matches(words);
    for (TermMatch match : matches) {
      Label label = label(match, meant);
      for (int at = match.from(); at < match.to(); at++) {
        labels.set(at, label);
      }
    }
    for (Numbers.At number : Numbers.in(words, matches)) {
      fill(labels, number.from(), number.numberTo(), Label.NUMBER);
      fill(labels, number.numberTo(), number.to(), Label.UNIT);
    }
    for (int at = 0; at < words.size(); at++) {
      if (labels.get(at) == null && Numbers.isUnit(words.get(at))) {
        labels.set(at, Label.UNIT);
      } else if (labels.get(at) == null
          && lexicon.list("severity").contains(List.of(words.get(at)))) {
        labels.set(at, Label.SEVERITY);
      }
    }
    return labels;
  }

  private static void fill(List<Label> labels, int from, int to, Label label) {
    for (int at = from; at < to; at++) {
      labels.set(at, label);
    }
  }

  private static Label label(TermMatch match, Set<String> meant) {
    Label place = null;
    for (Sense sense : match.senses()) {
      switch (sense.kind()) {
        case VALUE -> {
          if (meant.contains(sense.step() + " " + sense.value())) {
            return Label.FINDING;
          }
        }
        case PART -> {
          if (meant.contains(sense.step())) {
            place = Label.STRUCTURE;
          }
        }
        case PLACE -> {
          if (place == null && meant.contains(sense.step())) {
            place = Label.PLACE;
          }
        }
        case CUE -> {
          if (sense.isCue("no")) {
            return Label.NEGATION;
          }
          return sense.isCue("turn") ? null : Label.SIDE;
        }
        default -> throw new IllegalStateException(sense.toString());
      }
    }
    return place;
  }
}
