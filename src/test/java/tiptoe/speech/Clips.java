package tiptoe.speech;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import tiptoe.audio.AudioFile;
import tiptoe.audio.Pcm;
import tiptoe.grammar.PhraseNetwork;
import tiptoe.graph.BuiltModel;
import tiptoe.graph.GraphCache;
import tiptoe.graph.GraphInputs;
import tiptoe.graph.GraphSettings;
import tiptoe.graph.ModelFolder;
import tiptoe.language.Shipped;

/** The committed clips of synthetic speech, and the engine over the grammars, for tests. */
public final class Clips {
  static final Path FOLDER = Path.of("src/test/resources/tiptoe/speech/clips");

  private Clips() {}

  /**
   * A clip.
   *
   * @param file its WAV file
   * @param text what is said in it
   */
  public record Clip(Path file, String text) {}

  public static List<Clip> all() throws IOException {
    List<Clip> clips = new ArrayList<>();
    try (Stream<Path> files = Files.list(FOLDER)) {
      for (Path text : files.filter(file -> file.toString().endsWith(".txt")).sorted().toList()) {
        Path sound = Path.of(text.toString().replaceFirst("\\.txt$", ".wav"));
        clips.add(new Clip(sound, Files.readString(text).strip()));
      }
    }
    return clips;
  }

  static PhraseNetwork network() {
    return Shipped.network();
  }

  static BuiltModel built(PhraseNetwork network) throws IOException {
    return cache().get(inputs(network), () -> {});
  }

  /** The engine as it is used, hearing phrases twice. */
  static SpeechModel hearingTwice(PhraseNetwork network) throws IOException {
    return hearingTwice(network, models());
  }

  /**
   * @param models where the folders of models are
   */
  static SpeechModel hearingTwice(PhraseNetwork network, Path models) throws IOException {
    GraphInputs inputs = inputs(network);
    BuiltModel built = cache().get(inputs, () -> {});
    return SpeechModel.open(
        within(models, built),
        within(models, cache().again(built)),
        within(
            models,
            cache()
                .get(
                    GraphInputs.ofPhones(inputs.model(), inputs.pronunciations().get(0)),
                    () -> {})));
  }

  /** What the phrases are heard by. */
  static BuiltModel built(PhraseNetwork network, Path models) throws IOException {
    return within(models, cache().get(inputs(network), () -> {}));
  }

  private static BuiltModel within(Path models, BuiltModel built) {
    return new BuiltModel(
        models.resolve(built.folder().getFileName()), built.states(), built.arcs(), built.fresh());
  }

  /** Where the folders of models are. */
  static Path models() throws IOException {
    return model().path().toAbsolutePath().getParent();
  }

  private static GraphInputs inputs(PhraseNetwork network) throws IOException {
    return new GraphInputs(
        model(),
        network.automaton(),
        Path.of("grammars/pronunciations.txt"),
        GraphSettings.DEFAULT);
  }

  private static GraphCache cache() throws IOException {
    return GraphCache.near(model());
  }

  private static ModelFolder model() throws IOException {
    return ModelFolder.open(
        ModelFolder.locate(null, System.getenv(), Path.of("").toAbsolutePath()));
  }

  /** What is heard in a sound: all its utterances. */
  static List<Hypothesis> hear(Recogniser recogniser, Pcm sound) {
    List<Hypothesis> heard = new ArrayList<>(recogniser.accept(sound.samples()));
    recogniser.finish().ifPresent(heard::add);
    return heard;
  }

  static List<Hypothesis> hear(SpeechModel model, Path file) throws IOException {
    try (Recogniser recogniser = model.recogniser()) {
      return hear(recogniser, AudioFile.read(file));
    }
  }

  static String text(List<Hypothesis> heard) {
    return String.join(" ", heard.stream().map(Hypothesis::text).toList()).strip();
  }
}
