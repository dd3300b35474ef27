package tiptoe.cli;

/** A call that cannot be meant so; told with where help is. */
final class WrongUse extends RuntimeException {
  private static final long serialVersionUID = 1;

  WrongUse(String message) {
    super(message);
  }

  static void unless(boolean meant, String message) {
    if (!meant) {
      throw new WrongUse(message);
    }
  }
}
