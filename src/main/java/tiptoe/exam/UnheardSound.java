package tiptoe.exam;

/**
 * A stretch that was not heard.
 *
 * @param from second of the audio it begins at
 * @param seconds how long it is
 */
public record UnheardSound(double from, double seconds, String reason) {}
