package tiptoe.wording;

import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.Locale;

/**
 * Text from anywhere (labels, names, file names, a server's answer, a journal), as a terminal or a
 * text format may see it. What could move the cursor, begin a line of its own, turn the reading
 * direction (Unicode Standard Annex 9) or hide is shown as U+FFFD; white space is a space; what
 * only joins letters, and shows nothing, is left out. The text of a record itself is never changed
 * by this: it is for what is printed.
 */
public final class PlainText {
  private static final int UNSHOWN = 0xFFFD;

  /** Letters and marks by their class, which show nothing: joiners, fillers, selectors. */
  private static final String INVISIBLE =
      "\u00AD\u034F\u115F\u1160\u17B4\u17B5\u180B\u180C\u180D\u180E\u180F\u200B\u200C\u200D\u2060"
          + "\u2800\u3164\uFE00\uFE01\uFE02\uFE03\uFE04\uFE05\uFE06\uFE07\uFE08\uFE09\uFE0A\uFE0B"
          + "\uFE0C\uFE0D\uFE0E\uFE0F\uFEFF\uFFA0";

  private static final int FIRST_PLANE_14 = 0xE0000;
  private static final int LAST_PLANE_14 = 0xE0FFF;

  private PlainText() {}

  /** The text as one line. */
  public static String line(String text) {
    return clean(text, false);
  }

  /** The text with its line feeds, which the caller meant. */
  public static String lines(String text) {
    return clean(text.replace("\r\n", "\n"), true);
  }

  /** JSON in which nothing of the kind stands as itself: escaped, so that it reads the same. */
  public static String json(String json) {
    StringBuilder escaped = new StringBuilder(json.length());
    json.codePoints()
        .forEach(
            sign -> {
              if (sign == '\n' || sign >= ' ' && isShown(sign)) {
                escaped.appendCodePoint(sign);
              } else {
                for (char unit : Character.toChars(sign)) {
                  escaped.append(String.format(Locale.ROOT, "\\u%04x", (int) unit));
                }
              }
            });
    return escaped.toString();
  }

  /**
   * A stream to a terminal, through which only such text passes, whoever prints it. Text may begin
   * with a carriage return, with or without the sequence that erases a line: so a line is redrawn.
   */
  public static PrintStream stream(PrintStream to) {
    return new CleanStream(to);
  }

  private static String clean(String text, boolean feeds) {
    StringBuilder clean = new StringBuilder(text.length());
    text.codePoints()
        .forEach(
            sign -> {
              if (sign == '\n' && feeds || isShown(sign)) {
                clean.appendCodePoint(sign);
              } else if (isSpace(sign)) {
                clean.append(' ');
              } else if (!isInvisible(sign)) {
                clean.appendCodePoint(UNSHOWN);
              }
            });
    return clean.toString();
  }

  private static boolean isShown(int sign) {
    return switch (Character.getType(sign)) {
      case Character.CONTROL,
          Character.FORMAT,
          Character.LINE_SEPARATOR,
          Character.PARAGRAPH_SEPARATOR,
          Character.SURROGATE,
          Character.PRIVATE_USE,
          Character.UNASSIGNED ->
          false;
      default -> !isInvisible(sign);
    };
  }

  private static boolean isInvisible(int sign) {
    return INVISIBLE.indexOf(sign) >= 0 || sign >= FIRST_PLANE_14 && sign <= LAST_PLANE_14;
  }

  private static boolean isSpace(int sign) {
    return sign >= '\t' && sign <= '\r' || sign == 0x85 || sign == 0x2028 || sign == 0x2029;
  }

  private static final class CleanStream extends PrintStream {
    private static final String ERASE = "\r\033[K";

    CleanStream(PrintStream to) {
      super(to, true, StandardCharsets.UTF_8);
    }

    @Override
    public void print(String text) {
      String all = String.valueOf(text);
      String redraw = all.startsWith(ERASE) ? ERASE : all.startsWith("\r") ? "\r" : "";
      super.print(redraw + lines(all.substring(redraw.length())));
    }

    @Override
    public void print(Object object) {
      print(String.valueOf(object));
    }

    @Override
    public void print(char[] text) {
      print(new String(text));
    }

    @Override
    public void print(char sign) {
      print(String.valueOf(sign));
    }

    // As one text: its parts must not each begin anew.
    @Override
    public PrintStream format(String format, Object... args) {
      print(String.format(format, args));
      return this;
    }

    @Override
    public PrintStream printf(String format, Object... args) {
      return format(format, args);
    }

    @Override
    public PrintStream append(CharSequence text) {
      print(String.valueOf(text));
      return this;
    }
  }
}
