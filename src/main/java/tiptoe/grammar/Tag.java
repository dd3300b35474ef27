package tiptoe.grammar;

import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * One {@code key=value} of a tag. A tag of our grammars holds one or more of them with spaces
 * between, such as {@code step=clavicle value=crepitus}, or is {@code ;} alone, which ends a
 * clause.
 *
 * @param key an id such as {@code step}
 * @param value an id or a number such as {@code low-set} or {@code 3.5}
 */
public record Tag(String key, String value) {
  private static final Pattern KEY = Pattern.compile("[a-z][a-z0-9-]*");
  private static final Pattern VALUE = Pattern.compile("[^\\s=;]+");

  /** What a tag {@code ;} is read as. */
  public static final Tag CLAUSE_END = new Tag(";", ";");

  public Tag {
    boolean end = key.equals(";") && value.equals(";");
    if (!end && !isPair(key, value)) {
      throw new IllegalArgumentException("expected key=value, found '" + key + "=" + value + "'");
    }
  }

  private static boolean isPair(String key, String value) {
    return KEY.matcher(key).matches() && VALUE.matcher(value).matches();
  }

  public boolean endsClause() {
    return equals(CLAUSE_END);
  }

  /**
   * The pairs of a tag's text.
   *
   * @throws IllegalArgumentException if {@link #firstMalformed} finds fault with it; grammars
   *     without problems that declare {@code semantics/1.0-literals} hold no such tag
   */
  public static List<Tag> parse(String text) {
    firstMalformed(text)
        .ifPresent(
            part -> {
              throw new IllegalArgumentException("expected key=value or ';', found '" + part + "'");
            });
    return parts(text).map(Tag::parsePart).toList();
  }

  private static Tag parsePart(String part) {
    int equals = part.indexOf('=');
    return equals < 0 ? CLAUSE_END : new Tag(part.substring(0, equals), part.substring(equals + 1));
  }

  /** The first part of the text that is neither {@code key=value} nor {@code ;}, if any. */
  public static Optional<String> firstMalformed(String text) {
    return parts(text)
        .filter(
            part -> {
              int equals = part.indexOf('=');
              return equals < 0
                  ? !part.equals(";")
                  : !isPair(part.substring(0, equals), part.substring(equals + 1));
            })
        .findFirst();
  }

  private static Stream<String> parts(String text) {
    return Stream.of(text.strip().split("\\s+"));
  }

  @Override
  public String toString() {
    return endsClause() ? ";" : key + "=" + value;
  }
}
