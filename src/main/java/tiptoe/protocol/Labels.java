package tiptoe.protocol;

/** Turns ids into words for people. */
public final class Labels {
  private Labels() {}

  /** {@code erythema-toxicum} becomes {@code erythema toxicum}. */
  public static String of(String id) {
    return id.replace('-', ' ');
  }

  /** The same with a capital first letter. */
  public static String title(String id) {
    String words = of(id);
    return words.isEmpty() ? words : Character.toUpperCase(words.charAt(0)) + words.substring(1);
  }
}
