package tiptoe.exam;

import java.util.List;

/**
 * An utterance as the recogniser gave it, or a line that was typed.
 *
 * @param start where it begins, in s from the start of the examination's audio
 * @param end where it ends, in s
 * @param text its words joined by spaces
 * @param words its words with their times; empty when it was typed
 * @param outcome what is to become of it
 * @param reason why it is unsure or ignored; null otherwise
 */
public record Heard(
    double start, double end, String text, List<Word> words, Outcome outcome, String reason) {
  public Heard {
    words = List.copyOf(words);
  }

  /** A line that was typed, at this second of the audio. */
  public static Heard typed(String text, double at) {
    return new Heard(at, at, text, List.of(), Outcome.ACCEPTED, null);
  }

  public Heard withOutcome(Outcome newOutcome) {
    return new Heard(start, end, text, words, newOutcome, reason);
  }
}
