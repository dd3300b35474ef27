package tiptoe.report;

import java.io.IOException;
import java.io.StringWriter;
import java.util.List;
import java.util.stream.Collectors;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;
import tiptoe.clinical.Assessment;
import tiptoe.exam.Answer;
import tiptoe.exam.Event;
import tiptoe.exam.ExamRecord;
import tiptoe.protocol.Step;
import tiptoe.wording.PlainText;
import tiptoe.wording.RecordWording;
import tiptoe.wording.Words;

/** One row an answer, for audit over many examinations (RFC 4180). */
final class CsvReport {
  private static final String[] COLUMNS = {
    "examination",
    "label",
    "signed",
    "region",
    "step",
    "side",
    "value",
    "norm",
    "number",
    "unit",
    "details",
    "denied",
    "group",
    "settled",
    "name",
    "record-number",
    "born-at",
    "flags"
  };
  private static final CSVFormat FORMAT = CSVFormat.RFC4180.builder().setHeader(COLUMNS).get();

  private CsvReport() {}

  static String of(RecordWording findings) throws IOException {
    ExamRecord record = findings.record();
    StringWriter text = new StringWriter();
    try (CSVPrinter printer = new CSVPrinter(text, FORMAT)) {
      for (Answer answer : record.answers()) {
        printer.printRecord(row(findings, answer, true).stream().map(CsvReport::safe).toList());
      }
      for (Answer answer : record.unsettled()) {
        printer.printRecord(row(findings, answer, false).stream().map(CsvReport::safe).toList());
      }
    }
    return text.toString();
  }

  private static List<String> row(RecordWording findings, Answer answer, boolean settled) {
    ExamRecord record = findings.record();
    Step step = record.protocol().step(answer.step());
    Event.ExaminationOpened opened = record.opened();
    return List.of(
        opened == null ? "" : opened.id(),
        record.label().orElse(""),
        !findings.banner().isEmpty() ? "not valid" : record.signed() ? "yes" : "no",
        step.region(),
        answer.step(),
        answer.side() == null ? "" : answer.side().id(),
        answer.value() == null ? "" : answer.value(),
        findings
            .norm(answer)
            .map(norm -> norm.name().toLowerCase(java.util.Locale.ROOT))
            .orElse(""),
        answer.quantity() == null ? "" : answer.quantity().comparison(),
        answer.quantity() == null ? "" : answer.quantity().unit(),
        answer.details().entrySet().stream()
            .map(detail -> detail.getKey() + "=" + detail.getValue())
            .collect(Collectors.joining("; ")),
        String.join("; ", answer.denied()),
        answer.group() ? "yes" : "no",
        settled ? "yes" : "no",
        record.baby().fact("name").orElse(""),
        record.baby().fact("record-number").orElse(""),
        record.baby().fact("born-at").orElse(""),
        flags(findings.assessment(), answer));
  }

  // Such as "urgent red-reflex-abnormal", "urgent central-cyanosis (not settled)".
  private static String flags(Assessment assessment, Answer answer) {
    return assessment.flags().stream()
        .filter(flag -> flag.steps().contains(answer.step()))
        .filter(flag -> flag.statements().contains(answer.statement()))
        .map(
            flag ->
                flag.level().id()
                    + " "
                    + flag.rule()
                    + (flag.provisional() ? " (" + Words.NOT_SETTLED + ")" : ""))
        .collect(Collectors.joining("; "));
  }

  // A spreadsheet runs a cell that begins like a formula, some also behind spaces or in full-width
  // signs; a number that is negative is none.
  static String safe(String text) {
    String cell = PlainText.line(text);
    boolean formula =
        cell.matches("[\\s\\p{Z}\uFFFD]*[=+\\-@|\uFF1D\uFF0B\uFF0D\uFF20].*")
            && !cell.matches("-?[0-9.]+");
    return formula ? "'" + cell : cell;
  }
}
