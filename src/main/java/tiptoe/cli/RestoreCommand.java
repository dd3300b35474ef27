package tiptoe.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;
import tiptoe.exam.journal.StoreArchive;

/** Brings records back from an encrypted file. */
@Command(
    name = "restore",
    description = {
      "Brings back the records of a file that the command backup wrote.",
      "All of the file is checked first. A record that is here stays as it is."
    },
    footer = {"", "Example: tiptoe restore records-2026-03-01.tiptoe"})
final class RestoreCommand implements Callable<Integer> {
  @Parameters(paramLabel = "FILE", description = "What backup wrote.")
  private Path file;

  @Mixin private RecordOptions options;

  @Override
  public Integer call() throws IOException {
    StoreArchive.Outcome outcome =
        new StoreArchive(options.place())
            .restore(file, options.passphrase("passphrase of " + file + ": "));
    outcome.done().forEach(one -> Console.out().println("restored " + one));
    outcome.left().forEach(one -> Console.err().println("not restored, " + one));
    return outcome.left().stream().allMatch(one -> one.endsWith("already")) ? 0 : Tiptoe.COULD_NOT;
  }
}
