package tiptoe.exam;

import java.time.Instant;

/**
 * Free speech or text that is kept as it is.
 *
 * @param number counted from 1
 * @param text as last read; {@code heard} as it was first
 * @param start the second of the audio it begins at
 * @param end the second it ends at; the same as {@code start} when it was typed
 * @param author the reviewer who made it; null when the clinician did
 */
public record Remark(
    int number, Instant at, String text, String heard, double start, double end, String author) {

  Remark reworded(String newText) {
    return new Remark(number, at, newText, heard, start, end, author);
  }
}
