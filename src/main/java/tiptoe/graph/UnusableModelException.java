package tiptoe.graph;

import java.io.IOException;

/** A speech model that is missing, damaged or of another kind; the message is for the user. */
public final class UnusableModelException extends IOException {
  private static final long serialVersionUID = 1L;

  public UnusableModelException(String message) {
    super(message);
  }
}
