package tiptoe.exam;

/** Names and roles that a person can see: what prints as nothing names nobody. */
public final class SignerName {
  private SignerName() {}

  /**
   * Whether it shows at least one letter or digit, and holds no character that controls the page,
   * such as a line feed, or that prints as nothing, such as a zero-width space.
   */
  public static boolean isVisible(String text) {
    return text.codePoints().anyMatch(Character::isLetterOrDigit)
        && text.codePoints().noneMatch(SignerName::isHidden);
  }

  private static boolean isHidden(int c) {
    // Hangul fillers are letters by their class and print as nothing.
    return switch (Character.getType(c)) {
      case Character.CONTROL,
          Character.FORMAT,
          Character.LINE_SEPARATOR,
          Character.PARAGRAPH_SEPARATOR,
          Character.PRIVATE_USE,
          Character.SURROGATE,
          Character.UNASSIGNED ->
          true;
      default -> c == 0x115F || c == 0x1160 || c == 0x3164 || c == 0xFFA0;
    };
  }
}
