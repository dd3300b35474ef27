package tiptoe.exam;

import java.util.List;
import java.util.OptionalDouble;
import tiptoe.finding.Outcome;
import tiptoe.speech.Word;

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

  /** That of the word the recogniser was least sure of, 0–1; empty when it was typed. */
  public OptionalDouble confidence() {
    return words.stream().mapToDouble(Word::confidence).min();
  }

  /** Where its last word ends, in s. */
  public double lastWordEnd() {
    return words.isEmpty() ? end : words.get(words.size() - 1).end();
  }

  /** The same, taken for talk. */
  Heard asTalk() {
    return new Heard(start, end, text, words, Outcome.IGNORED, "nothing that is recorded");
  }

  public Heard withOutcome(Outcome newOutcome) {
    return new Heard(start, end, text, words, newOutcome, reason);
  }
}
