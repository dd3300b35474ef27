package tiptoe.graph;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.nio.file.attribute.FileTime;
import java.security.MessageDigest;
import java.time.Duration;
import java.time.Instant;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Stream;
import tiptoe.files.Sha256;

/**
 * SHA-256 of every file of a folder, in the format of {@code sha256sum}. A damaged model may abort
 * the process or load and mis-hear, so a folder is held against its manifest before native code
 * sees it.
 *
 * @param digests path below the folder, with {@code /}, to SHA-256 in lower-case hexadecimal
 */
record Manifest(SortedMap<String, String> digests) {
  private static final Duration SETTLED = Duration.ofSeconds(5);
  private static final Map<Content, String> KNOWN = new ConcurrentHashMap<>();

  /** What tells that a file is still the one that was read. */
  private record Content(Path place, long size, FileTime modified, Object key) {}

  static Manifest read(InputStream in) throws IOException {
    SortedMap<String, String> digests = new TreeMap<>();
    BufferedReader reader = new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8));
    for (String line = reader.readLine(); line != null; line = reader.readLine()) {
      if (!line.matches("[0-9a-f]{64} [ *].+")) {
        throw new UnusableModelException("expected a SHA-256 and a file name, found " + line);
      }
      digests.put(line.substring(66), line.substring(0, 64));
    }
    return new Manifest(digests);
  }

  /** The manifest of a folder as it is now, without the files named. */
  static Manifest of(Path folder, String... except) throws IOException {
    SortedMap<String, String> digests = new TreeMap<>();
    try (Stream<Path> files = Files.walk(folder)) {
      for (Path file : (Iterable<Path>) files.filter(Files::isRegularFile)::iterator) {
        digests.put(nameOf(folder, file), sha256(file));
      }
    }
    for (String name : except) {
      digests.remove(name);
    }
    return new Manifest(digests);
  }

  void write(Path file) throws IOException {
    StringBuilder text = new StringBuilder();
    digests.forEach((name, digest) -> text.append(digest).append("  ").append(name).append('\n'));
    Files.writeString(file, text);
  }

  /** The first thing wrong with the folder, or empty when every file is as listed. */
  Optional<String> firstProblem(Path folder) throws IOException {
    for (Map.Entry<String, String> entry : digests.entrySet()) {
      Path file = folder.resolve(entry.getKey());
      // What may not be looked at neither exists nor not; reading it then tells why.
      if (Files.notExists(file) || Files.exists(file) && !Files.isRegularFile(file)) {
        return Optional.of("expected %s in %s, found none".formatted(entry.getKey(), folder));
      }
      String found = sha256(file);
      if (!found.equals(entry.getValue())) {
        return Optional.of(
            "expected SHA-256 %s of %s in %s, found %s"
                .formatted(shortened(entry.getValue()), entry.getKey(), folder, shortened(found)));
      }
    }
    return Optional.empty();
  }

  /** One SHA-256 over all of it. */
  String identity() {
    MessageDigest digest = Sha256.start();
    digests.forEach(
        (name, each) -> {
          Sha256.add(digest, name);
          Sha256.add(digest, each);
        });
    return Sha256.hex(digest.digest());
  }

  private static String shortened(String digest) {
    return digest.substring(0, 12) + "…";
  }

  private static String nameOf(Path folder, Path file) {
    return folder.relativize(file).toString().replace('\\', '/');
  }

  /**
   * The SHA-256 of a file. What this process has read already is not read again while its place,
   * size and time are the same, as graphs name the same weights by links; a file that has just been
   * written is, since the clock of a file system may not tell a second writing from the first.
   */
  static String sha256(Path file) throws IOException {
    BasicFileAttributes now = Files.readAttributes(file, BasicFileAttributes.class);
    Content content =
        new Content(file.toRealPath(), now.size(), now.lastModifiedTime(), now.fileKey());
    String known = KNOWN.get(content);
    if (known != null) {
      return known;
    }
    String found = Sha256.hex(Sha256.of(file));
    if (content.modified().toInstant().isBefore(Instant.now().minus(SETTLED))) {
      KNOWN.put(content, found);
    }
    return found;
  }
}
