package tiptoe.wording;

import java.io.UncheckedIOException;
import java.nio.charset.CharacterCodingException;
import java.nio.file.AccessDeniedException;
import java.nio.file.InvalidPathException;
import java.nio.file.NoSuchFileException;

/** What went wrong, for people. */
public final class ProblemWording {
  private ProblemWording() {}

  /** What went wrong, for people: never a class name alone, never a stack trace. */
  public static String of(Throwable problem) {
    if (problem instanceof NoSuchFileException missing) {
      return "expected a file, found none at " + PlainText.line(missing.getFile());
    }
    if (problem instanceof AccessDeniedException denied) {
      return "not allowed to read or write " + PlainText.line(denied.getFile());
    }
    if (problem instanceof CharacterCodingException) {
      return "expected UTF-8 text, found other bytes";
    }
    if (problem instanceof InvalidPathException path) {
      // Java takes the names of files in the character set of the locale.
      return "expected a name that this system can have for a file, found %s (%s)%s"
          .formatted(
              PlainText.line(path.getInput()),
              path.getReason(),
              path.getInput().chars().allMatch(c -> c < 128) ? "" : "; start with LANG=C.UTF-8");
    }
    if (problem instanceof UncheckedIOException unchecked) {
      return of(unchecked.getCause());
    }
    return problem.getMessage() == null
        ? "could not go on: " + problem.getClass().getSimpleName()
        : problem.getMessage();
  }
}
