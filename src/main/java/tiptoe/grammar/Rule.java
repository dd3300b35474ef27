package tiptoe.grammar;

/**
 * A rule definition (SRGS 1.0, section 3).
 *
 * @param name name without {@code $}; case matters
 * @param isPublic whether other files may refer to it; private where no scope is written
 * @param expansion what is said
 * @param place where its name stands
 */
public record Rule(String name, boolean isPublic, Expansion expansion, Place place) {}
