package tiptoe.report;

import java.io.IOException;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Comparator;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import tiptoe.clinical.Level;
import tiptoe.exam.Event;
import tiptoe.exam.Signature;
import tiptoe.exam.journal.StoredExam;
import tiptoe.wording.PlainText;
import tiptoe.wording.RecordWording;
import tiptoe.wording.StoredExamWording;

/** A record as a row of the list of all that are kept. */
public record RecordRow(StoredExam stored, RecordWording wording) {
  private static final String ROW = "%-22s %-16s %-16s %-14s %6s %-10s %7s %12s  %s";

  public static String head() {
    return ROW.formatted(
        "RECORD", "OPENED", "LABEL", "BY", "URGENT", "DUE", "AGE", "PROGRESS", "STATE");
  }

  /** The row of a record of which nothing can be told. */
  public static String closed(String id, String state) {
    return ROW.formatted(id, "-", "-", "-", "-", "-", "-", "-", state);
  }

  /** How many flags are to be acted on today or sooner. */
  public long pressing() {
    return wording.assessment().flags().stream()
        .filter(flag -> flag.level().compareTo(Level.URGENT) <= 0)
        .count();
  }

  /** The first day on which something of the plan begins, or has to be done. */
  public Optional<LocalDate> due() {
    return wording.assessment().plan().stream()
        .map(item -> item.from() == null ? item.to() : item.from())
        .filter(Objects::nonNull)
        .map(moment -> LocalDate.parse(moment.substring(0, 10)))
        .min(Comparator.naturalOrder());
  }

  /** The day on which it was opened, here. */
  public Optional<LocalDate> opened() {
    return wording.record().entries().stream()
        .findFirst()
        .map(entry -> LocalDate.ofInstant(entry.at(), ZoneId.systemDefault()));
  }

  /** Who examined, and who signed; empty where nobody said so. */
  public String who() {
    return Stream.concat(
            Stream.ofNullable(wording.record().opened()).map(Event.ExaminationOpened::author),
            wording.record().signatures().stream().map(Signature::name))
        .filter(Objects::nonNull)
        .map(PlainText::line)
        .distinct()
        .collect(Collectors.joining(", "));
  }

  /** The row, without a line end. */
  public String text() throws IOException {
    return ROW.formatted(
        stored.folder().name(),
        StoredExamWording.opened(wording.record()),
        cut(wording.record().label().map(PlainText::line).orElse("-"), 16),
        who().isEmpty() ? "-" : cut(who(), 14),
        pressing() == 0 ? "-" : Long.toString(pressing()),
        due().map(LocalDate::toString).orElse("-"),
        wording.record().baby().fact("age").map(age -> age + " h").orElse("-"),
        StoredExamWording.progress(wording.record()),
        StoredExamWording.state(stored));
  }

  private static String cut(String text, int most) {
    return text.length() <= most ? text : text.substring(0, most - 1) + "…";
  }
}
