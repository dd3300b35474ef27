package tiptoe.language.tagger;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;

/** Reads the numbers of a sentence, and which of them were put right. */
final class CorrectedNumbers {
  private final SentenceItems sentence;
  private final LayLexicon lexicon;
  private final List<String> words;
  private final Breaks breaks;
  private final List<WordItem> items;
  private final List<Numbers.At> putRight = new ArrayList<>();

  CorrectedNumbers(SentenceItems sentence) {
    this.sentence = sentence;
    this.lexicon = sentence.lexicon();
    this.words = sentence.words();
    this.breaks = sentence.breaks();
    this.items = sentence.items();
  }

  /** The numbers said, without those that were put right: "thirty-four, no, thirty-five". */
  List<Numbers.At> numbers() {
    // "Heart of gold, this one": no number.
    List<Numbers.At> all =
        new ArrayList<>(
            Numbers.in(words, lexicon.matches(words)).stream()
                .filter(
                    number ->
                        items.stream()
                            .filter(item -> item.kind() == WordItem.Kind.NUMBER)
                            .anyMatch(item -> item.from() == number.from()))
                .toList());
    for (WordItem item : items) {
      if (item.kind() == WordItem.Kind.CORRECTION) {
        Numbers.At before = null;
        Numbers.At behind = null;
        for (Numbers.At number : all) {
          before = number.to() <= item.from() ? number : before;
          behind = behind == null && number.from() >= item.to() ? number : behind;
        }
        if (before != null && behind != null && isAlone(before, behind)) {
          all.remove(before);
          putRight.add(before);
        }
      }
    }
    return all;
  }

  private boolean isAlone(Numbers.At before, Numbers.At behind) {
    return items.stream()
        .filter(item -> item.from() >= before.to() && item.to() <= behind.from())
        .noneMatch(item -> item.kind() == WordItem.Kind.PART && !recounts(before, behind));
  }

  // "Three pustules in the groin, no, four"
  private boolean recounts(Numbers.At before, Numbers.At behind) {
    return sentence.isCount(words.subList(before.from(), before.to()))
        && sentence.isCount(words.subList(behind.from(), behind.to()))
        && breaks.at(behind.from() - 1)
        && breaks.at(behind.to());
  }

  /**
   * Accounts for corrections where each is understood, and for the numbers that were put right.
   *
   * @param others how many corrections of something else are understood
   */
  void account(int others, Set<Integer> unaccounted) {
    long said = items.stream().filter(item -> item.kind() == WordItem.Kind.CORRECTION).count();
    if (said == others + putRight.size()) {
      items.stream()
          .filter(item -> item.kind() == WordItem.Kind.CORRECTION)
          .forEach(item -> unaccounted.removeAll(item.places()));
    }
    for (Numbers.At number : putRight) {
      IntStream.range(number.from(), number.to()).forEach(unaccounted::remove);
    }
  }
}
