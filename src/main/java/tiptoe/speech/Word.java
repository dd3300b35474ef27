package tiptoe.speech;

import com.fasterxml.jackson.annotation.JsonIgnore;

/**
 * One word that was heard.
 *
 * @param text the word as the grammar has it, or {@link Hypothesis#FILLER}
 * @param start seconds since the recogniser was opened; in a record, of the examination's audio
 * @param end likewise
 * @param confidence 0–1, how sure the decoder is among what the graph allows; near 1 for most wrong
 *     words too, so no ground to accept one
 */
public record Word(String text, double start, double end, double confidence) {
  @JsonIgnore
  public boolean isFiller() {
    return text.equals(Hypothesis.FILLER);
  }

  /** The same, so many seconds later. */
  public Word later(double seconds) {
    return new Word(text, start + seconds, end + seconds, confidence);
  }
}
