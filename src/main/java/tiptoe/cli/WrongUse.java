package tiptoe.cli;

/** A call that cannot be meant so; told with where help is. */
final class WrongUse extends RuntimeException {
  private static final long serialVersionUID = 1;

  WrongUse(String message) {
    super(message);
  }
}
