package tiptoe.cli;

import java.io.IOException;
import java.time.Clock;
import java.time.ZonedDateTime;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import tiptoe.exam.journal.ExamFolder;
import tiptoe.exam.journal.RecordStore;
import tiptoe.exam.journal.StoredExam;
import tiptoe.report.DueList;
import tiptoe.wording.ProblemWording;
import tiptoe.wording.RecordWording;

/** Lists what is due for all babies of this machine. */
@Command(
    name = "due",
    mixinStandardHelpOptions = true,
    description = {
      "Lists what is due for the babies of all records, overdue first.",
      "A record that cannot be read is named, and its baby is not in the list."
    },
    footer = {"", "Example: tiptoe due", "         tiptoe due --format ics > due.ics"})
final class DueCommand implements Callable<Integer> {
  /** How the list is written. */
  enum As {
    /** Lines for people. */
    TXT,
    /** Rows of RFC 4180. */
    CSV,
    /** A calendar of RFC 5545. */
    ICS
  }

  @Option(
      names = "--format",
      paramLabel = "FORMAT",
      defaultValue = "txt",
      description = "txt, csv, or ics for a calendar (default: txt).")
  private As format;

  @Mixin private RecordOptions options;

  @Override
  public Integer call() throws IOException {
    // What is wrong with them is told before any work is begun.
    options.settings();
    RecordStore store = options.store();
    Map<String, RecordWording> records = new LinkedHashMap<>();
    int left = 0;
    for (ExamFolder exam : store.list()) {
      try {
        records.put(exam.name(), read(store, exam));
      } catch (IOException e) {
        Console.err().println("not in the list: " + exam.name() + ": " + ProblemWording.of(e));
        left++;
      }
    }
    DueList due = DueList.of(records, ZonedDateTime.now(Clock.systemDefaultZone()));
    switch (format) {
      case TXT -> Console.out().print(due.text());
      case CSV -> Console.file(due.csv());
      case ICS -> Console.file(due.calendar());
    }
    return left == 0 ? 0 : Tiptoe.COULD_NOT;
  }

  private RecordWording read(RecordStore store, ExamFolder exam) throws IOException {
    Optional<char[]> secret = options.keptPassphrase();
    boolean encrypted = store.isEncrypted(exam);
    if (encrypted && secret.isEmpty()) {
      throw new IOException("it is encrypted: name a file with --passphrase-file");
    }
    StoredExam stored = store.read(exam, encrypted ? secret.get() : null);
    AlteredOption.require(stored);
    return options.wording(stored.record());
  }
}
