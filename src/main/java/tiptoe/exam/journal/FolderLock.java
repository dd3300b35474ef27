package tiptoe.exam.journal;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import tiptoe.files.OwnerOnly;

/** Keeps a second process out of an examination. The system lets go of it if this one dies. */
final class FolderLock implements AutoCloseable {
  private final FileChannel channel;

  private FolderLock(FileChannel channel) {
    this.channel = channel;
  }

  static FolderLock take(ExamFolder folder) throws IOException {
    FileChannel channel = open(folder.lock());
    try {
      if (channel.tryLock() != null) {
        return new FolderLock(channel);
      }
    } catch (OverlappingFileLockException e) {
      // It is this process that holds it.
    } catch (IOException e) {
      channel.close();
      throw e;
    }
    channel.close();
    throw new RecordProblem("examination " + folder.name() + " is open in another window");
  }

  private static FileChannel open(Path file) throws IOException {
    if (Files.exists(file, LinkOption.NOFOLLOW_LINKS)) {
      if (!Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS)) {
        // Opening a pipe would wait for a reader.
        throw new IOException("something that is no file at " + file);
      }
      return FileChannel.open(file, StandardOpenOption.WRITE);
    }
    try {
      return OwnerOnly.createFile(file);
    } catch (java.nio.file.FileAlreadyExistsException e) {
      return FileChannel.open(file, StandardOpenOption.WRITE);
    }
  }

  /** Whether some process writes to the examination now. */
  static boolean isTaken(ExamFolder folder) {
    if (!Files.exists(folder.lock())) {
      return false;
    }
    try (FolderLock lock = take(folder)) {
      return lock == null;
    } catch (RecordProblem e) {
      return true;
    } catch (IOException e) {
      return false;
    }
  }

  @Override
  public void close() throws IOException {
    channel.close();
  }
}
