package tiptoe.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
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
import tiptoe.screen.ProgressBar;
import tiptoe.wording.ProblemWording;
import tiptoe.wording.RecordWording;

/** Writes records as files. */
@Command(
    name = "report",
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
    ProgressBar bar = new ProgressBar(exams.size(), Console.err());
    List<Written> all =
        exams.entrySet().parallelStream()
            .map(one -> write(store, one.getKey(), one.getValue(), bar))
            .toList();
    bar.end();
    all.forEach(one -> one.files().forEach(file -> Console.out().println(file)));
    List<String> failures =
        all.stream().map(Written::failure).filter(why -> !why.isEmpty()).toList();
    failures.forEach(Console.err()::println);
    return failures.isEmpty() ? 0 : Tiptoe.COULD_NOT;
  }

  /** What came of one record; why it failed is empty where it did not. */
  private record Written(List<Path> files, String failure) {}

  private Written write(RecordStore store, ExamFolder exam, char[] secret, ProgressBar bar) {
    try {
      StoredExam stored = store.read(exam, secret);
      Integrity integrity = altered.pass(stored);
      RecordWording wording = options.wording(stored.record()).with(integrity);
      return new Written(Reports.write(wording, formats, folder, exam.name(), force), "");
    } catch (IOException | RuntimeException e) {
      return new Written(List.of(), exam.name() + ": " + ProblemWording.of(e));
    } finally {
      bar.step();
    }
  }
}
