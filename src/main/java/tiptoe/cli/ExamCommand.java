package tiptoe.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.time.ZonedDateTime;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import tiptoe.audio.AudioFile;
import tiptoe.audio.Microphone;
import tiptoe.audio.SegmentStore;
import tiptoe.exam.Event;
import tiptoe.exam.NotRecorded;
import tiptoe.exam.StatedIdentity;
import tiptoe.exam.journal.ExamFolder;
import tiptoe.exam.journal.OpenExam;
import tiptoe.protocol.Caution;
import tiptoe.screen.Look;
import tiptoe.screen.ScreenView;
import tiptoe.screen.Summary;
import tiptoe.screen.Terminals;
import tiptoe.screen.review.Reviewer;
import tiptoe.session.Engine;
import tiptoe.session.ExamSession;
import tiptoe.session.ExamView;
import tiptoe.session.Feedback;
import tiptoe.session.Home;
import tiptoe.session.Listening;
import tiptoe.session.PlainView;
import tiptoe.session.Synthesiser;
import tiptoe.session.ToolVersion;
import tiptoe.session.Understanding;
import tiptoe.settings.Settings;
import tiptoe.speech.Loading;
import tiptoe.wording.ProblemWording;

/** Listens to an examination and keeps its record. */
@Command(
    name = "exam",
    description = {
      "Listens to an examination and keeps its record.",
      "It hears the microphone, or recordings.",
      "It ends when you say \"end of examination\", or when the recordings are over."
    },
    footer = {
      "",
      "Example: tiptoe exam --label \"bed 4\" --as \"Rowan Reed\" --role midwife",
      "         tiptoe exam --patient baby.json",
      "         tiptoe exam --from demo-audio",
      "         tiptoe exam --continue last"
    })
final class ExamCommand implements Callable<Integer> {
  @Option(
      names = "--from",
      paramLabel = "PATH",
      description = "A recording, or a folder of them, instead of the microphone; in real time.")
  private Path from;

  @Option(names = "--fast", description = "With --from: as fast as possible.")
  private boolean fast;

  @Option(names = "--plain", description = "Lines of text instead of the full screen.")
  private boolean plain;

  @Option(names = "--ascii", description = "A screen of plain letters and signs only.")
  private boolean ascii;

  @Option(names = "--device", paramLabel = "NAME", description = "The microphone, or a part of it.")
  private String device;

  @Option(names = "--label", paramLabel = "TEXT", description = "Your own words for the record.")
  private String label;

  @Option(names = "--author", hidden = true, paramLabel = "NAME")
  private String author;

  @Option(
      names = "--continue",
      paramLabel = "RECORD",
      description = "Go on with an examination that was broken off; last is the newest.")
  private String broken;

  @Option(names = "--encrypt", description = "Encrypt the record and its sound by a passphrase.")
  private boolean encrypt;

  @Option(names = "--model", paramLabel = "DIR", description = "Another speech model folder.")
  private Path model;

  @Mixin private RecordOptions options;
  @Mixin private IdentityOption identity;
  @Mixin private KeepAudioOption keepAudio;
  @Mixin private WhoOption who;

  @Override
  public Integer call() throws IOException {
    Home home = Home.locate();
    List<Path> recordings = from == null ? List.of() : AudioFile.in(from);
    Settings settings = options.settings();
    Map<String, String> baby = identity.stated(settings);
    OpenExam open = open(settings);
    // Where nothing was heard, what was opened for it holds nothing.
    boolean keeps = true;
    try (open) {
      StatedIdentity.state(baby, open.examination());
      keepAudio
          .chosen()
          .ifPresent(keep -> open.examination().note(new Event.KeepAudioChosen(keep.id())));
      try {
        examine(home, settings, recordings, open);
        return 0;
      } catch (IOException | NotRecorded e) {
        open.requireInPlace();
        keeps = broken != null || open.hasBegun();
        throw new IOException(keeps ? stopped(open.folder(), e) : ProblemWording.of(e), e);
      }
    } finally {
      if (!keeps) {
        options.store().remove(open.folder());
      }
    }
  }

  private static String stopped(ExamFolder folder, Exception why) {
    return "the examination stopped: %s; everything that was shown is kept in %s; to go on: tiptoe exam --continue %s"
        .formatted(ProblemWording.of(why), folder.path(), folder.name());
  }

  private void examine(Home program, Settings settings, List<Path> recordings, OpenExam open)
      throws IOException {
    if (recordings.isEmpty()) {
      Microphone.require(Optional.ofNullable(device));
    }
    Home home = program.with(open.examination().record().protocol());
    Loading<Understanding> understanding =
        Loading.load("load the grammars", () -> Understanding.load(home));
    ExamSession session =
        new ExamSession(
            () -> understanding.get().interpreter(),
            open.examination(),
            settings,
            ZonedDateTime.now(Clock.systemDefaultZone()));
    try (ExamView view = view(session, open.folder());
        Feedback feedback = fast ? Feedback.silent() : Feedback.of(settings, session);
        Engine engine = Engine.openBeside(home, understanding, model, settings, view.progress())) {
      Synthesiser.missing(settings).ifPresent(view.progress()::println);
      feedback.begin();
      boolean keepsSound = keepAudio.of(settings, open.examination().record()).writes();
      SegmentStore sound = keepsSound ? open.openSound() : null;
      new Listening(engine, session, view, feedback)
          .examine(
              open,
              broken != null,
              listening -> {
                if (recordings.isEmpty()) {
                  listening.microphone(device, sound);
                } else {
                  listening.recordings(recordings, fast, sound);
                }
              });
    }
    open.requireInPlace();
    (isPlain()
            ? Summary.plain(session.wording(), open.folder().path())
            : Summary.of(session.wording(), open.folder().path()))
        .forEach(Console.out()::println);
  }

  private boolean isPlain() {
    return plain || !Terminals.usable(System.getenv());
  }

  private ExamView view(ExamSession session, ExamFolder folder) throws IOException {
    if (isPlain()) {
      Console.out().println(Caution.TEXT);
      Console.out().println("record " + folder.name());
      if (session.record().baby().isIdentified()) {
        Console.out().println(session.wording().identityLine());
      }
      return new PlainView(session.wording().words(), Console.out(), Console.err());
    }
    Look look = Look.of(System.getenv(), ascii);
    return ScreenView.open(session, look, folder.path(), Console.err(), Terminals.open());
  }

  private OpenExam open(Settings settings) throws IOException {
    String author =
        this.author != null ? this.author : who.of(settings).map(Reviewer::toString).orElse(null);
    if (broken == null) {
      return options
          .storeHere()
          .create(label, ToolVersion.number(), author, encrypt ? options.newPassphrase() : null);
    }
    OpenExam open = options.open(broken);
    open.examination().record().notes().forEach(note -> Console.err().println(note.text()));
    open.examination().goOn(ToolVersion.number(), author);
    return open;
  }
}
