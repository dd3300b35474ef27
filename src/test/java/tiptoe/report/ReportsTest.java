package tiptoe.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import java.io.IOException;
import java.io.InputStream;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import javax.xml.parsers.DocumentBuilderFactory;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentCatalog;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureElement;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureNode;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import tiptoe.Golden;
import tiptoe.exam.ExamRecord;
import tiptoe.finding.FindingNotation;
import tiptoe.protocol.Caution;
import tiptoe.protocol.Protocol;

class ReportsTest {
  private static final Path GOLDEN = Path.of("src/test/resources/tiptoe/report");

  private static String render(ExamRecord record, Format format) throws IOException {
    byte[] bytes = Reports.render(Records.wording(record), format);
    return new String(bytes, StandardCharsets.UTF_8);
  }

  @ParameterizedTest
  @EnumSource(
      value = Format.class,
      names = {"PDF", "LETTER", "PARENTS"},
      mode = EnumSource.Mode.EXCLUDE)
  void saysWhatItSaidBefore(Format format) throws IOException {
    Golden.check(GOLDEN.resolve("typical." + format.ending()), render(Records.typical(), format));
    Golden.check(
        GOLDEN.resolve("demonstration." + format.ending()),
        render(Records.demonstration().record(), format));
  }

  /** The words of the page as a reader of the PDF gets them, page by page. */
  @Test
  void thePdfSaysWhatItSaidBefore() throws IOException {
    ExamRecord record = Records.demonstration().record();
    try (PDDocument pdf = Loader.loadPDF(Reports.render(Records.wording(record), Format.PDF))) {
      PDFTextStripper text = new PDFTextStripper();
      text.setSortByPosition(true);
      text.setLineSeparator("\n");
      text.setPageEnd("\n=== end of page ===\n");
      Golden.check(GOLDEN.resolve("demonstration.pdf.txt"), text.getText(pdf));
    }
  }

  @Test
  void thePdfIsInLettersOfAtLeast9PointsAndNoPageIsAlmostEmpty() throws IOException {
    for (ExamRecord record :
        List.of(Records.demonstration().record(), Records.signed(), Records.typical())) {
      try (PDDocument pdf = Loader.loadPDF(Reports.render(Records.wording(record), Format.PDF))) {
        assertEquals(2, pdf.getNumberOfPages());
        PDFTextStripper text = new PDFTextStripper();
        for (int page = 1; page <= pdf.getNumberOfPages(); page++) {
          text.setStartPage(page);
          text.setEndPage(page);
          assertTrue(text.getText(pdf).lines().count() > 10, "page " + page);
        }
        // What a layout in thousandths of a point rounds away is let through.
        assertTrue(smallestLetter(pdf) >= 8.99, "" + smallestLetter(pdf));
      }
    }
  }

  /** Size of the smallest of the letters of a report in points; there are thousands of them. */
  static double smallestLetter(PDDocument pdf) throws IOException {
    List<Float> sizes = new ArrayList<>();
    new PDFTextStripper() {
      @Override
      protected void processTextPosition(TextPosition position) {
        sizes.add(position.getFontSizeInPt());
        super.processTextPosition(position);
      }
    }.getText(pdf);
    assertTrue(sizes.size() > 1000, "letters: " + sizes.size());
    return sizes.stream().mapToDouble(size -> size).min().orElseThrow();
  }

  /** By the terms of PDF/UA-1 (ISO 14289-1): 7.1 tags, title and 7.2 language, 7.3 figures. */
  @Test
  void thePdfIsTaggedForThoseWhoCannotSeeIt() throws IOException {
    ExamRecord record = Records.demonstration().record();
    try (PDDocument pdf = Loader.loadPDF(Reports.render(Records.wording(record), Format.PDF))) {
      PDDocumentCatalog catalog = pdf.getDocumentCatalog();
      assertTrue(catalog.getMarkInfo().isMarked());
      assertEquals("en", catalog.getLanguage());
      assertTrue(catalog.getViewerPreferences().displayDocTitle());
      assertTrue(pdf.getDocumentInformation().getTitle().startsWith("Newborn examination"));
      Map<String, List<PDStructureElement>> tags = new TreeMap<>();
      collect(catalog.getStructureTreeRoot(), tags);
      assertEquals(1, tags.get("H1").size());
      assertTrue(tags.get("H2").size() >= 6, tags.keySet()::toString);
      assertTrue(tags.get("TH").size() > 20, tags.keySet()::toString);
      List<String> words =
          tags.get("Figure").stream().map(PDStructureElement::getAlternateDescription).toList();
      assertEquals(4, words.size());
      for (String begun :
          List.of("Body figure. Abnormal: clavicles, heart", "weight by gestation")) {
        assertTrue(words.stream().anyMatch(one -> one.startsWith(begun)), words::toString);
      }
    }
  }

