package tiptoe.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import java.util.function.Supplier;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import tiptoe.exam.ExamRecord;
import tiptoe.exam.Signer;
import tiptoe.exam.journal.ExamFolder;
import tiptoe.exam.journal.Integrity;
import tiptoe.exam.journal.OpenExam;
import tiptoe.exam.journal.RecordProblem;
import tiptoe.exam.journal.RecordStore;
import tiptoe.exam.journal.StoredExam;
import tiptoe.screen.Look;
import tiptoe.screen.Terminals;
import tiptoe.screen.review.ExamSealing;
import tiptoe.screen.review.ReviewItems;
import tiptoe.screen.review.ReviewKeys;
import tiptoe.screen.review.ReviewScreen;
import tiptoe.screen.review.ReviewService;
import tiptoe.screen.review.TypedWords;
import tiptoe.session.Home;
import tiptoe.session.RecordSound;
import tiptoe.session.Understanding;
import tiptoe.settings.Settings;
import tiptoe.wording.RecordWording;
import tiptoe.wording.StoredExamWording;

/** Goes through a record: what is to decide, what was flagged, then the rest head to toe. */
@Command(
    name = "review",
    description = {
      "Goes through a record by keys, to listen, correct and sign.",
      "A record that another process writes to, or that is broken, can only be read."
    },
    footer = {
      "",
      "Example: tiptoe review last --as \"Rowan Reed\" --role registrar",
      "         tiptoe review 2026-03-01-0900-k3f9 --plain"
    })
final class ReviewCommand implements Callable<Integer> {
  @Parameters(paramLabel = "RECORD", description = "Id or folder of an examination.")
  private String name;

  @Option(names = "--plain", description = "Print the items as lines of text, edit nothing.")
  private boolean plain;

  @Option(names = "--ascii", description = "A screen of plain letters and signs only.")
  private boolean ascii;

  @Mixin private RecordOptions options;
  @Mixin private KeepAudioOption keepAudio;
  @Mixin private KeyOption key;
  @Mixin private AlteredOption altered;
  @Mixin private WhoOption who;

  @Override
  public Integer call() throws IOException {
    Settings settings = options.settings();
    RecordStore store = options.store();
    ExamFolder exam = store.find(name);
    char[] secret = options.passphrase(exam);
    StoredExam stored = store.read(exam, secret);
    Integrity integrity = altered.pass(stored);
    if (plain || !Terminals.usable(System.getenv())) {
      return print(stored, integrity);
    }
    Signer signer = key.signer(options.place());
    Understanding understanding = Understanding.load(Home.of(stored.record().protocol()));
    TypedWords words =
        new TypedWords(understanding.network(), understanding.interpreter(), understanding.typed());
    if (integrity.isAltered()) {
      String banner = integrity.banner(stored.record());
      if (!stored.record().signatures().isEmpty()) {
        readOnly(store.following(stored, secret), stored, banner, words);
        return 0;
      }
      // Lost sound is no reason not to correct what is left; whoever signs is told again.
      Console.err().println(banner);
    }
    try (OpenExam open = store.open(exam, secret)) {
      ReviewService service =
          ReviewService.editing(
              open.examination(),
              words,
              options::wording,
              new ExamSealing(open, signer, keepAudio.of(settings, open.examination().record())));
      who.of(settings).ifPresent(service::reviewer);
      show(service, open::sound, exam);
      Console.out().println(ended(service.record()));
    } catch (RecordProblem e) {
      readOnly(store.following(stored, secret), stored, e.getMessage(), words);
    }
    return 0;
  }

  private void readOnly(
      Supplier<ExamRecord> source, StoredExam stored, String why, TypedWords words)
      throws IOException {
    show(
        ReviewService.readOnly(source, why, words, options::wording),
        stored::sound,
        stored.folder());
    Console.err().println("read only: " + why);
  }

  private void show(ReviewService service, RecordSound.Kept sound, ExamFolder exam)
      throws IOException {

    try (RecordSound playback = new RecordSound(sound, Path.of(""), exam.name())) {
      ReviewScreen.run(
          Terminals.open(), Look.of(System.getenv(), ascii), new ReviewKeys(service, playback));
    }
  }

  private static String ended(ExamRecord record) {
    int open = record.openQuestions().size() + record.unsure().size();
    return record.signed()
        ? StoredExamWording.signatures(record)
        : "not signed; " + open + " to decide; every edit is kept";
  }

  private int print(StoredExam stored, Integrity integrity) {
    RecordWording wording = options.wording(stored.record());
    if (integrity.isAltered()) {
      Console.out().println(integrity.banner(stored.record()));
    }
    ReviewItems.text(wording).lines().forEach(Console.out()::println);
    return 0;
  }
}
