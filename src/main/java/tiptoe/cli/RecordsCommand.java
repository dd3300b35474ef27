package tiptoe.cli;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import tiptoe.exam.ExamRecord;
import tiptoe.exam.journal.ExamFolder;
import tiptoe.exam.journal.RecordStore;
import tiptoe.exam.journal.StoredExam;
import tiptoe.wording.PlainText;
import tiptoe.wording.ProblemWording;
import tiptoe.wording.StoredExamWording;

/** Lists records, or removes some. */
@Command(
    name = "records",
    mixinStandardHelpOptions = true,
    description = "Lists the examinations that are kept, the newest first.",
    footer = {
      "",
      "Example: tiptoe records",
      "         tiptoe records --remove 2026-03-01-0900-k3f9"
    })
final class RecordsCommand implements Callable<Integer> {
  private static final String ROW = "%-22s %-16s %-20s %7s %12s  %s%n";

  @Option(
      names = "--remove",
      paramLabel = "RECORD",
      arity = "1..*",
      description = "Remove these, journal and sound, after asking for each.")
  private List<String> removed = new ArrayList<>();

  @Mixin private DataOption data;

  @Override
  public Integer call() throws IOException {
    RecordStore store = data.store();
    return removed.isEmpty() ? list(store) : remove(store);
  }

  private static int list(RecordStore store) throws IOException {
    List<ExamFolder> exams = store.list();
    if (exams.isEmpty()) {
      Console.err().println("no examination is kept here");
      return 0;
    }
    Console.out().printf(ROW, "RECORD", "OPENED", "LABEL", "AGE", "PROGRESS", "STATE");
    int unreadable = 0;
    for (ExamFolder exam : exams) {
      try {
        print(store, exam);
      } catch (IOException e) {
        Console.out().printf(ROW, exam.name(), "-", "-", "-", "-", "cannot be read");
        Console.err().println(exam.name() + ": " + ProblemWording.of(e));
        unreadable++;
      }
    }
    return unreadable == 0 ? 0 : Tiptoe.COULD_NOT;
  }

  private static void print(RecordStore store, ExamFolder exam) throws IOException {
    if (store.isEncrypted(exam)) {
      Console.out().printf(ROW, exam.name(), "-", "-", "-", "-", "encrypted");
      return;
    }
    StoredExam stored = store.read(exam, null);
    ExamRecord record = stored.record();
    String state = StoredExamWording.state(stored);
    Console.out()
        .printf(
            ROW,
            exam.name(),
            StoredExamWording.opened(record),
            record.label().map(PlainText::line).orElse("-"),
            record.baby().fact("age").map(age -> age + " h").orElse("-"),
            StoredExamWording.progress(record),
            state);
  }

  private int remove(RecordStore store) throws IOException {
    List<ExamFolder> exams = new ArrayList<>();
    for (String name : removed) {
      exams.add(store.find(name));
    }
    BufferedReader in =
        new BufferedReader(new InputStreamReader(System.in, StandardCharsets.UTF_8));
    int kept = 0;
    for (ExamFolder exam : exams) {
      Console.err().print("remove " + exam.name() + ", its journal and its sound? (yes/no) ");
      Console.err().flush();
      String answer = in.readLine();
      if (answer != null && answer.strip().toLowerCase(Locale.ROOT).equals("yes")) {
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
