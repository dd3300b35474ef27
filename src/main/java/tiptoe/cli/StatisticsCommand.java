package tiptoe.cli;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import tiptoe.exam.ExamRecord;
import tiptoe.exam.journal.ExamFolder;
import tiptoe.exam.journal.RecordStore;
import tiptoe.measure.Quality;
import tiptoe.protocol.Protocol;
import tiptoe.wording.ProblemWording;

/** Tells how complete the records are, how soon they were signed and what was corrected. */
@Command(
    name = "statistics",
    mixinStandardHelpOptions = true,
    description = {
      "Tells how complete and how soon signed records are, by key step.",
      "Corrected counts what was heard and recorded, and put right before a signature."
    },
    footer = {"", "Example: tiptoe statistics", "         tiptoe statistics --csv > quality.csv"})
final class StatisticsCommand implements Callable<Integer> {
  @Option(names = "--csv", description = "Print a table for other programs, nothing else.")
  private boolean csv;

  @Mixin private DataOption data;

  @Override
  public Integer call() throws IOException {
    RecordStore store = data.store();
    List<ExamRecord> records = new ArrayList<>();
    int encrypted = 0;
    boolean all = true;
    for (ExamFolder exam : store.list()) {
      if (store.isEncrypted(exam)) {
        encrypted++;
        continue;
      }
      try {
        var stored = store.read(exam, null);
        AlteredOption.require(stored);
        records.add(stored.record());
      } catch (IOException e) {
        Console.err().println(exam.name() + ": " + ProblemWording.of(e));
        all = false;
      }
    }
    if (encrypted > 0) {
      Console.err().println("left out, since they are encrypted: " + encrypted);
    }
    Quality quality = new Quality(Protocol.standard(), records);
    Console.out().print(csv ? quality.csv() : quality.text());
    return all ? 0 : Tiptoe.COULD_NOT;
  }
}
