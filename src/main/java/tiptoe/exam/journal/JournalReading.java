package tiptoe.exam.journal;

import java.util.List;
import tiptoe.exam.Entry;

/**
 * What a journal holds.
 *
 * @param entries all that could be read, in order, also those behind a break
 * @param breaks where it is not what was written, and how, for people; empty when all is
 * @param whole length in bytes of all finished lines
 * @param torn bytes of an unfinished line at the end; empty when there is none
 * @param chain the chain behind the last entry
 * @param heads SHA-256 of each finished line as it is stored, but for the header
 */
record JournalReading(
    List<Entry> entries,
    List<String> breaks,
    long whole,
    byte[] torn,
    Chain chain,
    LineCodec codec,
    List<String> heads) {}
