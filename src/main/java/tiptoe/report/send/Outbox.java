package tiptoe.report.send;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.UUID;
import java.util.stream.Stream;
import tiptoe.files.BoundedFile;
import tiptoe.files.OwnerOnly;
import tiptoe.report.fhir.FhirDocument;
import tiptoe.wording.PlainText;
import tiptoe.wording.ProblemWording;
import tiptoe.wording.RecordWording;

/**
 * Documents that are to be sent, a file each, until the server has them. A crash loses none: a file
 * appears whole, and is removed only after the server's answer. Only their owner may read them;
 * they are not encrypted, so what is encrypted elsewhere is not to be put here.
 *
 * @param folder made when it is first needed
 */
public record Outbox(Path folder) {
  private static final ObjectMapper JSON = new ObjectMapper();
  private static final String ENDING = ".json";
  private static final DateTimeFormatter WHEN =
      DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm", Locale.ROOT);

  /**
   * A document waiting.
   *
   * @param identifier of the document, {@code urn:uuid:…}
   * @param to base address of the server
   * @param document FHIR JSON
   */
  public record Letter(String identifier, String to, String document) {
    public static Letter of(RecordWording record, String server) throws IOException {
      return new Letter(
          FhirDocument.bundle(record).getIdentifier().getValue(),
          server,
          FhirDocument.json(record));
    }
  }

  /**
   * What waits.
   *
   * @param letters in a steady order
   * @param problems files that hold no letter, for people
   */
  public record Contents(List<Letter> letters, List<String> problems) {
    public Contents {
      letters = List.copyOf(letters);
      problems = List.copyOf(problems);
    }
  }

  /** Keeps a letter; a later version of the same document to the same server replaces it. */
  public void put(Letter letter) throws IOException {
    OwnerOnly.createFolder(folder);
    Path part = folder.resolve("part-" + UUID.randomUUID() + ".tmp");
    OwnerOnly.write(part, JSON.writeValueAsBytes(letter));
    Files.move(
        part, file(letter), StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
  }

  /** The letters waiting, and what is there besides; one that cannot be read keeps none back. */
  public Contents contents() throws IOException {
    List<Letter> letters = new ArrayList<>();
    List<String> problems = new ArrayList<>();
    for (Path file : files()) {
      if (file.toString().endsWith(ENDING)) {
        try {
          letters.add(read(file));
        } catch (IOException e) {
          problems.add(ProblemWording.of(e));
        }
      }
    }
    return new Contents(letters, problems);
  }

  private List<Path> files() throws IOException {
    if (!Files.isDirectory(folder, LinkOption.NOFOLLOW_LINKS)) {
      return List.of();
    }
    try (Stream<Path> files = Files.list(folder)) {
      return files.sorted().toList();
    }
  }

  private static Letter read(Path file) throws IOException {
    JsonNode node;
    try {
      node = JSON.readTree(BoundedFile.LETTER.bytes(file));
    } catch (JsonProcessingException e) {
      throw new IOException("expected a document to send, found something else in " + file, e);
    }
    if (!node.path("identifier").isTextual()
        || !node.path("to").isTextual()
        || !node.path("document").isTextual()) {
      throw new IOException("expected a document to send, found something else in " + file);
    }
    return new Letter(
        node.get("identifier").asText(), node.get("to").asText(), node.get("document").asText());
  }

  /** Since when a letter waits, what it is and where it goes, on one line. */
  public String row(Letter letter) {
    String since;
    try {
      Instant at = Files.getLastModifiedTime(file(letter)).toInstant();
      since = WHEN.format(at.atZone(ZoneId.systemDefault()));
    } catch (IOException e) {
      since = "-";
    }
    return since
        + "  "
        + PlainText.line(letter.identifier())
        + "  to "
        + Destination.shown(letter.to());
  }

  /** Removes all that waits, also what cannot be read or was not finished. Gives how many files. */
  public int clear() throws IOException {
    int removed = 0;
    for (Path file : files()) {
      boolean letter = file.toString().endsWith(ENDING);
      if (letter || file.getFileName().toString().matches("part-.*\\.tmp")) {
        Files.delete(file);
        removed++;
      }
    }
    return removed;
  }

  boolean holds(Letter letter) {
    return Files.exists(file(letter));
  }

  void remove(Letter letter) throws IOException {
    Files.deleteIfExists(file(letter));
  }

  private Path file(Letter letter) {
    String name = letter.identifier() + " " + letter.to();
    byte[] bytes = name.getBytes(StandardCharsets.UTF_8);
    return folder.resolve(UUID.nameUUIDFromBytes(bytes) + ENDING);
  }
}
