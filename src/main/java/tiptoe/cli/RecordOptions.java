package tiptoe.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.time.ZoneId;
import java.util.Optional;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import tiptoe.clinical.Assessor;
import tiptoe.exam.ExamRecord;
import tiptoe.exam.journal.ExamFolder;
import tiptoe.exam.journal.OpenExam;
import tiptoe.exam.journal.RecordStore;
import tiptoe.exam.journal.StoredExam;
import tiptoe.protocol.Protocol;
import tiptoe.settings.Settings;
import tiptoe.wording.RecordWording;

/** What every command on single records takes: where they are, their passphrase, the settings. */
final class RecordOptions extends DataOption {
  private static final String PASSPHRASE = "--passphrase-file";

  @Mixin private SettingsOption option;

  @Option(
      names = PASSPHRASE,
      paramLabel = "FILE",
      description = "Read the passphrase from the first line of a file instead of asking.")
  private Path file;

  /** The records, where new ones go by the protocol of the ward. */
  RecordStore storeHere() throws IOException {
    return store(protocol());
  }

  Protocol protocol() throws IOException {
    return option.protocol();
  }

  Settings settings() {
    return option.settings();
  }

  /** A record that is as it was written; any other is refused. */
  StoredExam read(String name) throws IOException {
    StoredExam stored = readAny(name);
    stored.requireAsWritten();
    return stored;
  }

  /** A record whatever became of it; it has still to pass {@link AlteredOption}. */
  StoredExam readAny(String name) throws IOException {
    RecordStore store = store();
    ExamFolder exam = store.find(name);
    return store.read(exam, passphrase(exam));
  }

  OpenExam open(String name) throws IOException {
    RecordStore store = store();
    ExamFolder exam = store.find(name);
    return store.open(exam, passphrase(exam));
  }

  /** A record and what follows from it by the settings, in the chosen words. */
  RecordWording wording(ExamRecord record) {
    Settings settings = settings();
    return new RecordWording(
        record,
        Assessor.of(record.protocol()).assess(record, settings, ZoneId.systemDefault()),
        settings);
  }

  /** The passphrase for a record; null when it is not encrypted. */
  char[] passphrase(ExamFolder exam) throws IOException {
    return store().isEncrypted(exam) ? passphrase("passphrase of " + exam.name() + ": ") : null;
  }

  /** A passphrase for a new record, asked for twice where it is typed. */
  char[] newPassphrase() throws IOException {
    return Console.newSecret(file, PASSPHRASE, "new passphrase: ", 1);
  }

  /** The passphrase that stands in a file; empty where no file was named. */
  Optional<char[]> keptPassphrase() throws IOException {
    return file == null ? Optional.empty() : Optional.of(passphrase(""));
  }

  /** A passphrase from the first line of the file that was named, or asked for. */
  char[] passphrase(String prompt) throws IOException {
    return Console.secret(file, PASSPHRASE, prompt);
  }
}
