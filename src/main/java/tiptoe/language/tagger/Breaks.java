package tiptoe.language.tagger;

import java.util.Collections;
import java.util.List;
import tiptoe.language.TypedText;

/**
 * Where the breaks of a sentence part it into stretches.
 *
 * @param words with a break where a comma or a pause stands
 */
record Breaks(List<String> words) {

  /** Whether a break stands here; before the first word and behind the last one always does. */
  boolean at(int place) {
    return place < 0 || place >= words.size() || words.get(place).equals(TypedText.BREAK);
  }

  /** The first word of the stretch that a word stands in. */
  int from(int word) {
    int from = word;
    while (!at(from - 1)) {
      from--;
    }
    return from;
  }

  /** Behind the last word of the stretch that goes on here. */
  int to(int word) {
    int to = word;
    while (!at(to)) {
      to++;
    }
    return to;
  }

  /** Whether a break stands between two places, the second not included. */
  boolean between(int from, int to) {
    return words.subList(from, to).contains(TypedText.BREAK);
  }

  /** How many breaks part two words. */
  int count(int one, int other) {
    return Collections.frequency(
        words.subList(Math.min(one, other), Math.max(one, other)), TypedText.BREAK);
  }

  /** A "no" by itself behind something: it takes back what was said. */
  boolean isBareNo(int word) {
    return words.get(word).equals("no")
        && word > 0
        && word + 1 < words.size()
        && at(word - 1)
        && at(word + 1);
  }
}