  private static void collect(PDStructureNode node, Map<String, List<PDStructureElement>> tags) {
    for (Object kid : node.getKids()) {
      if (kid instanceof PDStructureElement element) {
        tags.computeIfAbsent(element.getStructureType(), type -> new ArrayList<>()).add(element);
        collect(element, tags);
      }
    }
  }

  @Test
  void thePageIsReadableOnAPhoneAndInTheDark() throws IOException {
    String page = render(Records.demonstration().record(), Format.HTML);
    assertTrue(page.contains("name=\"viewport\" content=\"width=device-width"), page);
    assertTrue(page.contains("prefers-color-scheme: dark"), page);
  }

  @Test
  void aSignedReportIsNoDraftAndSaysWhoSigned() throws IOException {
    ExamRecord record = Records.signed();
    for (Format format : List.of(Format.HTML, Format.MD, Format.TXT)) {
      String report = render(record, format);
      assertFalse(report.contains("DRAFT"), format.ending());
      assertTrue(report.contains("Dr Bea Marlow"), format.ending());
    }
  }

  /** Formats for programs keep to the units of the record; all that people read shows theirs. */
  @ParameterizedTest
  @EnumSource(
      value = Format.class,
      names = {"HTML", "PDF", "MD", "TXT", "FHIR"})
  void whatPeopleReadIsInTheirUnitsAndSpelling(Format format) throws IOException {
    byte[] bytes = Reports.render(Records.wording(Records.typical(), Records.AMERICAN), format);
    String report = new String(bytes, StandardCharsets.UTF_8);
    if (format == Format.PDF) {
      try (PDDocument pdf = Loader.loadPDF(bytes)) {
        report = new PDFTextStripper().getText(pdf);
      }
    }
    report = report.replaceAll("\\s+", " ").replace("\\", "");
    for (String shown :
        List.of(
            "3420 g (7 lb 9 oz)",
            "51 cm (20.1 in)",
            "36.8 °C (98.2 °F)",
            "anterior fontanel:",
            "cesarean")) {
      assertTrue(
          report.toLowerCase(Locale.ROOT).contains(shown.toLowerCase(Locale.ROOT)),
          shown + "\n" + report);
    }
    assertFalse(
        report.replaceAll("\"(display|valueString|code)\": \"[^\"]*\"", "").contains("fontanelle"),
        report);
  }

  @ParameterizedTest
  @EnumSource(Format.class)
  void writesAnEmptyRecordToo(Format format) throws IOException {
    assertTrue(Reports.render(Records.wording(Records.empty()), format).length > 50);
  }

