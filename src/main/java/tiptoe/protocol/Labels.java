package tiptoe.protocol;

/** Turns ids into words for people. */
public final class Labels {
  private Labels() {}

  /** {@code erythema-toxicum} becomes {@code erythema toxicum}. */
  public static String of(String id) {
    return id.replace('-', ' ');
  }
}
