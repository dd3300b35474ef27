package tiptoe.grammar;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;

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
    boolean pair = KEY.matcher(key).matches() && VALUE.matcher(value).matches();
    if (!pair && !(key.equals(";") && value.equals(";"))) {
      throw new IllegalArgumentException("expected key=value, found " + key + "=" + value);
    }
  }

  public boolean endsClause() {
    return key.equals(";");
  }

  /**
   * The pairs of a tag's text.
   *
   * @throws IllegalArgumentException for text that {@link #firstMalformed} finds fault with;
   *     grammars that were loaded without a problem hold none when they declare {@code
   *     semantics/1.0-literals}
   */
  public static List<Tag> parse(String text) {
    List<Tag> tags = new ArrayList<>();
    for (String part : text.strip().split("\\s+")) {
      int equals = part.indexOf('=');
      tags.add(
          part.equals(";")
              ? CLAUSE_END
              : new Tag(part.substring(0, Math.max(equals, 0)), part.substring(equals + 1)));
    }
    return List.copyOf(tags);
  }

  /** The first part of the text that is neither {@code key=value} nor {@code ;}, if any. */
  public static Optional<String> firstMalformed(String text) {
    for (String part : text.strip().split("\\s+")) {
      int equals = part.indexOf('=');
      boolean pair =
          equals > 0
              && KEY.matcher(part.substring(0, equals)).matches()
              && VALUE.matcher(part.substring(equals + 1)).matches();
      if (!pair && !part.equals(";")) {
        return Optional.of(part);
      }
    }
    return Optional.empty();
  }

  @Override
  public String toString() {
    return endsClause() ? ";" : key + "=" + value;
  }
}
