package tiptoe.exam;

import java.time.Instant;

/**
 * A fact with who stated it and when.
 *
 * @param at null where it is not known
 * @param by null where nobody was named
 */
public record Stated(String fact, String value, Instant at, String by) {}
