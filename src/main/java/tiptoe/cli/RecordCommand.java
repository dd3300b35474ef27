package tiptoe.cli;

import java.io.IOException;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import tiptoe.exam.ExamRecord;
import tiptoe.exam.Signature;
import tiptoe.exam.journal.Integrity;
import tiptoe.exam.journal.StoredExam;
import tiptoe.report.RecordJson;
import tiptoe.wording.ChecklistWording;
import tiptoe.wording.RecordWording;
import tiptoe.wording.StoredExamWording;

/** Shows or checks one record. */
@Command(
    name = "record",
    description = {
      "Shows a record, or checks that it is as it was written.",
      "RECORD is an id that the command records lists, or the folder of an examination."
    },
    footer = {
      "",
      "Example: tiptoe record 2026-03-01-0900-k3f9",
      "         tiptoe record --verify 2026-03-01-0900-k3f9",
      "         tiptoe record --verify --seal \"$(cat seal.txt)\" 2026-03-01-0900-k3f9"
    })
final class RecordCommand implements Callable<Integer> {
  @Parameters(paramLabel = "RECORD", description = "Id or folder of an examination.")
  private String name;

  @ArgGroup(exclusive = true)
  private Form form = new Form();

  @Mixin private RecordOptions options;
  @Mixin private AlteredOption altered;

  private static final class Form {
    @Option(names = "--json", description = "Print one JSON object, nothing else.")
    private boolean json;

    @ArgGroup(exclusive = false)
    private Checks checks;
  }

  private static final class Checks {
    @Option(
        names = "--verify",
        required = true,
        description = "Check the chain of events, signatures and sound; name what is wrong.")
    private boolean verify;

    @Option(
        names = "--seal",
        paramLabel = "HEX",
        description = "Tell whether a seal printed on a report is one of this record.")
    private String seal;
  }

  @Override
  public Integer call() throws IOException {
    String seal = null;
    if (form.checks != null && form.checks.seal != null) {
      // As it was read off paper: case, blanks and line ends do not matter.
      seal = form.checks.seal.replaceAll("\\s", "").toLowerCase(Locale.ROOT);
      if (!seal.matches("[0-9a-f]{64}")) {
        Console.err().println("expected a seal of 64 hex digits, found " + form.checks.seal);
        return Tiptoe.WRONG_USE;
      }
    }
    StoredExam stored = options.readAny(name);
    if (form.checks != null) {
      boolean asWritten = verify(stored);
      boolean sealed = seal == null || held(seal, stored.record());
      return asWritten && sealed ? 0 : Tiptoe.COULD_NOT;
    }
    show(stored, altered.pass(stored));
    return 0;
  }

  private void show(StoredExam stored, Integrity integrity) throws IOException {
    ExamRecord record = stored.record();
    RecordWording wording = options.wording(record);
    if (form.json) {
      Console.json(RecordJson.of(stored, integrity, wording.assessment()));
    } else {
      if (integrity.isAltered()) {
        Console.out().println(integrity.banner(record));
      }
      Console.out().print(StoredExamWording.of(stored, wording.words()));
      Console.out().print(ChecklistWording.of(wording));
    }
  }

  private static boolean verify(StoredExam stored) throws IOException {
    List<String> problems = stored.problems();
    (problems.isEmpty() ? StoredExamWording.whole(stored) : problems)
        .forEach(Console.out()::println);
    return problems.isEmpty();
  }

  private static boolean held(String seal, ExamRecord record) {
    Optional<Signature> signature =
        record.signatures().stream().filter(one -> one.seal().equals(seal)).findFirst();
    Console.out().println(StoredExamWording.seal(signature));
    return signature.isPresent();
  }
}
