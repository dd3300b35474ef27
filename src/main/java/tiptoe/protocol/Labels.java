package tiptoe.protocol;

import java.util.Locale;
import java.util.stream.Stream;

/** Turns ids into words for people. */
public final class Labels {
  private Labels() {}

  /** {@code erythema-toxicum} becomes {@code erythema toxicum}. */
  public static String of(String id) {
    return id.replace('-', ' ');
  }

  /** The id of a constant: {@code UNTIL_SIGNED} becomes {@code until-signed}. */
  public static String id(String constant) {
    return constant.toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /**
   * The constant with an id.
   *
   * @param expected what is expected, for the message of the exception where there is none
   */
  public static <E extends Enum<E>> E byId(Class<E> type, String id, String expected) {
    return Stream.of(type.getEnumConstants())
        .filter(constant -> id(constant.name()).equals(id))
        .findFirst()
        .orElseThrow(
            () -> new IllegalArgumentException("expected %s, found %s".formatted(expected, id)));
  }
}
