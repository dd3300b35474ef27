import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.PathMatcher;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import java.util.zip.Deflater;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import java.util.zip.ZipOutputStream;
import org.objectweb.asm.ClassReader;
import org.objectweb.asm.ClassWriter;

/**
 * Writes the libraries as they are shipped: without what libraries.txt leaves out, and without the
 * numbers of lines and names of variables of their classes, a fifth of their size.
 */
final class ShipLibraries {
  /**
   * Something kept or left out of a jar.
   *
   * @param kept whether the patterns are all that is kept
   */
  record Part(String jar, boolean kept, List<String> patterns) {
    static Part parse(String line) {
      String[] words = line.split(" +");
      if (words.length < 3 || !words[1].matches("[+-]")) {
        throw new IllegalArgumentException("expected a jar, + or - and patterns, found " + line);
      }
      return new Part(
          words[0], words[1].equals("+"), Arrays.asList(words).subList(2, words.length));
    }
  }

  /** Newer class files are for newer virtual machines than the one that is shipped. */
  private static final int JAVA_17 = 61;

  private final List<Part> parts;
  private final Map<String, PathMatcher> matchers = new HashMap<>();
  private final Set<String> unused = new HashSet<>();

  private ShipLibraries(List<Part> parts) {
    this.parts = parts;
    for (Part part : parts) {
      part.patterns().forEach(pattern -> unused.add(part.jar() + " " + pattern));
    }
  }

  /** Called with the folder of whole libraries, the folder to write, and the list of parts. */
  public static void main(String[] arguments) throws IOException {
    List<String> lines = Files.readAllLines(Path.of(arguments[2]));
    ShipLibraries shipped =
        new ShipLibraries(
            lines.stream()
                .filter(line -> !line.isBlank() && !line.startsWith("#"))
                .map(Part::parse)
                .toList());
    Path to = Files.createDirectories(Path.of(arguments[1]));
    List<Path> jars = new ArrayList<>();
    try (Stream<Path> files = Files.list(Path.of(arguments[0]))) {
      files.sorted().forEach(jars::add);
    }
    for (Path jar : jars) {
      shipped.write(jar, to.resolve(jar.getFileName()));
    }
    if (!shipped.unused.isEmpty()) {
      System.err.println("expected each part in its library, found none of " + shipped.unused);
      System.exit(1);
    }
  }

  private void write(Path from, Path to) throws IOException {
    List<Part> mine =
        parts.stream().filter(part -> matches(part.jar(), from.getFileName().toString())).toList();
    try (ZipFile in = new ZipFile(from.toFile());
        OutputStream file = Files.newOutputStream(to);
        ZipOutputStream out = new ZipOutputStream(file)) {
      out.setLevel(Deflater.BEST_COMPRESSION);
      for (ZipEntry entry : Collections.list(in.entries())) {
        if (entry.isDirectory() || !isShipped(mine, entry.getName())) {
          continue;
        }
        byte[] data = in.getInputStream(entry).readAllBytes();
        ZipEntry written = new ZipEntry(entry.getName());
        written.setTime(entry.getTime());
        out.putNextEntry(written);
        out.write(entry.getName().endsWith(".class") ? withoutLines(data) : data);
      }
    }
  }

  private boolean isShipped(List<Part> mine, String name) {
    boolean shipped = true;
    for (Part part : mine) {
      boolean found = false;
      for (String pattern : part.patterns()) {
        if (matches(pattern, name)) {
          unused.remove(part.jar() + " " + pattern);
          found = true;
        }
      }
      shipped &= found == part.kept();
    }
    return shipped;
  }

  private boolean matches(String pattern, String name) {
    return matchers
        .computeIfAbsent(pattern, one -> FileSystems.getDefault().getPathMatcher("glob:" + one))
        .matches(Path.of(name));
  }

  private static byte[] withoutLines(byte[] data) {
    int version = (data[6] & 0xff) << 8 | data[7] & 0xff;
    if (version > JAVA_17) {
      return data;
    }
    ClassWriter writer = new ClassWriter(0);
    new ClassReader(data).accept(writer, ClassReader.SKIP_DEBUG);
    return writer.toByteArray();
  }
}
