package tiptoe.language;

import java.util.List;
import tiptoe.finding.Bound;

/**
 * A number as it was said.
 *
 * @param of id of the detail it belongs to; null where it is the step's own
 * @param words the words of the number
 * @param unit id of the unit that was said; null where none was
 * @param bound whether less or more than it was said; null where it was told as it is
 */
public record SpokenNumber(String of, List<String> words, String unit, Bound bound) {
  public SpokenNumber {
    words = List.copyOf(words);
  }

  SpokenNumber withUnit(String said) {
    return new SpokenNumber(of, words, said, bound);
  }
}
