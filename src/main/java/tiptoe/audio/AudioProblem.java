package tiptoe.audio;

import java.io.IOException;

/**
 * Sound that cannot be read, recorded or played. The message states what was expected, what was
 * found and where, ready to be shown to a person.
 */
public final class AudioProblem extends IOException {
  public AudioProblem(String message) {
    super(message);
  }

  public AudioProblem(String message, Throwable cause) {
    super(message, cause);
  }

  /** The message of the error, or its kind where it has none. */
  static String reason(Throwable error) {
    String message = error.getMessage();
    return message == null || message.isBlank() ? error.getClass().getSimpleName() : message;
  }
}
