package tiptoe.exam;

import java.time.Instant;

/**
 * An event as it is kept: one line of the journal.
 *
 * @param seq its number, counted from 1
 * @param at when it was written
 * @param prev SHA-256 of the bytes of the line before it, without the line feed, in hexadecimal;
 *     {@link #NONE_BEFORE} for the first
 * @param event what happened
 */
public record Entry(long seq, Instant at, String prev, Event event) {
  public static final String NONE_BEFORE = "0".repeat(64);
}
