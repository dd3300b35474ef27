package tiptoe.screen;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import tiptoe.files.Shipped;

/**
 * Letters that can be read from across a cot: three by five dots each, two dots of height to a cell
 * where there are half blocks, one to a cell in ASCII.
 */
final class BigLetters {
  /** Columns of a letter with the gap behind it. */
  static final int ADVANCE = 4;

  private static final int DOTS_HIGH = 5;
  private static final Map<Character, String[]> DOTS = new HashMap<>();

  static {
    // A letter, then its rows from top to bottom.
    Shipped.lines(BigLetters.class, "big-letters.txt").stream()
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
