package tiptoe.screen;

import java.util.List;
import org.apache.commons.text.WordUtils;

/** Breaks text into lines between words. */
public final class Wrap {
  private Wrap() {}

  /** The same, with longer words parted too, so that nothing is cut off. */
  static List<String> pieces(String text, int width) {
    return lines(text, width, true);
  }

  /** Lines of at most so many characters; a longer word is a line of its own, too long. */
  public static List<String> words(String text, int width) {
    return lines(text, width, false);
  }

  private static List<String> lines(String text, int width, boolean parted) {
    String words = text.strip().replaceAll("\\s+", " ");
    return words.isEmpty()
        ? List.of()
        : WordUtils.wrap(words, Math.max(1, width), "\n", parted).lines().toList();
  }
}
