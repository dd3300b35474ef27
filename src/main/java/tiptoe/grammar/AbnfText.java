package tiptoe.grammar;

import java.util.Arrays;

/** The characters of a grammar file, read from left to right, with comments taken as space. */
final class AbnfText {
  /** Says what was expected at a place; never leaves the reader. */
  static final class Unexpected extends Exception {
    final transient Place place;
    final String expectation;
    final String found;

    Unexpected(Place place, String expectation, String found) {
      super(expectation, null, false, false);
      this.place = place;
      this.expectation = expectation;
      this.found = found;
    }
  }

  private final String text;
  private final int[] lineStarts;
  private int at;

  AbnfText(String text) {
    this.text = text.replace("\r\n", "\n").replace('\r', '\n');
    this.lineStarts = lineStarts(this.text);
  }

  private static int[] lineStarts(String text) {
    int[] starts = new int[(int) text.chars().filter(c -> c == '\n').count() + 1];
    for (int line = 1; line < starts.length; line++) {
      starts[line] = text.indexOf('\n', starts[line - 1]) + 1;
    }
    return starts;
  }

  Place place() {
    int found = Arrays.binarySearch(lineStarts, at);
    int line = found >= 0 ? found : -found - 2;
    return new Place(line + 1, at - lineStarts[line] + 1);
  }

  boolean atEnd() {
    return at >= text.length();
  }

  /** The next character, or 0 at the end. */
  char peek() {
    return atEnd() ? 0 : text.charAt(at);
  }

  boolean looksAt(String expected) {
    return text.startsWith(expected, at);
  }

  /** Takes one character, and no space behind it. */
  void skipCharacter() {
    at++;
  }

  /** Takes the text if it comes next, and the space behind it. */
  boolean take(String expected) throws Unexpected {
    if (!looksAt(expected)) {
      return false;
    }
    at += expected.length();
    skipSpace();
    return true;
  }

  void expect(String expected) throws Unexpected {
    if (!take(expected)) {
      throw unexpected("'" + expected + "'");
    }
  }

  /** The rest of this line without its end; stands behind it afterwards. */
  String takeLine() {
    int end = text.indexOf('\n', at);
    String line = text.substring(at, end < 0 ? text.length() : end);
    at = end < 0 ? text.length() : end + 1;
    return line;
  }

  /** A run of word characters (may be empty) and the space behind it. */
  String takeWord() throws Unexpected {
    String word = peekWord();
    at += word.length();
    if (!word.isEmpty()) {
      skipSpace();
    }
    return word;
  }

  String peekWord() {
    int end = at;
    while (end < text.length() && isWordCharacter(text.codePointAt(end))) {
      end += Character.charCount(text.codePointAt(end));
    }
    return text.substring(at, end);
  }

  /** Takes what stands between two delimiters, and the space behind. */
  String takeBetween(String open, String close, String what) throws Unexpected {
    int end = text.indexOf(close, at + open.length());
    if (end < 0) {
      throw unfinished(close, what);
    }
    String inside = text.substring(at + open.length(), end);
    at = end + close.length();
    skipSpace();
    return inside;
  }

  /**
   * Name characters of XML (Nmtoken), and the apostrophe, which English needs; the Recommendation
   * asks for quotes around a word that holds one.
   */
  private static boolean isWordCharacter(int c) {
    return Character.isLetterOrDigit(c)
        || Character.getType(c) == Character.NON_SPACING_MARK
        || Character.getType(c) == Character.COMBINING_SPACING_MARK
        || ".-_:'\u00B7".indexOf(c) >= 0;
  }

  /** Skips space and comments (SRGS 1.0, section 4.13). */
  void skipSpace() throws Unexpected {
    while (!atEnd()) {
      if (Character.isWhitespace(peek())) {
        at++;
      } else if (looksAt("//")) {
        takeLine();
      } else if (looksAt("/*")) {
        int end = text.indexOf("*/", at + 2);
        if (end < 0) {
          throw unfinished("*/", "comment");
        }
        at = end + 2;
      } else {
        return;
      }
    }
  }

  /** Goes behind the next semicolon that ends a line, to go on after a mistake. */
  void skipStatement() {
    while (!atEnd()) {
      int semicolon = text.indexOf(';', at);
      int lineEnd = text.indexOf('\n', semicolon);
      at = semicolon < 0 ? text.length() : semicolon + 1;
      if (semicolon >= 0 && text.substring(at, lineEnd < 0 ? text.length() : lineEnd).isBlank()) {
        return;
      }
    }
  }

  /** All that follows would be misread, so reading ends here. */
  private Unexpected unfinished(String close, String what) {
    Place start = place();
    at = text.length();
    return new Unexpected(start, "'" + close + "' at the end of the " + what, "the end of file");
  }

  Unexpected unexpected(String expectation) {
    return new Unexpected(place(), expectation, found());
  }

  private String found() {
    if (atEnd()) {
      return "the end of file";
    }
    String word = peekWord();
    if (peek() == '$') {
      at++;
      word = "$" + peekWord();
      at--;
    }
    return "'" + (word.isEmpty() ? Character.toString(text.codePointAt(at)) : word) + "'";
  }
}
