package tiptoe.exam.journal;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import tiptoe.files.OwnerOnly;

/**
 * Room that is kept back on the disk, so that what is said can still be recorded for a while once
 * it is full: about 200 entries. Given up when the record is closed.
 */
final class Reserve {
  private static final int BYTES = 64 * 1024;

  /** No more than this part of what is free is kept back, so that a small disk can be used. */
  private static final int PART = 8;

  private final Path file;

  private Reserve(Path file) {
    this.file = file;
  }

  /** Keeps it back where there is room; a disk that is full already has none to keep. */
  static Reserve keep(Path file) {
    try {
      long free = Files.getFileStore(file.toAbsolutePath().getParent()).getUsableSpace();
      ByteBuffer room = ByteBuffer.allocate((int) Math.min(BYTES, free / PART));
      try (FileChannel channel = OwnerOnly.createFile(file)) {
        while (room.hasRemaining()) {
          channel.write(room);
        }
      }
    } catch (IOException e) {
      // There is none to keep; or a crash has left it, and it serves again.
    }
    return new Reserve(file);
  }

  /** Frees it; whether there was any. */
  boolean giveUp() {
    try {
      return Files.deleteIfExists(file);
    } catch (IOException e) {
      return false;
    }
  }
}
