package tiptoe.exam;

import java.time.Instant;
import java.util.List;

/**
 * Free speech or text that is kept as it is.
 *
 * @param number counted from 1
 * @param text as last read; {@code heard} as it was first
 * @param start the second of the audio it begins at
 * @param end the second it ends at; the same as {@code start} when it was typed
 * @param repairs clinical words in the text that were put in place of what sounds alike
 * @param author the reviewer who made it; null when the clinician did
 */
public record Remark(
    int number,
    Instant at,
    String text,
    String heard,
    double start,
    double end,
    List<Repair> repairs,
    String author) {
  public Remark {
    repairs = List.copyOf(repairs);
  }

  Remark reworded(String newText, List<Repair> newRepairs) {
    return new Remark(number, at, newText, heard, start, end, newRepairs, author);
  }

  /** The text with each repaired word marked: {@code fontanelle [heard: font an el]}. */
  public String marked() {
    String marked = text;
    int from = 0;
    for (Repair repair : repairs) {
      int at = marked.indexOf(repair.word(), from);
      if (at >= 0) {
        int end = at + repair.word().length();
        String mark = " [heard: " + repair.heard() + "]";
        marked = marked.substring(0, end) + mark + marked.substring(end);
        from = end + mark.length();
      }
    }
    return marked;
  }
}
