package tiptoe.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.ZonedDateTime;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import tiptoe.audio.AudioFile;
import tiptoe.audio.Microphone;
import tiptoe.audio.PacedSource;
import tiptoe.audio.Pcm;
import tiptoe.audio.Recorder;
import tiptoe.audio.SampleSource;
import tiptoe.audio.SegmentStore;
import tiptoe.exam.Phase;
import tiptoe.exam.journal.ExamFolder;
import tiptoe.exam.journal.OpenExam;
import tiptoe.exam.journal.RecordStore;
import tiptoe.protocol.Caution;
import tiptoe.settings.Settings;

/** Listens to an examination and keeps its record. */
@Command(
    name = "exam",
    mixinStandardHelpOptions = true,
    description = {
      "Listens to an examination, from the microphone or from recordings, and keeps its record.",
      "It ends when you say \"end of examination\", or when the recordings are over."
    },
    footer = {
      "",
      "Example: tiptoe exam --label \"bed 4\"",
      "         tiptoe exam --from demo-audio",
      "         tiptoe exam --continue 2026-03-01-0900-k3f9"
    })
final class ExamCommand implements Callable<Integer> {
  @Option(
      names = "--from",
      paramLabel = "PATH",
      description = "A recording, or a folder of them, instead of the microphone; in real time.")
  private Path from;

  @Option(names = "--fast", description = "With --from: as fast as possible.")
  private boolean fast;

  @Option(names = "--device", paramLabel = "NAME", description = "The microphone, or a part of it.")
  private String device;

  @Option(names = "--label", paramLabel = "TEXT", description = "Your own words for the record.")
  private String label;

  @Option(names = "--author", paramLabel = "NAME", description = "Who examines.")
  private String author;

  @Option(
      names = "--continue",
      paramLabel = "RECORD",
      description = "Go on with an examination that was broken off.")
  private String broken;

  @Option(names = "--encrypt", description = "Encrypt the record and its sound by a passphrase.")
  private boolean encrypt;

  @Option(names = "--model", paramLabel = "DIR", description = "Another speech model folder.")
  private Path model;

  @Mixin private DataOption data;
  @Mixin private PassphraseOption passphrase;
  @Mixin private KeepAudioOption keepAudio;
  @Mixin private SettingsOption option;

  @Override
  public Integer call() throws IOException {
    Console.out().println(Caution.TEXT);
    Home home = Home.locate();
    List<Path> recordings = from == null ? List.of() : recordings(from);
    Understanding understanding = Understanding.load(home);
    Settings settings = option.settings();
    RecordStore store = data.store();
    try (OpenExam open = open(store);
        Engine engine = Engine.open(home, understanding, model, Console.err())) {
      Session session =
          new Session(
              understanding.interpreter(),
              open.examination(),
              settings,
              ZonedDateTime.now(Clock.systemDefaultZone()));
      Console.out().println("record " + open.folder().name());
      boolean keepsSound = keepAudio.of(settings).writes();
      if (!keepsSound) {
        Console.err().println("sound is not kept with this record");
      }
      listen(engine, session, keepsSound ? open.openSound() : null, recordings);
      finish(session, open.folder());
    }
    return 0;
  }

  private OpenExam open(RecordStore store) throws IOException {
    if (broken == null) {
      return store.create(
          label, Tiptoe.Version.number(), author, encrypt ? passphrase.forNew() : null);
    }
    ExamFolder exam = store.find(broken);
    OpenExam open = store.open(exam, passphrase.forExam(store, exam));
    open.examination().record().notes().forEach(note -> Console.err().println(note.text()));
    open.examination().goOn(Tiptoe.Version.number(), author);
    return open;
  }

  private static List<Path> recordings(Path path) throws IOException {
    if (!Files.isDirectory(path)) {
      return List.of(path);
    }
    try (Stream<Path> files = Files.list(path)) {
      List<Path> found = files.filter(file -> file.toString().endsWith(".wav")).sorted().toList();
      if (found.isEmpty()) {
        throw new IOException("expected recordings, found none in " + path);
      }
      return found;
    }
  }

  /**
   * @param store where the sound is kept; null where it is not
   */
  private void listen(Engine engine, Session session, SegmentStore store, List<Path> recordings)
      throws IOException {
    PlainView view = new PlainView();
    Dictation dictation = new Dictation(engine, session, view::partial);
    double offset = store == null ? session.record().seconds() : (double) store.offset() / Pcm.RATE;
    if (recordings.isEmpty()) {
      microphone(dictation, store, offset, view);
      return;
    }
    try (store) {
      double seconds = 0;
      for (Path recording : recordings) {
        if (session.record().phase() != Phase.ENDED) {
          SampleSource plain = source(recording);
          try (SampleSource sound = store == null ? plain : new KeptSound(plain, store, seconds)) {
            seconds += dictation.listen(sound, offset + seconds, view::show);
          }
        }
      }
    }
  }

  private SampleSource source(Path recording) throws IOException {
    SampleSource sound = AudioFile.open(recording);
    return fast ? sound : new PacedSource(sound);
  }

  private void microphone(Dictation dictation, SegmentStore store, double offset, PlainView view)
      throws IOException {
    try (Microphone microphone =
            Microphone.open(
                Optional.ofNullable(device), Clock.systemDefaultZone(), view::microphone);
        SampleSource sound = microphone.listen();
        Recorder recorder =
            store == null ? null : Recorder.start(microphone.listen(), store, view::problem)) {
      Console.out().println("listening; say \"end of examination\" to end");
      dictation.listen(sound, offset, view::show);
      if (recorder != null && recorder.unsaved() > 0) {
        Console.err().println(recorder.unsaved() / Pcm.RATE + " s of sound could not be stored");
      }
    }
  }

  private static void finish(Session session, ExamFolder folder) {
    Console.out().print(ChecklistText.of(session.record(), session.assessment()));
    Console.out().println();
    Console.out().println("record kept in " + folder.path());
  }
}
