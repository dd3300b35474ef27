package tiptoe.cli;

import java.io.IOException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import tiptoe.exam.journal.ExamFolder;
import tiptoe.exam.journal.RecordStore;
import tiptoe.exam.journal.StoredExam;
import tiptoe.report.RecordRow;
import tiptoe.wording.ProblemWording;

/** Lists records, or removes some. */
@Command(
    name = "records",
    description = {
      "Lists the examinations that are kept, the newest first.",
      "URGENT counts what is to be acted on today or sooner; DUE is the first day of the plan.",
      "What is encrypted or cannot be read is always listed."
    },
    footer = {
      "",
      "Example: tiptoe records",
      "         tiptoe records --unsigned --urgent",
      "         tiptoe records --by Reed --since 2026-03-01",
      "         tiptoe records --remove 2026-03-01-0900-k3f9"
    })
final class RecordsCommand implements Callable<Integer> {
  @Option(
      names = "--remove",
      paramLabel = "RECORD",
      arity = "1..*",
      description = "Remove these, journal and sound, after asking for each.")
  private List<String> removed = new ArrayList<>();

  @Option(names = "--unsigned", description = "Only what nobody has signed.")
  private boolean unsigned;

  @Option(names = "--urgent", description = "Only where something is to be acted on at once.")
  private boolean urgent;

  @Option(
      names = "--due",
      arity = "0..1",
      paramLabel = "DATE",
      fallbackValue = "",
      description = "Only with something in the plan by this day; else by today.")
  private LocalDate due;

  @Option(
      names = "--since",
      paramLabel = "DATE",
      description = "Only what was opened on this day or later.")
  private LocalDate since;

  @Option(
      names = "--by",
      paramLabel = "NAME",
      description = "Only of this person, or a part of it.")
  private String by;

  @Mixin private RecordOptions options;

  @Override
  public Integer call() throws IOException {
    RecordStore store = options.store();
    return removed.isEmpty() ? list(store) : remove(store);
  }

  private int list(RecordStore store) throws IOException {
    List<ExamFolder> exams = store.list();
    if (exams.isEmpty()) {
      Console.err().println("no examination is kept here");
      return 0;
    }
    Console.out().println(RecordRow.head());
    int unreadable = 0;
    for (ExamFolder exam : exams) {
      try {
        print(store, exam);
      } catch (IOException e) {
        Console.out().println(RecordRow.closed(exam.name(), "cannot be read"));
        Console.err().println(exam.name() + ": " + ProblemWording.of(e));
        unreadable++;
      }
    }
    return unreadable == 0 ? 0 : Tiptoe.COULD_NOT;
  }

  private boolean isWanted(RecordRow row) {
    return (!unsigned || !row.wording().record().signed())
        && (!urgent || row.pressing() > 0)
        && (due == null || row.due().filter(first -> !first.isAfter(due)).isPresent())
        && (since == null || row.opened().filter(on -> !on.isBefore(since)).isPresent())
        && (by == null
            || row.who().toLowerCase(Locale.ROOT).contains(by.toLowerCase(Locale.ROOT).strip()));
  }

  private void print(RecordStore store, ExamFolder exam) throws IOException {
    if (store.isEncrypted(exam)) {
      Console.out().println(RecordRow.closed(exam.name(), "encrypted"));
      return;
    }
    StoredExam stored = store.read(exam, null);
    RecordRow row = new RecordRow(stored, options.wording(stored.record()));
    if (isWanted(row)) {
      Console.out().println(row.text());
    }
  }

  private int remove(RecordStore store) throws IOException {
    List<ExamFolder> exams = new ArrayList<>();
    for (String name : removed) {
      exams.add(store.find(name));
    }
    int kept = 0;
    for (ExamFolder exam : exams) {
      if (Console.agreed("remove " + exam.name() + ", its journal and its sound?")) {
        store.remove(exam);
        Console.out().println("removed " + exam.name());
      } else {
        Console.out().println("kept " + exam.name());
        kept++;
      }
    }
    return kept == 0 ? 0 : Tiptoe.COULD_NOT;
  }
}
