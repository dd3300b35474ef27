package tiptoe.cli;

import java.io.Console;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import picocli.CommandLine.Option;
import tiptoe.exam.journal.ExamFolder;
import tiptoe.exam.journal.RecordStore;

/** Where the passphrase of an encrypted record comes from: a file, else the keyboard. */
final class PassphraseOption {
  @Option(
      names = "--passphrase-file",
      paramLabel = "FILE",
      description = "Read the passphrase from the first line of a file instead of asking.")
  private Path file;

  /** The passphrase for a record; null when it is not encrypted. */
  char[] forExam(RecordStore store, ExamFolder exam) throws IOException {
    return store.isEncrypted(exam) ? read("passphrase of " + exam.name() + ": ") : null;
  }

  /** A passphrase for a new record, asked for twice where it is typed. */
  char[] forNew() throws IOException {
    char[] first = read("new passphrase: ");
    if (first.length == 0) {
      throw new IOException("expected a passphrase, found none");
    }
    if (file == null && !java.util.Arrays.equals(first, read("again: "))) {
      throw new IOException("the two passphrases differ");
    }
    return first;
  }

  private char[] read(String prompt) throws IOException {
    if (file != null) {
      return Files.readAllLines(file).stream().findFirst().orElse("").toCharArray();
    }
    Console console = System.console();
    if (console == null) {
      throw new IOException("expected a passphrase: name a file with --passphrase-file");
    }
    char[] typed = console.readPassword("%s", prompt);
    return typed == null ? new char[0] : typed;
  }
}
