package tiptoe.wording;

import java.io.IOException;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import tiptoe.exam.Entry;
import tiptoe.exam.ExamRecord;
import tiptoe.exam.Progress;
import tiptoe.exam.Signature;
import tiptoe.exam.journal.Integrity;
import tiptoe.exam.journal.StoredExam;

/**
 * What a record is, in a few lines of text: when, whose, how far, signed or not. What was said and
 * typed stays as it was; what the program wrote is in the chosen spelling.
 */
public final class StoredExamWording {
  private static final DateTimeFormatter WHEN =
      DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm", Locale.ROOT);

  private StoredExamWording() {}

  public static String of(StoredExam stored, Words words) throws IOException {
    ExamRecord record = stored.record();
    StringBuilder text = new StringBuilder();
    line(text, "examination", stored.folder().name());
    line(text, "label", record.label().orElse("-"));
    line(text, "opened", opened(record));
    line(text, "state", state(stored));
    line(text, "progress", progress(record));
    record.notes().forEach(note -> line(text, "note", words.spelled(note.text())));
    record
        .gaps()
        .forEach(
            gap ->
                line(
                    text,
                    "not heard",
                    String.format(
                        Locale.ROOT,
                        "%.1f s from %.1f s on: %s",
                        gap.seconds(),
                        gap.from(),
                        words.spelled(gap.reason()))));
    record.remarks().forEach(remark -> line(text, "remark", remark.text()));
    return text.append('\n').toString();
  }

  private static void line(StringBuilder text, String name, String value) {
    text.append(String.format("%-20s %s%n", name, PlainText.line(value)));
  }

  /** Day and time, here; a dash where nothing was written. */
  public static String opened(ExamRecord record) {
    return record.entries().stream()
        .findFirst()
        .map(Entry::at)
        .map(at -> WHEN.format(at.atZone(ZoneId.systemDefault())))
        .orElse("-");
  }

  /** Answered and all slots: {@code 41 of 118}. */
  public static String progress(ExamRecord record) {
    List<Progress> regions = record.progress();
    return regions.stream().mapToInt(Progress::answered).sum()
        + " of "
        + regions.stream().mapToInt(Progress::total).sum();
  }

  /** How far it has come, in a few words. */
  public static String state(StoredExam stored) throws IOException {
    Integrity integrity = stored.integrity();
    if (integrity.isAltered()) {
      return integrity.banner(stored.record());
    }
    if (stored.taken()) {
      return "open in another window";
    }
    return switch (stored.record().phase()) {
      case SIGNED -> signatures(stored.record());
      case ADDENDUM -> "addendum not signed yet";
      case ENDED -> "ended, not signed";
      default -> "not ended";
    };
  }

  /** Who signed last, or that nobody has. */
  public static String signatures(ExamRecord record) {
    return record.signatures().stream()
        .reduce((first, last) -> last)
        .map(RecordWording::by)
        .orElse("not signed");
  }

  /** What to hold against the printed report, of a record that is as it was written. */
  public static List<String> whole(StoredExam stored) throws IOException {
    ExamRecord record = stored.record();
    List<String> lines = new ArrayList<>();
    lines.add(record.entries().size() + " entries, each as it was written; " + signatures(record));
    for (Signature one : record.signatures()) {
      if (one.isKeyed()) {
        String key = RecordWording.key(one, stored.integrity());
        lines.add(PlainText.line("key of " + one.name() + ": " + key));
      }
      // A file cannot vouch for its own last line: the seal is compared with the paper's.
      lines.add(PlainText.line("seal of " + one.name() + ": " + one.seal()));
    }
    return lines;
  }

  /** Whose a seal is that was printed on a report. */
  public static String seal(Optional<Signature> signature) {
    return signature
        .map(one -> PlainText.line("the seal is that of " + one.name() + ", " + one.role()))
        .orElse("the seal is none of this record's");
  }
}
