package tiptoe.grammar;

/**
 * A place in a grammar file.
 *
 * @param line line, from 1
 * @param column column in characters, from 1
 */
public record Place(int line, int column) {
  static final Place START = new Place(1, 1);
}
