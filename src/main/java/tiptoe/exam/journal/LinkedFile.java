package tiptoe.exam.journal;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.Objects;

/**
 * A file that is open, by its name: one that was removed takes all that is written to it, and
 * nobody would ever know.
 *
 * @param path where it was when it was opened
 * @param key what the system tells it from others by; null where it has no such thing
 */
record LinkedFile(Path path, Object key) {
  static LinkedFile of(Path path) throws IOException {
    return new LinkedFile(path, fileKey(path));
  }

  private static Object fileKey(Path path) throws IOException {
    return Files.readAttributes(path, BasicFileAttributes.class).fileKey();
  }

  /** Whether that name still leads to that very file. */
  boolean isStillThere() {
    try {
      return Objects.equals(key, fileKey(path));
    } catch (IOException e) {
      return false;
    }
  }

  @Override
  public String toString() {
    return path.getParent().toString();
  }
}
