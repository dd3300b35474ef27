package tiptoe.files;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.OpenOption;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Set;

/**
 * Files and folders that only their owner may read: 0600 and 0700, from the moment they exist.
 * Where the file system knows no such permissions, those of the folder above hold.
 */
public final class OwnerOnly {
  private OwnerOnly() {}

  /** Makes the folder and those above it that are missing; closes it to others if it was there. */
  public static void createFolder(Path folder) throws IOException {
    Files.createDirectories(folder, permissions(folder, "rwx------"));
    if (isPosix(folder)) {
      Files.setPosixFilePermissions(folder, PosixFilePermissions.fromString("rwx------"));
    }
  }

  /** Makes a new file, to be written; it must not exist. */
  public static FileChannel createFile(Path file) throws IOException {
    Set<OpenOption> options = Set.of(StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
    return FileChannel.open(file, options, permissions(file, "rw-------"));
  }

  /** Makes a new file that holds these bytes, and forces it to the disk. */
  public static void write(Path file, byte[] bytes) throws IOException {
    try (FileChannel channel = createFile(file)) {
      write(channel, bytes);
    }
  }

  /** Writes behind what is in a file, which is made where there is none. */
  public static void append(Path file, byte[] bytes) throws IOException {
    if (!Files.exists(file)) {
      try {
        createFile(file).close();
      } catch (FileAlreadyExistsException e) {
        // another process was first
      }
    }
    try (FileChannel channel = FileChannel.open(file, StandardOpenOption.APPEND)) {
      write(channel, bytes);
    }
  }

  private static void write(FileChannel channel, byte[] bytes) throws IOException {
    ByteBuffer left = ByteBuffer.wrap(bytes);
    while (left.hasRemaining()) {
      channel.write(left);
    }
    channel.force(true);
  }

  private static FileAttribute<?>[] permissions(Path path, String mode) {
    return isPosix(path)
        ? new FileAttribute<?>[] {
          PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString(mode))
        }
        : new FileAttribute<?>[0];
  }

  private static boolean isPosix(Path path) {
    return path.getFileSystem().supportedFileAttributeViews().contains("posix");
  }
}
