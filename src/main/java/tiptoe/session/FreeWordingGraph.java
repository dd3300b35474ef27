package tiptoe.session;

import java.io.IOException;
import java.io.PrintStream;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import tiptoe.grammar.WordAutomaton;
import tiptoe.graph.AcousticModel;
import tiptoe.graph.BuiltModel;
import tiptoe.graph.GraphCache;
import tiptoe.graph.GraphInputs;
import tiptoe.graph.GraphSettings;
import tiptoe.graph.GraphSources;
import tiptoe.graph.ModelFolder;
import tiptoe.graph.Pronunciations;
import tiptoe.language.tagger.TaggerCache;
import tiptoe.language.tagger.WordSequences;
import tiptoe.speech.SpeechModel;
import tiptoe.wording.ProblemWording;

/** The decoding graph of free wordings: which word of the domain follows which. */
public final class FreeWordingGraph {
  private FreeWordingGraph() {}

  /**
   * Opens the model of free wordings; empty, and told, where that cannot be done: the examination
   * goes on by its phrases.
   */
  static Optional<SpeechModel> open(
      Home home,
      Supplier<Understanding> understanding,
      ModelFolder folder,
      List<Path> pronunciations,
      PrintStream progress) {
    try {
      return Optional.of(
          SpeechModel.open(get(home, understanding, folder, pronunciations, progress)));
    } catch (IOException | RuntimeException e) {
      progress.println("no free wordings are heard: " + ProblemWording.of(e));
      return Optional.empty();
    }
  }

  /**
   * Finds the graph, or builds it where it is not there yet.
   *
   * @param understanding asked for only where it must be built
   * @param progress told what takes a while
   */
  private static BuiltModel get(
      Home home,
      Supplier<Understanding> understanding,
      ModelFolder folder,
      List<Path> pronunciations,
      PrintStream progress)
      throws IOException {
    GraphSettings settings = GraphSettings.LOOSE;
    GraphCache cache = GraphCache.near(folder);
    String sources =
        new GraphSources(folder, home.grammars(), pronunciations, settings)
            .hash(TaggerCache.hash(home.grammars(), home.protocol()), WordSequences.identity());
    return cache.get(
        sources,
        () ->
            new GraphInputs(
                folder,
                pairs(understanding.get(), folder, pronunciations),
                pronunciations,
                settings),
        () -> progress.println("building the graph of free wordings"));
  }

  private static WordAutomaton pairs(
      Understanding understanding, ModelFolder folder, List<Path> files) {
    try {
      AcousticModel model = AcousticModel.read(folder);
      Pronunciations pronunciations = Pronunciations.read(files, model.lexicon());
      return WordSequences.automaton(
          understanding.network(),
          understanding.protocol(),
          understanding.typed(),
          word -> pronunciations.of(word).stream().anyMatch(model::canSay));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
