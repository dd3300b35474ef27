package tiptoe.files;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;

/** A folder with all that is in it. */
public final class FolderTree {
  private FolderTree() {}

  /** Removes it, where there is one; links are removed and not followed. */
  public static void delete(Path root) throws IOException {
    if (Files.exists(root, LinkOption.NOFOLLOW_LINKS)) {
      try (Stream<Path> paths = Files.walk(root)) {
        List<Path> deepestFirst = paths.sorted(Comparator.reverseOrder()).toList();
        for (Path path : deepestFirst) {
          Files.deleteIfExists(path);
        }
      }
    }
  }
}
