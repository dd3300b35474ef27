package tiptoe.report;

/** Text made safe to stand in XML and HTML. */
final class Markup {
  private Markup() {}

  /** Escapes what has a meaning in markup, and drops characters that XML 1.0 forbids. */
  static String escaped(String text) {
    StringBuilder safe = new StringBuilder();
    text.codePoints()
        .forEach(
            point -> {
              switch (point) {
                case '<' -> safe.append("&lt;");
                case '>' -> safe.append("&gt;");
                case '&' -> safe.append("&amp;");
                case '"' -> safe.append("&quot;");
                case '\'' -> safe.append("&#39;");
                default -> {
                  if (isAllowed(point)) {
                    safe.appendCodePoint(point);
                  }
                }
              }
            });
    return safe.toString();
  }

  private static boolean isAllowed(int point) {
    return point == '\t'
        || point == '\n'
        || point == '\r'
        || point >= 0x20 && point <= 0xD7FF
        || point >= 0xE000 && point <= 0xFFFD
        || point >= 0x10000;
  }
}
