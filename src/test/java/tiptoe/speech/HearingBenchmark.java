package tiptoe.speech;

import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import tiptoe.audio.AudioFile;
import tiptoe.audio.Pcm;
import tiptoe.grammar.PhraseNetwork;
import tiptoe.graph.BuiltModel;
import tiptoe.graph.ModelFolder;

/**
 * Prints, in one run, how our graph and the model's own run-time grammar hear the committed clips.
 * Run it with {@code mvn -q test-compile exec:java -Dexec.classpathScope=test
 * -Dexec.mainClass=tiptoe.speech.HearingBenchmark -Dexec.args=}.
 */
public final class HearingBenchmark {
  private HearingBenchmark() {}

  /** Takes no arguments. */
  public static void main(String[] args) throws IOException {
    List<Clips.Clip> clips = Clips.all();
    PhraseNetwork network = Clips.network();
    BuiltModel built = Clips.built(network);
    System.out.printf("graph: %,d states, %,d arcs%n", built.states(), built.arcs());
    try (SpeechModel ours = SpeechModel.open(built)) {
      run("decoding graph of the grammars", clips, ours, null);
    }
    Path stock = Path.of("models", ModelFolder.STOCK);
    String phrases =
        new ObjectMapper().writeValueAsString(clips.stream().map(Clips.Clip::text).toList());
    try (SpeechModel model = SpeechModel.open(stock)) {
      run("the model's run-time grammar, given just these phrases", clips, model, phrases);
    }
    System.out.printf("resident memory: %s%n", resident());
  }

  private static void run(String name, List<Clips.Clip> clips, SpeechModel model, String phrases)
      throws IOException {
    int exact = 0;
    double seconds = 0;
    long nanos = 0;
    for (Clips.Clip clip : clips) {
      Pcm sound = AudioFile.read(clip.file());
      seconds += sound.seconds();
      long start = System.nanoTime();
      try (Recogniser recogniser =
          phrases == null ? model.recogniser() : model.recogniserOf(phrases)) {
        exact += Clips.text(Clips.hear(recogniser, sound)).equals(clip.text()) ? 1 : 0;
      }
      nanos += System.nanoTime() - start;
    }
    System.out.printf(
        "%-55s exact %5.1f %% of %d, real-time factor %.3f on one core%n",
        name, 100.0 * exact / clips.size(), clips.size(), nanos / 1e9 / seconds);
  }

  private static String resident() throws IOException {
    Path status = Path.of("/proc/self/status");
    if (!Files.exists(status)) {
      return "not known on this system";
    }
    return Files.readAllLines(status).stream()
        .filter(line -> line.startsWith("VmHWM"))
        .findFirst()
        .map(line -> line.replaceAll("\\s+", " "))
        .orElse("not known");
  }
}
