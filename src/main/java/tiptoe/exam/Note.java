package tiptoe.exam;

import java.time.Instant;

/** Something the reader of the record should know about how it came to be. */
public record Note(Instant at, String text) {}
