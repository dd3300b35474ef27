package tiptoe.exam.journal;

import java.util.List;
import java.util.Optional;
import tiptoe.exam.Entry;

/**
 * What a journal holds.
 *
 * @param entries all that could be read, in order, also those behind a break
 * @param breaks where the chain is broken; empty when every entry is as it was written
 * @param whole length in bytes of all finished lines
 * @param torn bytes of an unfinished line at the end; empty when there is none
 * @param chain the chain behind the last entry
 * @param heads SHA-256 of each finished line as it is stored, but for the header
 */
record JournalReading(
    List<Entry> entries,
    List<Break> breaks,
    long whole,
    byte[] torn,
    Chain chain,
    LineCodec codec,
    List<String> heads) {

  /**
   * A place where the journal is not what was written.
   *
   * @param seq number of the entry
   * @param text what is wrong with it
   */
  record Break(long seq, String text) {
    @Override
    public String toString() {
      return "entry " + seq + ": " + text;
    }
  }

  Optional<Break> firstBreak() {
    return breaks.stream().findFirst();
  }
}
