package tiptoe.screen;

import com.googlecode.lanterna.screen.Screen;
import java.util.Locale;
import java.util.Map;

/**
 * How a terminal wants to be written to.
 *
 * @param coloured whether it may be given colours; they never carry meaning
 * @param ascii whether it shows ASCII only
 */
public record Look(boolean coloured, boolean ascii) {

  /**
   * The look that the environment asks for: {@code NO_COLOR} (no-color.org), a monochrome {@code
   * TERM}, and the character set of {@code LC_ALL}, {@code LC_CTYPE} or {@code LANG} (POSIX).
   */
  public static Look of(Map<String, String> environment, boolean ascii) {
    String term = environment.getOrDefault("TERM", "");
    boolean mono =
        !environment.getOrDefault("NO_COLOR", "").isEmpty()
            || term.startsWith("vt1")
            || term.startsWith("vt2")
            || term.endsWith("-m")
            || term.endsWith("-mono");
    return new Look(!mono, ascii || !isUtf8(environment) || isOfFewSigns(term));
  }

  /** What draws on a screen in this look. */
  public Canvas canvas(Screen screen) {
    return new Canvas(screen.newTextGraphics(), glyphs(), coloured);
  }

  Glyphs glyphs() {
    return ascii ? Glyphs.ASCII : Glyphs.BLOCKS;
  }

  // The Linux console's fonts have no tick, the old terminals neither blocks nor UTF-8.
  private static boolean isOfFewSigns(String term) {
    return term.equals("linux") || term.startsWith("vt1") || term.startsWith("vt2");
  }

  public static boolean isUtf8(Map<String, String> environment) {
    for (String name : new String[] {"LC_ALL", "LC_CTYPE", "LANG"}) {
      String value = environment.getOrDefault(name, "");
      if (!value.isEmpty()) {
        return value.toLowerCase(Locale.ROOT).replace("-", "").contains("utf8");
      }
    }
    return false;
  }
}
