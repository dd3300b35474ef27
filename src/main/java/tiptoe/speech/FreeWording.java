package tiptoe.speech;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * How an utterance is heard in free wordings, whether it holds phrases or not.
 *
 * @param words the likeliest words, with filler where none fits
 * @param support how much better they explain the sound than a free sequence of phones does, as a
 *     difference of natural logarithms
 */
public record FreeWording(List<Word> words, double support) {
  public FreeWording {
    words = List.copyOf(words);
  }

  /**
   * What the library gives for a stretch; empty where it is silent.
   *
   * @param json with at least one alternative
   * @param free the cost of the likeliest sequence of phones for the same stretch
   */
  static Optional<FreeWording> of(String json, double free) {
    double cost = VoskResults.alternatives(json).get(0).cost();
    return VoskResults.likeliest(json).map(said -> new FreeWording(said.words(), free - cost));
  }

  /** Its words without filler. */
  public List<Word> known() {
    return words.stream().filter(word -> !word.isFiller()).toList();
  }

  /** The same as one text. */
  public String text() {
    return known().stream().map(Word::text).collect(Collectors.joining(" "));
  }

  /** Seconds of words, without pauses. */
  public double seconds() {
    return words.stream().mapToDouble(word -> word.end() - word.start()).sum();
  }

  /** The share of that time which no word fits, 0 to 1. */
  public double fillerShare() {
    double filler =
        words.stream().filter(Word::isFiller).mapToDouble(word -> word.end() - word.start()).sum();
    return seconds() == 0 ? 1 : filler / seconds();
  }

  FreeWording later(double seconds) {
    return new FreeWording(words.stream().map(word -> word.later(seconds)).toList(), support);
  }
}
