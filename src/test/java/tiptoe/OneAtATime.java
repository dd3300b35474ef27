package tiptoe;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;

/** Lets one test process at a time make what the others then find made. */
public final class OneAtATime {
  private OneAtATime() {}

  /** Makes or finds something. */
  @FunctionalInterface
  public interface Making<T> {
    T make() throws IOException;
  }

  /** Waits until no other process makes what has this name. */
  public static <T> T make(String name, Making<T> making) throws IOException {
    try (FileChannel channel = lockFile(name)) {
      channel.lock(); // until the channel is closed
      return making.make();
    }
  }

  /** Whether another process is making what has this name. */
  public static boolean isBeingMade(String name) throws IOException {
    try (FileChannel channel = lockFile(name)) {
      return channel.tryLock() == null;
    }
  }

  private static FileChannel lockFile(String name) throws IOException {
    Path file = Path.of("target", name + ".lock");
    Files.createDirectories(file.getParent());
    return FileChannel.open(file, StandardOpenOption.CREATE, StandardOpenOption.WRITE);
  }
}
