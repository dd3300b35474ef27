package tiptoe.cli;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.function.Function;
import java.util.function.Supplier;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import tiptoe.exam.ExamRecord;
import tiptoe.exam.Signer;
import tiptoe.exam.journal.ExamFolder;
import tiptoe.exam.journal.Integrity;
import tiptoe.exam.journal.KeepAudio;
import tiptoe.exam.journal.OpenExam;
import tiptoe.exam.journal.RecordProblem;
import tiptoe.exam.journal.RecordStore;
import tiptoe.exam.journal.StoredExam;
import tiptoe.screen.Look;
import tiptoe.screen.Terminals;
import tiptoe.screen.review.PlainItems;
import tiptoe.screen.review.ReviewItems;
import tiptoe.screen.review.ReviewKeys;
import tiptoe.screen.review.ReviewScreen;
import tiptoe.screen.review.ReviewService;
import tiptoe.screen.review.ReviewService.Sealing;
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
    mixinStandardHelpOptions = true,
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
    Function<ExamRecord, RecordWording> assessor = options::wording;
    StoredExam stored = store.read(exam, secret);
    Integrity integrity = altered.pass(stored);
    if (plain || !Terminals.usable(System.getenv())) {
      return print(stored, integrity, assessor);
    }
    Signer signer = key.signer(options.place());
    Understanding understanding = Understanding.load(Home.of(stored.record().protocol()));
    TypedWords words =
        new TypedWords(understanding.network(), understanding.interpreter(), understanding.typed());
    if (integrity.isAltered()) {
      String banner = integrity.banner(stored.record());
      if (!stored.record().signatures().isEmpty()) {
        readOnly(store, exam, secret, stored, banner, words);
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
              assessor,
              sealing(open, signer, keepAudio.of(settings, open.examination().record())));
      who.of(settings).ifPresent(service::reviewer);
      show(service, open::sound, exam);
      Console.out().println(ended(service.record()));
    } catch (RecordProblem e) {
      readOnly(store, exam, secret, stored, e.getMessage(), words);
    }
    return 0;
  }

  private void readOnly(
      RecordStore store,
      ExamFolder exam,
      char[] secret,
      StoredExam stored,
      String why,
      TypedWords words)
      throws IOException {
    ReviewService service =
        ReviewService.readOnly(watched(store, exam, secret, stored), why, words, options::wording);
    show(service, stored::sound, exam);
    Console.err().println("read only: " + why);
  }

  private static Sealing sealing(OpenExam open, Signer key, KeepAudio keep) {
    return new Sealing() {
      @Override
      public List<String> problems() throws IOException {
        List<String> lines = new ArrayList<>(open.problems());
        lines.addAll(keep.afterSigning(open.audioHashes().size()));
        return lines;
      }

      @Override
      public List<String> alterations() throws IOException {
        return open.alterations();
      }

      @Override
      public void sign(String signer, String role) throws IOException {
        open.sign(signer, role, key, keep);
      }
    };
  }

  private void show(ReviewService service, RecordSound.Kept sound, ExamFolder exam)
      throws IOException {
    Look look = Look.of(System.getenv());
    try (RecordSound playback = new RecordSound(sound, Path.of(""), exam.name())) {
      ReviewScreen.run(
          Terminals.open(), ascii ? look.withAscii() : look, new ReviewKeys(service, playback));
    }
  }

  /** The record as it is now, read again whenever its journal has grown. */
  private static Supplier<ExamRecord> watched(
      RecordStore store, ExamFolder exam, char[] secret, StoredExam first) throws IOException {
    long[] seen = {Files.size(exam.journal())};
    ExamRecord[] record = {first.record()};
    return () -> {
      try {
        long size = Files.size(exam.journal());
        if (size != seen[0]) {
          seen[0] = size;
          record[0] = store.read(exam, secret).record();
        }
        return record[0];
      } catch (IOException e) {
        throw new UncheckedIOException(e.getMessage(), e);
      }
    };
  }

  private static String ended(ExamRecord record) {
    int open = record.openQuestions().size() + record.unsure().size();
    return record.signed()
        ? StoredExamWording.signatures(record)
        : "not signed; " + open + " to decide; every edit is kept";
  }

  private static int print(
      StoredExam stored, Integrity integrity, Function<ExamRecord, RecordWording> assessor) {
    RecordWording wording = assessor.apply(stored.record());
    if (integrity.isAltered()) {
      Console.out().println(integrity.banner(stored.record()));
    }
    List<String> lines = PlainItems.of(ReviewItems.of(wording), wording).lines().toList();
    lines.forEach(Console.out()::println);
    return 0;
  }
}
