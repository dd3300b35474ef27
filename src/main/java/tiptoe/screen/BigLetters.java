package tiptoe.screen;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * Letters that can be read from across a cot: three by five dots each, two dots of height to a cell
 * where there are half blocks, one to a cell in ASCII.
 */
final class BigLetters {
  /** Columns of a letter with the gap behind it. */
  static final int ADVANCE = 4;

  private static final int DOTS_HIGH = 5;
  private static final Map<Character, String[]> DOTS = new HashMap<>();

  /** A letter, then its rows from top to bottom. */
  private static final String SHAPES =
      """
      A 010 101 111 101 101
      B 110 101 110 101 110
      C 011 100 100 100 011
      D 110 101 101 101 110
      E 111 100 110 100 111
      F 111 100 110 100 100
      G 011 100 101 101 011
      H 101 101 111 101 101
      I 111 010 010 010 111
      J 001 001 001 101 010
      K 101 101 110 101 101
      L 100 100 100 100 111
      M 101 111 101 101 101
      N 110 101 101 101 101
      O 010 101 101 101 010
      P 110 101 110 100 100
      Q 010 101 101 111 011
      R 110 101 110 101 101
      S 011 100 010 001 110
      T 111 010 010 010 010
      U 101 101 101 101 111
      V 101 101 101 101 010
      W 101 101 101 111 101
      X 101 101 010 101 101
      Y 101 101 010 010 010
      Z 111 001 010 100 111
      0 111 101 101 101 111
      1 010 110 010 010 111
      2 110 001 010 100 111
      3 110 001 010 001 110
      4 101 101 111 001 001
      5 111 100 110 001 110
      6 011 100 111 101 111
      7 111 001 010 010 010
      8 111 101 111 101 111
      9 111 101 111 001 110
      ? 110 001 010 000 010
      ! 010 010 010 000 010
      . 000 000 000 000 010
      , 000 000 000 010 100
      : 000 010 000 010 000
      ; 000 010 000 010 100
      - 000 000 111 000 000
      / 001 001 010 100 100
      ' 010 010 000 000 000
      % 101 001 010 100 101
      ( 001 010 010 010 001
      ) 100 010 010 010 100
      ° 010 101 010 000 000
      + 000 010 111 010 000
      ~ 000 110 000 011 000
      ✓ 001 001 001 110 010
      """;

  static {
    SHAPES
        .lines()
        .map(line -> line.split(" "))
        .forEach(line -> DOTS.put(line[0].charAt(0), Arrays.copyOfRange(line, 1, line.length)));
    DOTS.put(' ', new String[] {"000", "000", "000", "000", "000"});
  }

  private BigLetters() {}

  /** Rows that a line takes. */
  static int height(Glyphs glyphs) {
    return glyphs.plain() ? DOTS_HIGH : (DOTS_HIGH + 1) / 2;
  }

  /**
   * The text in the biggest letters that fit, a gap between its lines; empty where none do. Double
   * letters are six by five cells, blocks only.
   */
  static List<String> fit(String text, int width, int rows, Glyphs glyphs) {
    List<String> twice = glyphs.plain() ? List.of() : fit(text, width, rows, glyphs, 2);
    return twice.isEmpty() ? fit(text, width, rows, glyphs, 1) : twice;
  }

  /** The same in letters of one size, 1 or 2. */
  static List<String> fit(String text, int width, int rows, Glyphs glyphs, int size) {
    int letters = (width + size) / (ADVANCE * size);
    List<String> lines = Wrap.words(clean(text), letters);
    int letterHigh = size == 1 ? height(glyphs) : DOTS_HIGH;
    int high = lines.size() * (letterHigh + 1) - 1;
    if (high > rows || lines.stream().anyMatch(line -> line.length() > letters)) {
      return List.of();
    }
    List<String> drawn = new ArrayList<>();
    for (String line : lines) {
      if (!drawn.isEmpty()) {
        drawn.add("");
      }
      if (size == 2) {
        drawn.addAll(cells(line, "██"));
      } else {
        drawn.addAll(glyphs.plain() ? cells(line, "#") : halfBlocks(line));
      }
    }
    return drawn;
  }

  private static String clean(String text) {
    String plain = text.replace('—', '-').replace('–', '-').replace('é', 'e');
    StringBuilder clean = new StringBuilder();
    for (char letter : plain.toUpperCase(Locale.ROOT).toCharArray()) {
      clean.append(DOTS.containsKey(letter) ? letter : ' ');
    }
    return clean.toString();
  }

  private static boolean dot(String line, int row, int column) {
    char letter = line.charAt(column / ADVANCE);
    int inside = column % ADVANCE;
    return row < DOTS_HIGH && inside < 3 && DOTS.get(letter)[row].charAt(inside) == '1';
  }

  private static List<String> cells(String line, String dot) {
    List<String> rows = new ArrayList<>();
    for (int row = 0; row < DOTS_HIGH; row++) {
      StringBuilder text = new StringBuilder();
      for (int column = 0; column < line.length() * ADVANCE; column++) {
        text.append(dot(line, row, column) ? dot : " ".repeat(dot.length()));
      }
      rows.add(text.toString().stripTrailing());
    }
    return rows;
  }

  private static List<String> halfBlocks(String line) {
    List<String> rows = new ArrayList<>();
    for (int row = 0; row < DOTS_HIGH; row += 2) {
      StringBuilder text = new StringBuilder();
      for (int column = 0; column < line.length() * ADVANCE; column++) {
        boolean upper = dot(line, row, column);
        boolean lower = dot(line, row + 1, column);
        text.append(upper ? lower ? '█' : '▀' : lower ? '▄' : ' ');
      }
      rows.add(text.toString().stripTrailing());
    }
    return rows;
  }
}
