package tiptoe.cli;

import java.io.IOException;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import tiptoe.measure.KeptRecords;
import tiptoe.measure.Quality;
import tiptoe.protocol.Protocol;

/** Tells how complete the records are, how soon they were signed and what was corrected. */
@Command(
    name = "statistics",
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
    KeptRecords kept = KeptRecords.in(data.store());
    kept.leftOut().forEach(Console.err()::println);
    Quality quality = new Quality(Protocol.standard(), kept.records());
    Console.out().print(csv ? quality.csv() : quality.text());
    return kept.problems().isEmpty() ? 0 : Tiptoe.COULD_NOT;
  }
}
