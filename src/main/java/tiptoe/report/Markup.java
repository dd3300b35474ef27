package tiptoe.report;

import static org.apache.commons.text.StringEscapeUtils.escapeXml10;

import java.util.List;
import java.util.Locale;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;

/** HTML or SVG as it is written: every text that is put into it is escaped. */
final class Markup {
  private final StringBuilder text = new StringBuilder();
  private final UnaryOperator<String> cleaned;

  Markup() {
    this(UnaryOperator.identity());
  }

  /**
   * @param cleaned what texts go through before they are escaped
   */
  Markup(UnaryOperator<String> cleaned) {
    this.cleaned = cleaned;
  }

  /** What is markup already and is put into other markup as it is. */
  static Markup of(String markup) {
    return new Markup().raw(markup);
  }

  /** Adds markup as it is. */
  Markup raw(String markup) {
    text.append(markup);
    return this;
  }

  /** Adds markup with values in its places: text escaped, numbers and other markup as they are. */
  Markup add(String form, Object... values) {
    return raw(String.format(Locale.ROOT, form, Stream.of(values).map(this::escaped).toArray()));
  }

  private Object escaped(Object value) {
    return value instanceof String words ? escapeXml10(cleaned.apply(words)) : value;
  }

  /** Adds a title and a list below it; nothing where the list is empty. */
  void list(String title, List<String> lines) {
    if (!lines.isEmpty()) {
      add("<h2>%s</h2>\n<ul>\n", title);
      lines.forEach(line -> add("<li>%s</li>\n", line));
      add("</ul>\n");
    }
  }

  boolean isEmpty() {
    return text.isEmpty();
  }

  @Override
  public String toString() {
    return text.toString();
  }
}
