package tiptoe.measure;

import java.io.IOException;
import java.io.StringWriter;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;
import tiptoe.exam.Event;
import tiptoe.exam.ExamRecord;
import tiptoe.protocol.Protocol;
import tiptoe.protocol.Step;

/** How complete records are, how soon they were signed, and what reviewers put right. */
public final class Quality {
  private static final String FORM = "%-28s %15s %10s %15s%n";

  private final List<Row> rows = new ArrayList<>();
  private final List<Double> hours = new ArrayList<>();
  private final int records;
  private final long signed;

  /**
   * A key step over all records.
   *
   * @param step its id
   * @param name for people
   * @param wanted places to answer, a side each, of the babies it applies to
   * @param done of them answered
   * @param leftOut of them left out for a reason
   * @param judged findings heard and recorded that a signature judged
   * @param corrected of them put right by the reviewer
   */
  record Row(
      String step, String name, int wanted, int done, int leftOut, long judged, long corrected) {}

  /**
   * Adds up records that are as they were signed.
   *
   * @param protocol whose key steps are told also where no record holds them
   */
  public Quality(Protocol protocol, List<ExamRecord> all) {
    records = all.size();
    signed = all.stream().filter(record -> !record.signatures().isEmpty()).count();
    all.forEach(record -> hoursToSign(record).ifPresent(hours::add));
    List<Agreement.Judged> judged =
        all.stream().flatMap(record -> Agreement.of(record).stream()).toList();
    Map<String, Step> keys = new LinkedHashMap<>();
    Stream.concat(Stream.of(protocol), all.stream().map(ExamRecord::protocol))
        .flatMap(Protocol::steps)
        .filter(Step::key)
        .forEach(step -> keys.putIfAbsent(step.id(), step));
    keys.values().forEach(step -> rows.add(row(step, all, judged)));
    hours.sort(null);
  }

  private static Row row(Step step, List<ExamRecord> all, List<Agreement.Judged> judged) {
    int wanted = 0;
    int missing = 0;
    int leftOut = 0;
    for (ExamRecord record : all) {
      boolean key = record.protocol().find(step.id()).filter(Step::key).isPresent();
      if (key && step.appliesTo(record.baby().sex().orElse(null))) {
        wanted += step.sided() ? 2 : 1;
        missing += (int) record.missing().stream().filter(slot -> isOf(step, slot.step())).count();
        leftOut +=
            (int)
                record.deferred().keySet().stream().filter(slot -> isOf(step, slot.step())).count();
      }
    }
    List<Agreement.Judged> of =
        judged.stream()
            .filter(one -> one.sort() == Agreement.Sort.ACCEPTED && isOf(step, one.step()))
            .toList();
    long corrected = of.stream().filter(one -> !one.right()).count();
    return new Row(
        step.id(), step.label(), wanted, wanted - missing, leftOut, of.size(), corrected);
  }

  private static boolean isOf(Step step, String id) {
    return step.id().equals(id);
  }

  /** From the end of the examination, or its last word where it did not end, to the first name. */
  private static Optional<Double> hoursToSign(ExamRecord record) {
    if (record.signatures().isEmpty()) {
      return Optional.empty();
    }
    Instant at = record.signatures().get(0).at();
    return record.entries().stream()
        .filter(entry -> !entry.at().isAfter(at))
        .filter(
            entry ->
                entry.event() instanceof Event.Ended
                    || entry.event() instanceof Event.UtteranceHeard)
        .reduce((first, last) -> last)
        .map(last -> Duration.between(last.at(), at).toSeconds() / 3600.0);
  }

  public String text() {
    StringBuilder text = new StringBuilder();
    text.append("%d records, %d signed%n".formatted(records, signed));
    if (!hours.isEmpty()) {
      text.append(
          String.format(
              Locale.ROOT,
              "from the end to the first signature: median %.1f h, %.1f to %.1f h%n",
              median(),
              hours.get(0),
              hours.get(hours.size() - 1)));
    }
    text.append(FORM.formatted("key step", "done", "left out", "corrected"));
    for (Row row : rows) {
      text.append(
          FORM.formatted(
              row.name(),
              share(row.done(), row.wanted()),
              row.leftOut() == 0 ? "-" : Integer.toString(row.leftOut()),
              share(row.corrected(), row.judged())));
    }
    return text.toString();
  }

  private double median() {
    int middle = hours.size() / 2;
    return hours.size() % 2 == 1
        ? hours.get(middle)
        : (hours.get(middle - 1) + hours.get(middle)) / 2;
  }

  /** "18 of 20 90%", or a dash. */
  static String share(long part, long all) {
    return all == 0
        ? "-"
        : String.format(Locale.ROOT, "%d of %d %4.0f%%", part, all, 100.0 * part / all);
  }

  /** For other programs, as RFC 4180 has it but for line ends, which are those of a terminal. */
  public String csv() throws IOException {
    StringWriter text = new StringWriter();
    CSVFormat format =
        CSVFormat.RFC4180
            .builder()
            .setRecordSeparator('\n')
            .setHeader("step", "wanted", "done", "left-out", "judged", "corrected")
            .get();
    try (CSVPrinter printer = new CSVPrinter(text, format)) {
      for (Row row : rows) {
        printer.printRecord(
            row.step(), row.wanted(), row.done(), row.leftOut(), row.judged(), row.corrected());
      }
    }
    return text.toString();
  }
}
