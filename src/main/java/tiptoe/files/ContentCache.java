package tiptoe.files;

import java.io.IOException;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;

/**
 * Keeps what takes long to make, a file or a folder, under a name that tells what it was made from.
 * It is made under another name and then renamed, so that a crash leaves nothing half made.
 *
 * @param places where it may be, such as beside an installed program and in the user's own cache:
 *     what is there is taken from the first, what is new goes into the first that can be written to
 */
public record ContentCache(List<Path> places) {
  private static final int DIGITS = 16;

  public ContentCache {
    places = List.copyOf(places);
  }

  /** Writes a new file or folder to a path at which nothing is yet. */
  @FunctionalInterface
  public interface Writer {
    void write(Path part) throws IOException;
  }

  /** Beside a program, else in the user's own cache. */
  public static ContentCache beside(Path folder) {
    return new ContentCache(List.of(folder.toAbsolutePath(), UserFolders.here().cache()));
  }

  /** The digits of a hash that a name carries. */
  public static String digits(String hash) {
    return hash.substring(0, DIGITS);
  }

  /** Where a name may be found, in order; nothing need be there. */
  public List<Path> candidates(String name) {
    return places.stream().map(place -> place.resolve(name)).toList();
  }

  /** Whether what another process has put there is as it should be. */
  @FunctionalInterface
  public interface Check {
    boolean isIntact(Path path) throws IOException;
  }

  /**
   * Writes a file that is kept under a name, and takes the place of what was there.
   *
   * @throws IOException as writing failed in the last place
   */
  public Path put(String name, Writer writer) throws IOException {
    return put(name, writer, path -> false);
  }

  /**
   * The same for a file or a folder that another process may make meanwhile.
   *
   * @param check what is there and passes it stays, since another process may be reading it
   */
  public Path put(String name, Writer writer, Check check) throws IOException {
    for (Path place : places.subList(0, places.size() - 1)) {
      if (isWritable(place)) {
        return put(place.resolve(name), writer, check);
      }
    }
    return put(places.get(places.size() - 1).resolve(name), writer, check);
  }

  private static boolean isWritable(Path place) {
    try {
      Files.createDirectories(place);
      return Files.isWritable(place);
    } catch (IOException e) {
      return false;
    }
  }

  private static Path put(Path target, Writer writer, Check check) throws IOException {
    Files.createDirectories(target.getParent());
    Path folder = Files.createTempDirectory(target.getParent(), "part-");
    Path part = folder.resolve(target.getFileName());
    try {
      writer.write(part);
      if (check.isIntact(target)) {
        return target; // another process has just made the same, and may be reading it
      }
      if (Files.isDirectory(target)) {
        FolderTree.delete(target);
      }
      rename(part, target, check);
    } finally {
      FolderTree.delete(folder);
    }
    return target;
  }

  private static void rename(Path part, Path target, Check check) throws IOException {
    try {
      Files.move(part, target, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
    } catch (AtomicMoveNotSupportedException e) {
      Files.move(part, target, StandardCopyOption.REPLACE_EXISTING);
    } catch (FileSystemException e) {
      // The other process was faster by less than that; systems name differently what is in the
      // way.
      if (!check.isIntact(target)) {
        throw e;
      }
    }
  }
}
