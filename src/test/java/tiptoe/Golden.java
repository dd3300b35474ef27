package tiptoe;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * Files that hold what the program said when a person last read it. {@code -Dtiptoe.golden=write}
 * writes all of them anew, of whatever kind; {@code git diff} then shows what to read before they
 * are kept.
 */
public final class Golden {
  private Golden() {}

  /** Holds what the program says now against the file. */
  public static void check(Path file, String now) throws IOException {
    if ("write".equals(System.getProperty("tiptoe.golden"))) {
      Files.createDirectories(file.getParent());
      Files.writeString(file, now);
    }
    assertEquals(Files.readString(file), now, file.toString());
  }
}
