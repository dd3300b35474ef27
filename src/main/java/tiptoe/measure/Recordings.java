package tiptoe.measure;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;

/** The recordings of a folder. */
public final class Recordings {
  private Recordings() {}

  /**
   * WAV files right in a folder, by name.
   *
   * @throws IOException when there is no such folder, or none of the split in it
   */
  public static List<Path> in(Path folder, Split split) throws IOException {
    if (!Files.isDirectory(folder)) {
      throw new IOException(
          "expected a folder of recordings, found %s at %s"
              .formatted(Files.exists(folder) ? "something else" : "nothing", folder));
    }
    List<Path> all;
    try (Stream<Path> files = Files.list(folder)) {
      all =
          files
              .filter(file -> file.toString().toLowerCase(Locale.ROOT).endsWith(".wav"))
              .sorted()
              .toList();
    }
    List<Path> taken =
        all.stream().filter(file -> split.takes(file.getFileName().toString())).toList();
    if (taken.isEmpty()) {
      throw new IOException(
          all.isEmpty()
              ? "expected WAV files, found none in " + folder
              : "expected %s recordings, found none among the %d in %s"
                  .formatted(split.id(), all.size(), folder));
    }
    return taken;
  }
}
