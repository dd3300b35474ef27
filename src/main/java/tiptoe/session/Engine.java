package tiptoe.session;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import tiptoe.graph.BuiltModel;
import tiptoe.graph.GraphCache;
import tiptoe.graph.GraphInputs;
import tiptoe.graph.GraphSettings;
import tiptoe.graph.GraphSources;
import tiptoe.graph.ModelFolder;
import tiptoe.settings.Setting;
import tiptoe.settings.Settings;
import tiptoe.speech.Loading;
import tiptoe.speech.Recogniser;
import tiptoe.speech.SpeechModel;

/** The recogniser over the decoding graph of the grammars, ready to listen. */
public final class Engine implements AutoCloseable {
  private final BuiltModel built;
  private final SpeechModel model;
  private final Supplier<Recogniser> recognisers;
  private final FreeHearing free;

  /** Hears utterances again in free wordings; null where nothing does. */
  private final Loading<Optional<SpeechModel>> wordings;

  private Engine(
      BuiltModel built,
      SpeechModel model,
      Supplier<Recogniser> recognisers,
      FreeHearing free,
      Loading<Optional<SpeechModel>> wordings) {
    this.wordings = wordings;
    this.built = built;
    this.model = model;
    this.recognisers = recognisers;
    this.free = free;
  }

  /**
   * Opens the model, building its decoding graph first where that is not there yet.
   *
   * @param asked a model folder the user named; null for the one of the project
   * @param chosen says by which weights to hear; free speech is heard by the stock ones
   * @param progress told what takes a while
   */
  public static Engine open(
      Home home, Understanding understanding, Path asked, Settings chosen, PrintStream progress)
      throws IOException {
    return open(home, () -> understanding, asked, chosen, progress);
  }

  /** The same while the grammars and the tagger are loaded beside it. */
  public static Engine openBeside(
      Home home,
      Loading<Understanding> understanding,
      Path asked,
      Settings chosen,
      PrintStream progress)
      throws IOException {
    progress.println("loading the grammars and the speech model");
    Loading<Boolean> ready =
        Loading.load(
            "load the tagger",
            () -> {
              understanding.await().getReady(progress);
              return true;
            });
    Engine engine = open(home, understanding, asked, chosen, progress);
    try {
      ready.await();
      // Reading grammars and lexicon takes half as much again as they keep; given back, the program
      // stays small while it listens for hours.
      System.gc();
      return engine;
    } catch (IOException | RuntimeException e) {
      engine.close();
      throw e;
    }
  }

  /**
   * The same while the grammars may still be loading.
   *
   * @param understanding asked for only where the graph is not there yet, or a remark is made
   */
  public static Engine open(
      Home home,
      Supplier<Understanding> understanding,
      Path asked,
      Settings chosen,
      PrintStream progress)
      throws IOException {
    ModelFolder stock = ModelFolder.open(ModelFolder.locate(asked, System.getenv(), home.folder()));
    // Another model has weights of its own, unless somebody asks for what it cannot have.
    boolean adapts = stock.isStock() || chosen.chosen().containsKey(Setting.WEIGHTS);
    ModelFolder folder =
        adapts && chosen.is(Setting.WEIGHTS, "adapted")
            ? stock.adaptedBy(home.adaptedWeights())
            : stock;
    GraphSettings settings = GraphSettings.DEFAULT;
    List<Path> pronunciations = OwnWords.usual().after(home.pronunciations());
    GraphCache cache = GraphCache.near(folder);
    BuiltModel built =
        cache.get(
            new GraphSources(folder, home.grammars(), pronunciations, settings).hash(),
            () ->
                new GraphInputs(
                    folder, understanding.get().network().automaton(), pronunciations, settings),
            () -> progress.println("building the decoding graph from the grammars"));
    if (built.fresh()) {
      progress.printf("decoding graph: %,d states, %,d arcs%n", built.states(), built.arcs());
    }
    BuiltModel phones = cache.get(GraphInputs.ofPhones(folder, home.pronunciations()), () -> {});
    SpeechModel model = SpeechModel.open(built, cache.again(built), phones);
    FreeHearing free =
        new FreeHearing(stock, () -> understanding.get().network().words(), home.pronunciations());
    Loading<Optional<SpeechModel>> wordings =
        Loading.load(
            "load the free wordings",
            () -> FreeWordingGraph.open(home, understanding, folder, pronunciations, progress));
    model.hearFreely(wordings);
    return new Engine(built, model, model::recogniser, free, wordings);
  }

  /**
   * The model as it comes, with its own run-time grammar, to compare with.
   *
   * @param asked a model folder the user named; null for the one of the project
   * @param phrases all that it may hear
   */
  public static Engine openStock(Home home, Path asked, List<String> phrases) throws IOException {
    ModelFolder folder =
        ModelFolder.open(ModelFolder.locate(asked, System.getenv(), home.folder()));
    SpeechModel model = SpeechModel.open(folder);
    FreeHearing free = new FreeHearing(folder, Set::of, home.pronunciations());
    return new Engine(null, model, () -> model.recogniserOf(phrases), free, null);
  }

  public BuiltModel built() {
    return built;
  }

  public Recogniser recogniser() {
    return recognisers.get();
  }

  /** Whether utterances are heard again in free wordings; waits until those are loaded. */
  boolean hearsFreeWordings() throws IOException {
    return wordings != null && wordings.await().isPresent();
  }

  /** Hears free speech; its model is loaded when it is first asked for. */
  FreeHearing free() {
    return free;
  }

  @Override
  public void close() {
    free.close();
    if (wordings != null) {
      wordings.get().ifPresent(SpeechModel::close);
    }
    model.close();
  }
}
