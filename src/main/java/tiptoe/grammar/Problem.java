package tiptoe.grammar;

import java.util.Objects;

/**
 * Something wrong with a grammar: where, what was expected, and what is there instead.
 *
 * @param file name of the grammar file, relative to the grammar folder
 * @param line line, from 1
 * @param column column in characters, from 1
 * @param expectation what belongs there, lower case, no full stop
 * @param found what is there instead
 */
public record Problem(String file, int line, int column, String expectation, String found) {
  public Problem {
    Objects.requireNonNull(file);
    Objects.requireNonNull(expectation);
    Objects.requireNonNull(found);
  }

  /** {@code file:line:column: expected …, found …}, which editors can jump to. */
  @Override
  public String toString() {
    return file + ":" + line + ":" + column + ": expected " + expectation + ", found " + found;
  }
}
