package tiptoe.cli;

import java.io.IOException;
import java.time.ZoneId;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import tiptoe.clinical.Assessor;
import tiptoe.exam.ExamRecord;
import tiptoe.exam.journal.ExamFolder;
import tiptoe.exam.journal.RecordStore;
import tiptoe.exam.journal.StoredExam;
import tiptoe.screen.review.Items;
import tiptoe.screen.review.PlainItems;

/** Goes through a record: what is to decide, what was flagged, then the rest head to toe. */
@Command(
    name = "review",
    mixinStandardHelpOptions = true,
    description = "Goes through a record item by item: where each comes from, what is open.",
    footer = {"", "Example: tiptoe review 2026-03-01-0900-k3f9 --plain"})
final class ReviewCommand implements Callable<Integer> {
  @Parameters(paramLabel = "RECORD", description = "Id or folder of an examination.")
  private String name;

  @Option(names = "--plain", description = "Lines of text instead of the full screen.")
  private boolean plain;

  @Mixin private DataOption data;
  @Mixin private PassphraseOption passphrase;
  @Mixin private SettingsOption option;

  @Override
  public Integer call() throws IOException {
    RecordStore store = data.store();
    ExamFolder exam = store.find(name);
    StoredExam stored = store.read(exam, passphrase.forExam(store, exam));
    ExamRecord record = stored.record();
    stored.breaks().forEach(broken -> Console.err().println("broken record: " + broken));
    var assessment = Assessor.standard().assess(record, option.settings(), ZoneId.systemDefault());
    Console.out().print(PlainItems.of(Items.of(record, assessment), record.protocol()));
    return 0;
  }
}
