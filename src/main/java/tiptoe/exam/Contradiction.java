package tiptoe.exam;

/**
 * Two things that cannot both be right, with their times and words.
 *
 * @param question number of the question that settles it
 * @param newer the statement that waits; null when a fact of the context waits
 * @param older the statement that stands until then; null when it is against the context
 * @param text the question for people
 */
public record Contradiction(
    int question, RecordedFinding newer, RecordedFinding older, String text) {}
