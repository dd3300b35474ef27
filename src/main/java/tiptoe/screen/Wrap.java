package tiptoe.screen;

import java.util.ArrayList;
import java.util.List;

/** Breaks text into lines between words. */
public final class Wrap {
  private Wrap() {}

  /** The same, with longer words parted too, so that nothing is cut off. */
  static List<String> pieces(String text, int width) {
    List<String> pieces = new ArrayList<>();
    for (String line : words(text, width)) {
      for (int at = 0; at < line.length(); at += Math.max(1, width)) {
        pieces.add(line.substring(at, Math.min(line.length(), at + Math.max(1, width))));
      }
    }
    return pieces;
  }

  /** Lines of at most so many characters; a longer word is a line of its own, too long. */
  public static List<String> words(String text, int width) {
    List<String> lines = new ArrayList<>();
    StringBuilder line = new StringBuilder();
    for (String word : text.strip().split("\\s+")) {
      if (!line.isEmpty() && line.length() + 1 + word.length() > width) {
        lines.add(line.toString());
        line.setLength(0);
      }
      line.append(line.isEmpty() ? "" : " ").append(word);
    }
    if (!line.isEmpty()) {
      lines.add(line.toString());
    }
    return lines;
  }
}
