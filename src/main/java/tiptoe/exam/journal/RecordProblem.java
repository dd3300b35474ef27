package tiptoe.exam.journal;

import java.io.IOException;

/** A record that cannot be opened, written or removed; the message is for people. */
public final class RecordProblem extends IOException {
  public RecordProblem(String message) {
    super(message);
  }

  public RecordProblem(String message, Throwable cause) {
    super(message, cause);
  }

  /** What kept a file from being used; a problem that was told already is told as it is. */
  static RecordProblem of(String expectedTo, IOException error) {
    return error instanceof RecordProblem told
        ? told
        : new RecordProblem("expected to " + expectedTo + ", found " + reason(error), error);
  }

  /** What went wrong with a file, in words for people. */
  public static String reason(IOException error) {
    if (error instanceof java.nio.file.AccessDeniedException) {
      return "no permission";
    }
    if (error instanceof java.nio.file.NoSuchFileException) {
      return "no such file or folder";
    }
    if (error instanceof java.nio.file.FileSystemException system && system.getReason() != null) {
      return system.getReason();
    }
    String message = error.getMessage();
    return message == null || message.isBlank() ? error.getClass().getSimpleName() : message;
  }
}
