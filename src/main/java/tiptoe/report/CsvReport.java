package tiptoe.report;

import java.io.IOException;
import java.io.StringWriter;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;
import tiptoe.clinical.Assessment;
import tiptoe.clinical.ProgrammeResult;
import tiptoe.exam.Answer;
import tiptoe.exam.ExamRecord;
import tiptoe.exam.Handover;
import tiptoe.exam.Stated;
import tiptoe.protocol.LocalProtocol;
import tiptoe.protocol.Step;
import tiptoe.wording.PlainText;
import tiptoe.wording.RecordWording;
import tiptoe.wording.Words;

/** One row an answer, for audit over many examinations (RFC 4180). */
final class CsvReport {
  private static final String COLUMNS =
      "examination,label,signed,region,step,side,value,norm,number,unit,details,denied,group,settled,"
          + "name,record-number,born-at,flags,in-review-by,local-protocol,age-h";

  private CsvReport() {}

  static String of(RecordWording findings) throws IOException {
    List<List<String>> rows = new ArrayList<>();
    findings.record().answers().forEach(answer -> rows.add(row(findings, answer, true)));
    findings.record().unsettled().forEach(answer -> rows.add(row(findings, answer, false)));
    rows.addAll(beside(findings));
    return table(COLUMNS, rows);
  }

  /** Rows below the names of their columns; null is an empty cell. */
  static String table(String columns, List<List<String>> rows) throws IOException {
    StringWriter text = new StringWriter();
    CSVFormat format = CSVFormat.RFC4180.builder().setHeader(columns.split(",")).get();
    try (CSVPrinter printer = new CSVPrinter(text, format)) {
      for (List<String> row : rows) {
        printer.printRecord(row.stream().map(cell -> cell == null ? "" : safe(cell)).toList());
      }
    }
    return text.toString();
  }

  private static List<String> row(RecordWording findings, Answer answer, boolean settled) {
    Step step = findings.record().protocol().step(answer.step());
    return whole(
        findings,
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
        flags(findings.assessment(), answer),
        findings.reviewer(List.of(answer)),
        findings.age(answer).map(BigDecimal::toPlainString).orElse(""));
  }

  // The four parts of the programme and what was handed on, as rows of regions of their own.
  private static List<List<String>> beside(RecordWording findings) {
    List<List<String>> rows = new ArrayList<>();
    for (ProgrammeResult result : findings.assessment().programme()) {
      String details =
          result.referrals().stream()
              .map(one -> one.rule() + "=" + Objects.requireNonNullElse(one.to(), one.due()))
              .collect(Collectors.joining("; "));
      rows.add(beside(findings, "programme", result.part(), result.outcome().id(), details));
    }
    for (Stated one : Handover.of(findings.record()).stated().values()) {
      String details =
          Stream.of("at=" + one.at(), "by=" + one.by())
              .filter(detail -> !detail.endsWith("=null"))
              .collect(Collectors.joining("; "));
      rows.add(beside(findings, "handover", one.fact(), one.value(), details));
    }
    return rows;
  }

  private static List<String> beside(
      RecordWording findings, String region, String step, String value, String details) {
    return whole(
        findings, region, step, "", value, "", "", "", details, "", "no", "yes", "", "", "");
  }

  // The cells that each row of a record has around its own; flags, reviewer and age come behind.
  private static List<String> whole(RecordWording findings, String... own) {
    ExamRecord record = findings.record();
    List<String> row = new ArrayList<>();
    row.add(record.opened() == null ? "" : record.opened().id());
    row.add(record.label().orElse(""));
    row.add(!findings.banner().isEmpty() ? "not valid" : record.signed() ? "yes" : "no");
    int behind = own.length - 3;
    row.addAll(List.of(own).subList(0, behind));
    for (String fact : List.of("name", "record-number", "born-at")) {
      row.add(record.baby().fact(fact).orElse(""));
    }
    row.addAll(List.of(own).subList(behind, own.length - 1));
    row.add(record.protocol().local().map(LocalProtocol::title).orElse(""));
    row.add(own[own.length - 1]);
    return row;
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
