package tiptoe.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import tiptoe.exam.journal.ExamFolder;
import tiptoe.exam.journal.Integrity;
import tiptoe.exam.journal.RecordStore;
import tiptoe.exam.journal.StoredExam;
import tiptoe.report.Format;
import tiptoe.report.Reports;
import tiptoe.wording.ProblemWording;

/** Writes records as files. */
@Command(
    name = "report",
    mixinStandardHelpOptions = true,
    description = {
      "Writes records for people and for other systems.",
      "RECORD is an id that the command records lists, or the folder of an examination."
    },
    footer = {"", "Example: tiptoe report 2026-03-01-0900-k3f9 --format pdf,fhir --to reports"})
final class ReportCommand implements Callable<Integer> {
  @Parameters(paramLabel = "RECORD", arity = "1..*", description = "Examinations.")
  private List<String> names;

  @Option(
      names = "--format",
      paramLabel = "FORMAT",
      split = ",",
      defaultValue = "html,pdf",
      description = "Any of ${COMPLETION-CANDIDATES} (default: ${DEFAULT-VALUE}).")
  private List<Format> formats;

  @Option(names = "--as", hidden = true, split = ",", paramLabel = "FORMAT")
  private List<Format> asFormats;

  @Option(
      names = "--to",
      paramLabel = "DIR",
      defaultValue = ".",
      description = "Where the files go (default: this folder).")
  private Path folder;

  @Option(names = "--force", description = "Replace files that exist.")
  private boolean force;

  @Mixin private RecordOptions options;
  @Mixin private AlteredOption altered;

  @Override
  public Integer call() throws IOException {
    // What is wrong with them is told before any work is begun.
    options.settings();
    formats = asFormats == null ? formats : asFormats;
    RecordStore store = options.store();
    Map<ExamFolder, char[]> exams = new LinkedHashMap<>();
    for (String name : names) {
      ExamFolder exam = store.find(name);
      exams.put(exam, options.passphrase(exam));
    }
    ExecutorService cores =
        Executors.newFixedThreadPool(Runtime.getRuntime().availableProcessors());
    try {
      Map<ExamFolder, Future<List<Path>>> work = new LinkedHashMap<>();
      exams.forEach(
          (exam, secret) -> work.put(exam, cores.submit(() -> write(store, exam, secret))));
      return finish(work);
    } finally {
      cores.shutdownNow();
    }
  }

  private List<Path> write(RecordStore store, ExamFolder exam, char[] secret) throws IOException {
    StoredExam stored = store.read(exam, secret);
    Integrity integrity = altered.pass(stored);
    return Reports.write(
        options.wording(stored.record()).with(integrity), formats, folder, exam.name(), force);
  }

  private int finish(Map<ExamFolder, Future<List<Path>>> work) {
    ProgressBar bar = new ProgressBar(work.size());
    List<String> failures = new ArrayList<>();
    List<Path> files = new ArrayList<>();
    for (Map.Entry<ExamFolder, Future<List<Path>>> one : work.entrySet()) {
      try {
        files.addAll(one.getValue().get());
      } catch (ExecutionException e) {
        failures.add(one.getKey().name() + ": " + ProblemWording.of(e.getCause()));
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
        failures.add(one.getKey().name() + ": interrupted");
      }
      bar.step();
    }
    bar.end();
    files.forEach(file -> Console.out().println(file));
    failures.forEach(Console.err()::println);
    return failures.isEmpty() ? 0 : Tiptoe.COULD_NOT;
  }
}
