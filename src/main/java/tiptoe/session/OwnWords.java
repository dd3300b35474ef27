package tiptoe.session;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import tiptoe.files.BoundedFile;

/**
 * The user's own pronunciations, one a line as in {@code pronunciations.txt}; they are heard beside
 * those of the program.
 *
 * @param file beside the settings; possibly not there
 */
public record OwnWords(Path file) {
  private static final String NAME = "own-words.txt";
  private static final String HEAD = "# Words as they are said here, beside the usual ways.";

  public static OwnWords usual() {
    return new OwnWords(Home.settingsFile().resolveSibling(NAME));
  }

  /** The pronunciation files to use, the program's first. */
  public List<Path> after(Path program) {
    return Files.isRegularFile(file) ? List.of(program, file) : List.of(program);
  }

  /** The lines that teach a word. */
  public List<String> lines() throws IOException {
    return all().stream().filter(line -> !word(line).isEmpty()).toList();
  }

  public void add(String line) throws IOException {
    List<String> lines = new ArrayList<>(all());
    if (lines.isEmpty()) {
      lines.add(HEAD);
    }
    lines.add(line);
    write(lines);
  }

  /** Takes a word out; how many lines that were. */
  public int forget(String word) throws IOException {
    List<String> before = all();
    List<String> rest = before.stream().filter(line -> !word(line).equals(word)).toList();
    if (rest.size() < before.size()) {
      write(rest);
    }
    return before.size() - rest.size();
  }

  private List<String> all() throws IOException {
    if (!Files.exists(file)) {
      return List.of();
    }
    return BoundedFile.TEXT.lines(file);
  }

  private static String word(String line) {
    return line.replaceFirst("#.*", "").strip().split("\\s+")[0];
  }

  private void write(List<String> lines) throws IOException {
    Files.createDirectories(file.getParent());
    Path part = Files.createTempFile(file.getParent(), "own-words", ".part");
    try {
      Files.write(part, lines);
      Files.move(part, file, StandardCopyOption.REPLACE_EXISTING);
    } finally {
      Files.deleteIfExists(part);
    }
  }
}
