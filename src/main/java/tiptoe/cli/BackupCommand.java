package tiptoe.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;
import tiptoe.exam.journal.StoreArchive;

/** Writes all records into one encrypted file. */
@Command(
    name = "backup",
    description = {
      "Writes all records, sound and keys into one encrypted file.",
      "The file is read back before it gets its name. Without the passphrase nobody can read it."
    },
    footer = {"", "Example: tiptoe backup records-2026-03-01.tiptoe"})
final class BackupCommand implements Callable<Integer> {
  @Parameters(paramLabel = "FILE", description = "A new file.")
  private Path file;

  @Mixin private RecordOptions options;

  @Override
  public Integer call() throws IOException {
    StoreArchive.Outcome outcome =
        new StoreArchive(options.place())
            .write(file.toAbsolutePath(), options.store().list(), options.newPassphrase());
    Console.out()
        .println(
            "%d records in %s, %,d bytes, read back and whole"
                .formatted(outcome.done().size(), file, Files.size(file)));
    outcome.left().forEach(one -> Console.err().println("left out: " + one));
    return outcome.left().isEmpty() ? 0 : Tiptoe.COULD_NOT;
  }
}
