package tiptoe.report;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import tiptoe.report.fhir.FhirDocument;
import tiptoe.wording.RecordWording;

/** Writes a record in the formats asked for. */
public final class Reports {
  private Reports() {}

  public static byte[] render(RecordWording findings, Format format) throws IOException {
    return switch (format) {
      case FHIR -> utf8(FhirDocument.json(findings));
      case HTML -> utf8(HtmlReport.of(findings));
      case PDF -> PdfReport.of(findings);
      case MD -> utf8(MarkdownReport.of(findings));
      case TXT -> utf8(TextReport.of(findings));
      case CSV -> utf8(CsvReport.of(findings));
      case JSON -> utf8(json(findings).toPrettyString() + "\n");
      case LETTER -> PdfReport.print(FamilyPages.letter(findings));
      case LETTER_HTML -> utf8(FamilyPages.letter(findings));
      case PARENTS -> PdfReport.print(FamilyPages.parents(findings));
      case PARENTS_HTML -> utf8(FamilyPages.parents(findings));
    };
  }

  private static ObjectNode json(RecordWording findings) {
    ObjectNode json = RecordJson.of(findings.record(), findings.assessment());
    if (!findings.banner().isEmpty()) {
      json.put("altered", findings.banner());
    }
    return json;
  }

  /** Makes the folder that reports are to go to, where it is not there yet. */
  public static void makeFolder(Path folder) throws IOException {
    try {
      Files.createDirectories(folder);
    } catch (IOException e) {
      throw new IOException("expected a folder that can be written to, found none at " + folder, e);
    }
  }

  /**
   * Writes files {@code NAME.ENDING}; each appears whole or not at all. A format that cannot be
   * made does not keep the others from being written.
   *
   * @param force whether files that exist may be replaced
   * @return the files, in the order of the formats
   * @throws FileAlreadyExistsException when one exists and may not be replaced; nothing is written
   * @throws IOException after all others were written, naming the formats that could not be made
   */
  public static List<Path> write(
      RecordWording findings, Collection<Format> formats, Path folder, String name, boolean force)
      throws IOException {
    return write(format -> render(findings, format), formats, folder, name, force);
  }

  static List<Path> write(
      Renderer renderer, Collection<Format> formats, Path folder, String name, boolean force)
      throws IOException {
    makeFolder(folder);
    List<Path> files = new ArrayList<>();
    for (Format format : formats) {
      Path file = folder.resolve(name + "." + format.ending());
      if (!force && Files.exists(file)) {
        throw new FileAlreadyExistsException(
            file.toString(), null, "it exists; --force replaces it");
      }
      files.add(file);
    }
    List<String> failures = new ArrayList<>();
    int at = 0;
    for (Format format : formats) {
      Path file = files.get(at++);
      byte[] content;
      try {
        content = renderer.render(format);
      } catch (IOException | RuntimeException e) {
        String why = e.getMessage() == null ? e.toString() : e.getMessage();
        failures.add(format.ending() + " could not be made: " + why);
        continue;
      }
      writeWhole(file, content);
    }
    if (!failures.isEmpty()) {
      throw new IOException(String.join("; ", failures));
    }
    return files;
  }

  @FunctionalInterface
  interface Renderer {
    byte[] render(Format format) throws IOException;
  }

  private static void writeWhole(Path file, byte[] content) throws IOException {
    Path part = Files.createTempFile(file.toAbsolutePath().getParent(), "part-", ".tmp");
    try {
      Files.write(part, content);
      Files.move(part, file, StandardCopyOption.REPLACE_EXISTING, StandardCopyOption.ATOMIC_MOVE);
    } finally {
      Files.deleteIfExists(part);
    }
  }

  private static byte[] utf8(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }
}
