package tiptoe.session;

import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermission;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.function.Supplier;
import tiptoe.audio.AudioFile;
import tiptoe.audio.Microphone;
import tiptoe.audio.Pcm;
import tiptoe.exam.journal.RecordProblem;
import tiptoe.files.UserFolders;
import tiptoe.graph.ModelFolder;
import tiptoe.protocol.Protocol;
import tiptoe.settings.Setting;
import tiptoe.settings.Settings;
import tiptoe.speech.Recogniser;
import tiptoe.speech.SpeechModel;
import tiptoe.wording.ProblemWording;

/** Looks at everything an examination needs, from the program's own files to its settings. */
public final class Readiness {
  /** Reads the protocol of the ward. */
  public interface OfWard {
    Protocol read() throws IOException;
  }

  /** An hour of sound at 16 kHz and 16 bit, in bytes. */
  private static final long HOUR_OF_SOUND = 3600L * Pcm.RATE * Short.BYTES;

  private static final long LEAST_FREE = HOUR_OF_SOUND;
  private static final long ENOUGH_FREE = 10 * HOUR_OF_SOUND;
  private static final String WHOLE_PROGRAM = "unpack or install the program again";

  private final Map<String, String> environment;
  private final Path model;
  private final List<ReadinessCheck> checks = new ArrayList<>();

  /**
   * @param model a model folder the user named; null for the program's own
   */
  public Readiness(Map<String, String> environment, Path model) {
    this.environment = Map.copyOf(environment);
    this.model = model;
  }

  public List<ReadinessCheck> checks() {
    return List.copyOf(checks);
  }

  /** Takes in checks made elsewhere. */
  public void add(List<ReadinessCheck> more) {
    checks.addAll(more);
  }

  /** Whether nothing is missing that the program cannot do without. */
  public boolean isReady() {
    return checks.stream().noneMatch(check -> check.state() == ReadinessCheck.State.MISSING);
  }

  /**
   * The program's files, the speech model, the library, and whether they hear.
   *
   * @param settings reads them; where they are not understood, which {@link #settings} tells, it
   *     hears as it comes
   * @param protocol reads that of the ward
   */
  public void program(Supplier<Settings> settings, OfWard protocol) throws IOException {
    Home home;
    try {
      home = Home.locate();
    } catch (IOException e) {
      checks.add(ReadinessCheck.missing("program", e.getMessage(), WHOLE_PROGRAM));
      return;
    }
    checks.add(ReadinessCheck.fine("program", home.folder().toString()));
    checks.add(
        ReadinessCheck.of(
            "library",
            "use 64-bit Linux with glibc, macOS or Windows on x86; where the folder for temporary"
                + " files forbids programs, start with JAVA_TOOL_OPTIONS=-Djna.tmpdir=DIR; else "
                + WHOLE_PROGRAM,
            SpeechModel::libraryName));
    Path folder = ModelFolder.locate(model, environment, home.folder());
    String again =
        model == null && environment.get(ModelFolder.VARIABLE) == null
            ? WHOLE_PROGRAM
            : "name another folder by --model or " + ModelFolder.VARIABLE;
    checks.add(
        ReadinessCheck.of(
            "speech model",
            again,
            () -> ModelFolder.open(folder).path().getFileName() + ", every file as it should be"));
    boolean local = !orDefault(settings).get(Setting.LOCAL_PROTOCOL).isEmpty();
    if (local) {
      checks.add(
          ReadinessCheck.of(
              "protocol",
              "correct the line that is named, or leave local: out of the settings",
              () -> home.with(protocol.read()).protocol().local().orElseThrow().title()));
    }
    if (isReady()) {
      checks.add(
          ReadinessCheck.of(
              "hearing",
              "mend the file that is named, or get leave to read it; graphs that are not there yet"
                  + " are made beside the model, or where that cannot be, in "
                  + UserFolders.here().cache()
                  + "; else "
                  + WHOLE_PROGRAM,
              () -> hear(local ? home.with(protocol.read()) : home, settings)));
    }
  }

