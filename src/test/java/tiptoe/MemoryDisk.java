package tiptoe;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.extension.AnnotatedElementContext;
import org.junit.jupiter.api.extension.ExtensionContext;
import org.junit.jupiter.api.io.TempDirFactory;

/**
 * Puts a test's temporary folder on a disk in memory where there is one, and among the other
 * temporary files elsewhere. For tests that wait for the disk thousands of times without testing
 * the disk.
 */
public final class MemoryDisk implements TempDirFactory {
  private static final Path SHARED_MEMORY = Path.of("/dev/shm");
  private static final long LEAST_BYTES = 512L << 20;

  @Override
  public Path createTempDirectory(AnnotatedElementContext element, ExtensionContext context)
      throws IOException {
    return isUsable()
        ? Files.createTempDirectory(SHARED_MEMORY, "junit-")
        : Files.createTempDirectory("junit-");
  }

  private static boolean isUsable() throws IOException {
    return Files.isDirectory(SHARED_MEMORY)
        && Files.isWritable(SHARED_MEMORY)
        && Files.getFileStore(SHARED_MEMORY).getUsableSpace() >= LEAST_BYTES;
  }
}
