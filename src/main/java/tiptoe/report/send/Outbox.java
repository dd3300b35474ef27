package tiptoe.report.send;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.List;
import java.util.stream.Stream;

/**
 * Documents that are to be sent, a file each, until the server has them. A crash loses none: a file
 * appears whole, and is removed only after the server's answer.
 */
public final class Outbox {
  private static final ObjectMapper JSON = new ObjectMapper();
  private static final String ENDING = ".json";

  private final Path folder;

  /**
   * @param folder made when it is first needed
   */
  public Outbox(Path folder) {
    this.folder = folder;
  }

  /**
   * A document waiting.
   *
   * @param identifier of the document, {@code urn:uuid:…}
   * @param to base address of the server
   * @param document FHIR JSON
   */
  public record Letter(String identifier, String to, String document) {}

  /** Keeps a letter; a later version of the same document to the same server replaces it. */
  public void put(Letter letter) throws IOException {
    Files.createDirectories(folder);
    ObjectNode node = JSON.createObjectNode();
    node.put("identifier", letter.identifier());
    node.put("to", letter.to());
    node.put("document", letter.document());
    Path part = Files.createTempFile(folder, "part-", ".tmp");
    Files.write(part, JSON.writeValueAsBytes(node));
    try (FileChannel channel = FileChannel.open(part, StandardOpenOption.WRITE)) {
      channel.force(true);
    }
    Files.move(
        part, file(letter), StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
  }

  /** The letters waiting, in a steady order. */
  public List<Letter> waiting() throws IOException {
    if (!Files.isDirectory(folder)) {
      return List.of();
    }
    try (Stream<Path> files = Files.list(folder)) {
      List<Path> letters = files.filter(file -> file.toString().endsWith(ENDING)).sorted().toList();
      List<Letter> read = new java.util.ArrayList<>();
      for (Path letter : letters) {
        read.add(read(letter));
      }
      return read;
    }
  }

  private static Letter read(Path file) throws IOException {
    JsonNode node = JSON.readTree(file.toFile());
    if (!node.path("identifier").isTextual() || !node.path("document").isTextual()) {
      throw new IOException("expected a document to send, found something else in " + file);
    }
    return new Letter(
        node.get("identifier").asText(), node.get("to").asText(), node.get("document").asText());
  }

  void remove(Letter letter) throws IOException {
    Files.deleteIfExists(file(letter));
  }

  private Path file(Letter letter) {
    String name = letter.identifier() + " " + letter.to();
    byte[] bytes = name.getBytes(java.nio.charset.StandardCharsets.UTF_8);
    return folder.resolve(java.util.UUID.nameUUIDFromBytes(bytes) + ENDING);
  }
}