  /**
   * Loads or makes the tagger and the decoding graph, and hears a piece of the invented
   * examination.
   */
  private String hear(Home home, Supplier<Settings> settings) throws IOException {
    Understanding understanding = Understanding.load(home);
    PrintStream quiet =
        new PrintStream(OutputStream.nullOutputStream(), true, StandardCharsets.UTF_8);
    understanding.getReady(quiet);
    try (Engine engine = Engine.open(home, understanding, model, orDefault(settings), quiet);
        Recogniser recogniser = engine.recogniser()) {
      Pcm sound = AudioFile.read(home.demoAudio().resolve("05-hips.wav"));
      long phrases = recogniser.accept(sound.samples()).size();
      phrases += recogniser.finish().stream().count();
      if (phrases == 0) {
        throw new IOException("expected phrases in a part of the demonstration, found none");
      }
      return String.format(
          Locale.ROOT,
          "%,d states of decoding graph; %d phrases in a part of the demonstration",
          engine.built().states(),
          phrases);
    }
  }

  private static Settings orDefault(Supplier<Settings> settings) {
    try {
      return settings.get();
    } catch (IllegalArgumentException e) {
      return Settings.DEFAULT;
    }
  }

  /** Whether there is a microphone; how it hears is for the sound check to say. */
  public void microphone() {
    List<String> devices = Microphone.devices();
    checks.add(
        devices.isEmpty()
            ? ReadinessCheck.missing(
                "microphone",
                "expected a microphone, found none",
                "plug one in; on Linux install libasound2 and libasound2-plugins, and see that"
                    + " 'arecord -l' lists it and that you are in the group audio")
            : ReadinessCheck.fine("microphone", String.join(", ", devices)));
  }

  /** Where records are kept: room, leave to write, and whether others can read there. */
  public void records(Path data) {
    Path there = data.resolve("examinations").toAbsolutePath();
    // A link that leads nowhere is there too: no folder can be made in its place.
    while (!Files.exists(there, LinkOption.NOFOLLOW_LINKS)) {
      there = there.getParent();
    }
    Path nearest = there;
    checks.add(
        ReadinessCheck.of(
            "records",
            "name a folder of your own by --data, or get leave to write there",
            () -> writable(data, nearest)));
    if (Files.isDirectory(nearest)) {
      checks.add(room(nearest));
    }
    privacy(data.resolve("examinations"));
  }

  private static String writable(Path data, Path nearest) throws IOException {
    if (!Files.isDirectory(nearest)) {
      throw new IOException("expected a folder at " + nearest + ", found something else");
    }
    try {
      Files.delete(Files.createTempFile(nearest, "tiptoe", null));
      return data.toString();
    } catch (IOException e) {
      throw new IOException(
          "expected to write to " + nearest + ", found " + RecordProblem.reason(e), e);
    }
  }

  private static ReadinessCheck room(Path folder) {
    // Not by the file store, which cannot be told where the root is not in the table of mounts.
    long free = folder.toFile().getUsableSpace();
    String found =
        String.format(Locale.ROOT, "%,d MB free; an hour of sound takes 115 MB", free / 1_000_000);
    String mend = "make room, or keep no sound: --keep-audio never";
    if (free < LEAST_FREE) {
      return ReadinessCheck.missing("disk", found, mend);
    }
    return free < ENOUGH_FREE
        ? ReadinessCheck.wanting("disk", found, mend)
        : ReadinessCheck.fine("disk", found);
  }

  private void privacy(Path folder) {
    if (!Files.isDirectory(folder)
        || !folder.getFileSystem().supportedFileAttributeViews().contains("posix")) {
      return;
    }
    try {
      Set<PosixFilePermission> found = Files.getPosixFilePermissions(folder);
      String shown = PosixFilePermissions.toString(found);
      checks.add(
          shown.endsWith("------")
              ? ReadinessCheck.fine("privacy", "only you can read your records")
              : ReadinessCheck.wanting(
                  "privacy", folder + " is open to others: " + shown, "chmod 700 " + folder));
    } catch (IOException e) {
      checks.add(ReadinessCheck.wanting("privacy", "cannot tell: " + ProblemWording.of(e), ""));
    }
  }

  /**
   * The configuration file.
   *
   * @param settings reads it; throws where it is not understood
   */
  public void settings(Supplier<Settings> settings) {
    checks.add(
        ReadinessCheck.of(
            "settings",
            "correct the line, or start anew from 'tiptoe settings'",
            () -> {
              Synthesiser.missing(settings.get())
                  .ifPresent(
                      found ->
                          checks.add(
                              ReadinessCheck.wanting(
                                  "voice", found, "install it, or set spoken-answers: off")));
              return Files.exists(Home.settingsFile())
                  ? Home.settingsFile().toString()
                  : "as they come; 'tiptoe settings' shows them";
            }));
  }
}
