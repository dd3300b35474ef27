package tiptoe.cli;

import java.io.IOException;
import java.time.Clock;
import java.time.ZonedDateTime;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import tiptoe.clinical.PlanItem;
import tiptoe.exam.ExamRecord;
import tiptoe.exam.Signer;
import tiptoe.exam.SignerName;
import tiptoe.exam.journal.ExamFolder;
import tiptoe.exam.journal.OpenExam;
import tiptoe.exam.journal.RecordStore;
import tiptoe.exam.journal.StoredExam;
import tiptoe.report.DueList;
import tiptoe.screen.review.Reviewer;
import tiptoe.settings.Settings;
import tiptoe.wording.ProblemWording;
import tiptoe.wording.RecordWording;

/** Lists what is due for all babies of this machine. */
@Command(
    name = "due",
    description = {
      "Lists what is due for the babies of all records, overdue first.",
      "A record that cannot be read is named, and its baby is not in the list.",
      "What was done is ticked off by --done;",
      "in a signed record that is an addendum with a signature of its own."
    },
    footer = {
      "",
      "Example: tiptoe due",
      "         tiptoe due --format ics > due.ics",
      "         tiptoe due --done last hip-ultrasound-nipe --note \"normal\" \\",
      "             --as \"Sam Fell\" --role \"ward clerk\""
    })
final class DueCommand implements Callable<Integer> {
  @Option(
      names = "--format",
      paramLabel = "FORMAT",
      defaultValue = "txt",
      description = "txt, csv, or ics for a calendar (default: txt).")
  private DueList.Form format;

  @Option(names = "--all", description = "Also what was done.")
  private boolean all;

  @Option(
      names = "--done",
      arity = "2",
      paramLabel = "RECORD ITEM",
      hideParamSyntax = true,
      description = "Tick off what was done; the list has both names in parentheses.")
  private String[] done;

  @Option(
      names = "--not-done",
      arity = "2",
      paramLabel = "RECORD ITEM",
      hideParamSyntax = true,
      description = "Say that it was not done after all.")
  private String[] notDone;

  @Option(
      names = "--note",
      paramLabel = "TEXT",
      description = "With either: what came of it, in your own words.")
  private String note;

  @Mixin private RecordOptions options;
  @Mixin private KeyOption key;
  @Mixin private WhoOption who;

  @Override
  public Integer call() throws IOException {
    // What is wrong with them is told before any work is begun.
    Settings settings = options.settings();
    if (done != null || notDone != null) {
      return tick(settings, done == null ? notDone : done);
    }
    RecordStore store = options.store();
    Map<String, RecordWording> records = new LinkedHashMap<>();
    int left = 0;
    for (ExamFolder exam : store.list()) {
      try {
        records.put(exam.name(), read(store, exam));
      } catch (IOException e) {
        Console.err().println("not in the list: " + exam.name() + ": " + ProblemWording.of(e));
        left++;
      }
    }
    DueList due = DueList.of(records, ZonedDateTime.now(Clock.systemDefaultZone()), all);
    String text = due.in(format);
    if (format == DueList.Form.TXT) {
      Console.out().print(text);
    } else {
      Console.file(text);
    }
    return left == 0 ? 0 : Tiptoe.COULD_NOT;
  }

  private RecordWording read(RecordStore store, ExamFolder exam) throws IOException {
    Optional<char[]> secret = options.keptPassphrase();
    boolean encrypted = store.isEncrypted(exam);
    if (encrypted && secret.isEmpty()) {
      throw new IOException("it is encrypted: name a file with --passphrase-file");
    }
    StoredExam stored = store.read(exam, encrypted ? secret.get() : null);
    stored.requireAsWritten();
    return options.wording(stored.record());
  }

  private int tick(Settings settings, String[] named) throws IOException {
    WrongUse.unless(
        (done == null || notDone == null) && named.length == 2,
        "expected one item to tick off, found more");
    Reviewer by =
        who.of(settings)
            .filter(one -> SignerName.isVisible(one.name()))
            .orElseThrow(
                () ->
                    new WrongUse(
                        "expected who says so, by --as NAME or in the settings, found nobody"));
    Signer signer = key.signer(options.place());
    options.read(named[0]);
    try (OpenExam open = options.open(named[0])) {
      ExamRecord record = open.examination().record();
      PlanItem item = PlanItem.named(options.wording(record).assessment().plan(), named[1]);
      if (item.isDone() == (done != null)) {
        throw new IOException(
            "%s of %s is %s already"
                .formatted(item.what(), open.folder().name(), done == null ? "not done" : "done"));
      }
      WrongUse.unless(
          !record.signed() || SignerName.isVisible(by.role()),
          "expected a role for the signature of a signed record, by --role ROLE");
      String says = (done == null ? "not done: " : "done: ") + item.what();
      open.tick(item.id(), item.what(), done != null, note, by.name(), by.role(), signer);
      Console.out().println(open.folder().name() + ": " + says);
    }
    return 0;
  }
}
