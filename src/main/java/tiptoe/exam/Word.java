package tiptoe.exam;

/**
 * A word as it was heard.
 *
 * @param text the word
 * @param start where it begins, in s from the start of the examination's audio
 * @param end where it ends, in s
 * @param confidence the recogniser's own, 0–1; it saturates and decides nothing by itself
 */
public record Word(String text, double start, double end, double confidence) {}
