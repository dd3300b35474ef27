package tiptoe.language;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import tiptoe.language.SecondReading.Span;

/** A sentence less what is said aside, which knows where each of its words stood. */
final class LessAsides {
  private final List<String> words = new ArrayList<>();
  private final List<Integer> places = new ArrayList<>();
  private final List<Span> asides = new ArrayList<>();

  /**
   * @param spoken with breaks
   * @param aside indexes of the words that are left out; not of all
   */
  LessAsides(List<String> spoken, Set<Integer> aside) {
    int place = 0;
    for (int at = 0; at < spoken.size(); at++) {
      boolean isWord = TypedText.isWord(spoken.get(at));
      if (isWord && aside.contains(at)) {
        asides.add(new Span("aside", place, place + 1));
      } else if (!aside.contains(at) && !(isBreak(spoken.get(at)) && isAtBreak())) {
        words.add(spoken.get(at));
        places.addAll(isWord ? List.of(place) : List.of());
      }
      place += isWord ? 1 : 0;
    }
    if (isAtBreak()) {
      words.remove(words.size() - 1);
    }
  }

  private boolean isAtBreak() {
    return words.isEmpty() || isBreak(words.get(words.size() - 1));
  }

  private static boolean isBreak(String word) {
    return word.equals(TypedText.BREAK);
  }

  /** With breaks, but none at its ends or side by side. */
  List<String> words() {
    return words;
  }

  /**
   * What the words of the whole sentence are.
   *
   * @param read what those that are left are, counted without breaks
   */
  List<Span> among(List<Span> read) {
    List<Span> all = new ArrayList<>(asides);
    read.stream()
        .filter(span -> span.to() <= places.size())
        .map(span -> new Span(span.label(), places.get(span.from()), places.get(span.to() - 1) + 1))
        .forEach(all::add);
    all.sort(Comparator.comparingInt(Span::from));
    return all;
  }
}
