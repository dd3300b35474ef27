package tiptoe.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import tiptoe.Golden;
import tiptoe.exam.Examination;
import tiptoe.exam.Signer;
import tiptoe.exam.StatedIdentity;
import tiptoe.exam.journal.MemorySink;
import tiptoe.protocol.Protocol;
import tiptoe.wording.QuestionWording;
import tiptoe.wording.RecordWording;

/** Whole checks of invented babies, a well one and four ill ones, from identity to letter. */
class WholeCheckTest {
  private static final Path CHECKS = Path.of("src/test/resources/tiptoe/report/checks");

  static RecordWording checked(String name) throws IOException {
    List<String> lines =
        Files.readAllLines(CHECKS.resolve(name + ".txt")).stream()
            .filter(line -> !line.startsWith("#"))
            .toList();
    Examination examination = Records.dictated(lines.subList(1, lines.size()));
    StatedIdentity.ofLine(lines.get(0), Protocol.standard())
        .ifPresent(
            stated ->
                stated.facts().forEach((fact, value) -> examination.context(fact, value, null)));
    return Records.wording(examination.record());
  }

  @ParameterizedTest
  @ValueSource(strings = {"well", "green-vomit", "infection", "heart", "hips-and-jaundice"})
  void aCheckComesToLettersAndData(String name) throws IOException {
    RecordWording check = checked(name);
    // Typed as they stand, all lines are understood.
    assertEquals(List.of(), check.unsure(), name);
    for (Format format : List.of(Format.LETTER_HTML, Format.PARENTS_HTML, Format.JSON)) {
      Golden.check(
          CHECKS.resolve(name + "." + format.ending()),
          new String(Reports.render(check, format), StandardCharsets.UTF_8));
    }
  }

  @Test
  void nothingForAWellBabyIsLongerThanAPage() throws IOException {
    RecordWording draft = checked("well");
    Examination examination =
        Examination.of(
            draft.record(),
            Clock.fixed(Records.NOON, ZoneOffset.UTC),
            new MemorySink(),
            QuestionWording::of);
    examination
        .review("Dr Bea Marlow")
        .sign("consultant paediatrician", Map.of(), Signer.NAME_ONLY);
    RecordWording signed = Records.wording(examination.record());
    for (Format format : List.of(Format.PDF, Format.LETTER, Format.PARENTS)) {
      for (RecordWording check : List.of(draft, signed)) {
        try (PDDocument pdf = Loader.loadPDF(Reports.render(check, format))) {
          assertEquals(1, pdf.getNumberOfPages(), format.toString());
          assertTrue(ReportsTest.smallestLetter(pdf) >= 8.99, format.toString());
        }
      }
    }
  }

  /** The four parts that a programme reports, from the findings of each script. */
  @ParameterizedTest
  @CsvSource({
    "well, eyes NO_CONCERN; heart NO_CONCERN; hips NO_CONCERN; testes NOT_APPLICABLE",
    "green-vomit, eyes NO_CONCERN; heart NO_CONCERN; hips NO_CONCERN; testes NO_CONCERN",
    "infection, eyes NOT_DONE; heart NO_CONCERN; hips NOT_DONE; testes NOT_APPLICABLE",
    "heart, eyes NO_CONCERN; heart REFERRAL; hips NOT_DONE; testes NO_CONCERN",
    "hips-and-jaundice, eyes REFERRAL; heart NO_CONCERN; hips REFERRAL; testes NOT_APPLICABLE",
  })
  void eachPartHasItsResult(String name, String results) throws IOException {
    RecordWording check = checked(name);
    assertEquals(
        results,
        check.assessment().programme().stream()
            .map(result -> result.part() + " " + result.outcome())
            .collect(Collectors.joining("; ")));
  }

  @Test
  void anEmergencyStandsFirstInTheLetterAndItsSignInThePageForParents() throws IOException {
    RecordWording check = checked("green-vomit");
    String letter = new String(Reports.render(check, Format.LETTER_HTML), StandardCharsets.UTF_8);
    assertTrue(letter.contains("<h2>To act on</h2>\n<ul>\n<li>EMERGENCY, now: "), letter);
    String parents = new String(Reports.render(check, Format.PARENTS_HTML), StandardCharsets.UTF_8);
    assertTrue(parents.contains("<li>vomits green</li>"), parents);
  }
}