  @Test
  void theJsonKeepsToThePublishedSchema() throws IOException {
    try (InputStream in = Reports.class.getResourceAsStream("record.schema.json")) {
      JsonSchema schema =
          JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012).getSchema(in);
      for (ExamRecord record : List.of(Records.typical(), Records.empty())) {
        var json = new ObjectMapper().readTree(render(record, Format.JSON));
        assertEquals(Set.of(), schema.validate(json));
      }
    }
  }

  @Test
  void theHtmlIsWellFormedAndHoldsNoScriptOrOutsideReference() throws Exception {
    String html = render(Records.typical(), Format.HTML);
    DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
    factory.setFeature("http://apache.org/xml/features/nonvalidating/load-external-dtd", false);
    factory.newDocumentBuilder().parse(new org.xml.sax.InputSource(new StringReader(html)));
    assertFalse(html.contains("<script"));
    assertFalse(html.replace("http://www.w3.org/2000/svg", "").contains("http"));
    assertTrue(html.contains("<html lang=\"en\">"));
    assertTrue(html.contains("aria-label=\"Body figure. Abnormal: clavicles, heart, hips, back."));
  }

  /** The lines are dictated at noon. */
  @Test
  void eachFindingHasItsAgeWhereTheTimeOfBirthIsKnownAndFitsTheStatedAge() throws IOException {
    var examination = Records.dictated(List.of("sats foot ninety seven", "skin pink"));
    examination.context("born-at", "2026-03-01T10:30", "Dr Ada Quill");
    String age = "\"age\" : 25.5";
    assertEquals(2, render(examination.record(), Format.JSON).split(age, -1).length - 1);
    assertTrue(render(examination.record(), Format.CSV).contains(",25.5\r\n"));
    assertTrue(render(examination.record(), Format.TXT).contains("97 %, at 25.5 h"));
    examination.review("Dr Bea Marlow").state(FindingNotation.parse("murmur none"));
    assertEquals(2, render(examination.record(), Format.JSON).split(age, -1).length - 1);
    examination.context("age", "40", "Dr Ada Quill");
    String text = render(examination.record(), Format.TXT);
    assertTrue(text.contains("born at: it does not fit the age of 40 h"), text);
    assertFalse(render(examination.record(), Format.JSON).contains(age));
  }

  @Test
  void whatWasTypedCannotBecomeMarkup() throws Exception {
    var examination = Records.dictated(List.of());
    examination.context("label", "<script>alert(1)</script> & \"'", "Dr Ada Quill");
    ExamRecord record = examination.record();
    assertFalse(render(record, Format.HTML).contains("<script"));
    assertTrue(render(record, Format.HTML).contains("&lt;script&gt;"));
    assertTrue(render(record, Format.MD).contains("\\<script\\>"));
  }

  @Test
  void theCsvHasOneRowAnAnswerAndNoFormula() throws IOException {
    var examination = Records.dictated(List.of("left clavicle crepitus", "ballard minus five"));
    examination.context("label", "=HYPERLINK(1)", "Dr Ada Quill");
    String csv = render(examination.record(), Format.CSV);
    List<CSVRecord> rows =
        CSVFormat.RFC4180
            .builder()
            .setHeader()
            .setSkipHeaderRecord(true)
            .get()
            .parse(new StringReader(csv))
            .getRecords();
    List<String> beside = List.of("programme", "handover");
    assertEquals(2, rows.stream().filter(row -> !beside.contains(row.get("region"))).count());
    assertEquals(4, rows.stream().filter(row -> row.get("region").equals("programme")).count());
    assertTrue(rows.stream().allMatch(row -> row.get("label").equals("'=HYPERLINK(1)")));
    assertTrue(rows.stream().anyMatch(row -> row.get("number").equals("-5")));
    assertTrue(csv.contains("\r\n"));
  }

  @Test
  void thePdfSaysDraftOnEveryPageAndEmbedsItsFonts() throws IOException {
    ExamRecord record = Records.typical();
    byte[] bytes = Reports.render(Records.wording(record), Format.PDF);
    try (PDDocument pdf = Loader.loadPDF(bytes)) {
      PDFTextStripper text = new PDFTextStripper();
      for (int page = 1; page <= pdf.getNumberOfPages(); page++) {
        text.setStartPage(page);
        text.setEndPage(page);
        assertTrue(text.getText(pdf).contains("DRAFT — not signed"), "page " + page);
      }
      text.setStartPage(1);
      text.setEndPage(pdf.getNumberOfPages());
      String all = text.getText(pdf).replaceAll("\\s+", " ");
      assertTrue(all.contains("left clavicle: crepitus"));
      assertTrue(all.contains(Caution.TEXT));
      for (PDPage page : pdf.getPages()) {
        for (var name : page.getResources().getFontNames()) {
          PDFont font = page.getResources().getFont(name);
          assertTrue(font.isEmbedded(), font.getName());
        }
      }
    }
  }

  @Test
  void thePdfIsDrawnToItsMarginsAndNoFurther() throws IOException {
    ExamRecord record = Records.typical();
    byte[] bytes = Reports.render(Records.wording(record), Format.PDF);
    try (PDDocument pdf = Loader.loadPDF(bytes)) {
      var page = new org.apache.pdfbox.rendering.PDFRenderer(pdf).renderImageWithDPI(0, 40);
      int dark = 0;
      for (int x = 0; x < page.getWidth(); x++) {
        for (int y = 0; y < page.getHeight(); y++) {
          boolean isDark = (page.getRGB(x, y) & 0xFF) < 128;
          dark += isDark ? 1 : 0;
          boolean inMargin = x < 12 || x > page.getWidth() - 12;
          assertFalse(isDark && inMargin, "ink in the margin at " + x + ", " + y);
        }
      }
      assertTrue(dark > 2000, "expected a page with ink, found " + dark + " dark dots");
    }
  }

  @Test
  void theFigureHasAPlaceForEveryRegion() {
    var record = Records.typical();
    String svg = BodyFigure.svg(Records.wording(record));
    for (var region : Protocol.standard().regions()) {
      assertTrue(
          svg.toLowerCase(java.util.Locale.ROOT).contains(">" + region.label() + "</text>"),
          region.id());
    }
  }

  @Test
  void writesNothingWhenAFileExistsUnlessForced(@TempDir Path folder) throws IOException {
    ExamRecord record = Records.empty();
    Files.writeString(folder.resolve("a.txt"), "mine");
    List<Format> formats = List.of(Format.MD, Format.TXT);
    assertThrows(
        FileAlreadyExistsException.class,
        () -> Reports.write(Records.wording(record), formats, folder, "a", false));
    assertFalse(Files.exists(folder.resolve("a.md")));
    assertEquals("mine", Files.readString(folder.resolve("a.txt")));
    Reports.write(Records.wording(record), formats, folder, "a", true);
    assertTrue(Files.readString(folder.resolve("a.txt")).contains("DRAFT"));
    try (var files = Files.list(folder)) {
      assertEquals(2, files.count());
    }
  }

  @Test
  void aFormatThatCannotBeMadeDoesNotKeepTheOthersFromBeingWritten(@TempDir Path folder)
      throws IOException {
    Reports.Renderer noPdf =
        format -> {
          if (format == Format.PDF) {
            throw new IOException("no fonts");
          }
          return new byte[] {1};
        };
    IOException told =
        assertThrows(
            IOException.class,
            () -> Reports.write(noPdf, List.of(Format.values()), folder, "a", false));
    assertEquals("pdf could not be made: no fonts", told.getMessage());
    for (Format format : Format.values()) {
      assertEquals(format != Format.PDF, Files.exists(folder.resolve("a." + format.ending())));
    }
  }

  @Test
  void bothReadingsOfAContradictionAreTold() throws IOException {
    ExamRecord record = Records.of("left red reflex present", "left red reflex absent");
    for (Format format : List.of(Format.HTML, Format.MD, Format.TXT)) {
      String report = render(record, format);
      assertTrue(report.contains("left red reflex: present"), report);
      assertTrue(report.contains("left red reflex: absent"), report);
      assertTrue(report.toLowerCase(Locale.ROOT).contains("urgent, not settled"), report);
    }
    assertTrue(render(record, Format.CSV).contains("eyes,red-reflex,left,absent,abnormal"));
    String fhir = render(record, Format.FHIR);
    assertTrue(fhir.contains("red-reflex.absent") && fhir.contains("not-settled"), fhir);
    assertTrue(render(record, Format.JSON).contains("\"provisional\" : true"));
  }

  @Test
  void aNumberThatAFlagRestsOnLooksIt() throws IOException {
    ExamRecord record =
        Records.of("temperature thirty one degrees", "heart rate 280", "weight 3400 grams");
    String text = render(record, Format.TXT);
    assertTrue(text.contains("! temperature: 31 °C L"), text);
    assertTrue(text.contains("! heart rate: 280 /min H"), text);
    assertTrue(text.contains("+ weight: 3400 g\n"), text);
    String fhir = render(record, Format.FHIR);
    assertTrue(fhir.contains("\"code\": \"L\"") && fhir.contains("\"code\": \"H\""), fhir);
  }

  @Test
  void whatWasLeftOutIsOwedAndWhatWasNotSaidIsNotRecorded() throws IOException {
    ExamRecord record = Records.of("hips deferred until later", "left red reflex present");
    String text = render(record, Format.TXT);
    assertTrue(text.contains("  Barlow (both sides) (deferred)\n"), text);
    assertTrue(text.contains("Barlow (both sides): not examined, because deferred"), text);
    assertTrue(text.contains("not recorded: right red reflex"), text);
    assertTrue(text.indexOf("KEY STEPS MISSING") < text.indexOf("FINDINGS"), text);
    var json = new ObjectMapper().readTree(render(record, Format.JSON)).get("missing");
    assertTrue(
        json.toString()
            .contains("{\"step\":\"barlow\",\"side\":\"left\",\"deferred\":\"deferred\"}"),
        json.toString());
  }
}
