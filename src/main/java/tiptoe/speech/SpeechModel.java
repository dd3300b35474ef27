package tiptoe.speech;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.sun.jna.Platform;
import com.sun.jna.Pointer;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Supplier;
import tiptoe.graph.BuiltModel;
import tiptoe.graph.ModelFolder;
import tiptoe.graph.UnusableModelException;

/** A model folder in memory, shared by recognisers; opened twice, it is loaded once. */
public final class SpeechModel implements AutoCloseable {
  /** What is open, by its folder. */
  private static final Map<Path, Loaded> LOADED = new ConcurrentHashMap<>();

  /** A model of the library, and how many use it. */
  private record Loaded(Pointer model, int users) {}

  private final VoskLibrary library;
  private final Path folder;
  private Pointer model;

  /** The same graph, to hear again; null where nothing is heard twice. */
  private final SpeechModel again;

  /** The same acoustic model over a loop of phones; null where nothing is heard twice. */
  private final SpeechModel phones;

  /** The same acoustic model over free wordings; null where they are not heard. */
  private volatile Supplier<Optional<SpeechModel>> free;

  private SpeechModel(
      VoskLibrary library, Path folder, Pointer model, SpeechModel again, SpeechModel phones) {
    this.library = library;
    this.folder = folder;
    this.model = model;
    this.again = again;
    this.phones = phones;
  }

  /**
   * Loads three folders; utterances are then heard a second time.
   *
   * @param phrases the decoding graph of the examination
   * @param again the same for the second time
   * @param phones a graph without words
   */
  public static SpeechModel open(BuiltModel phrases, BuiltModel again, BuiltModel phones)
      throws IOException {
    // All at once: each takes more than half a second.
    Loading<SpeechModel> first = Loading.load("load the phrases", () -> open(phrases));
    Loading<SpeechModel> second = Loading.load("load the second hearing", () -> open(again));
    Loading<SpeechModel> loop = Loading.load("load the loop of phones", () -> open(phones));
    try {
      SpeechModel of = first.await();
      return new SpeechModel(of.library, of.folder, of.model, second.await(), loop.await());
    } catch (IOException | RuntimeException e) {
      List.of(first, second, loop).forEach(SpeechModel::letGo);
      throw e;
    }
  }

  private static void letGo(Loading<SpeechModel> loading) {
    try {
      loading.await().close();
    } catch (IOException | RuntimeException e) {
      // It is not there: that is what is told.
    }
  }

  /** Loads a folder with a decoding graph; takes some tenths of a second. */
  public static SpeechModel open(BuiltModel built) throws IOException {
    return open(built.folder());
  }

  /** Loads a stock model as it is: to hear free speech, or to be compared with. */
  public static SpeechModel open(ModelFolder stock) throws IOException {
    return open(stock.path());
  }

  /** The folder must have been checked: the library may end the process over a damaged one. */
  static SpeechModel open(Path folder) throws IOException {
    VoskLibrary library = Vosk.library();
    Path place = folder.toAbsolutePath();
    Loaded loaded =
        LOADED.compute(
            place,
            (same, open) ->
                open != null ? new Loaded(open.model(), open.users() + 1) : load(library, folder));
    if (loaded == null) {
      throw new UnusableModelException(
          "expected a model folder that the speech library loads, found %s".formatted(folder));
    }
    return new SpeechModel(library, place, loaded.model(), null, null);
  }

  /** The folders that are in memory. */
  static Set<Path> loaded() {
    return Set.copyOf(LOADED.keySet());
  }

  private static Loaded load(VoskLibrary library, Path folder) {
    Pointer model = library.vosk_model_new(folder.toString());
    return model == null ? null : new Loaded(model, 1);
  }

  private static Loaded letGo(VoskLibrary library, Loaded open) {
    if (open.users() > 1) {
      return new Loaded(open.model(), open.users() - 1);
    }
    library.vosk_model_free(open.model());
    return null;
  }

  /** Loads the library alone, to see whether this system can; gives the name of the system. */
  public static String libraryName() throws IOException {
    Vosk.library();
    return "Vosk for " + Platform.RESOURCE_PREFIX;
  }

  /**
   * From now on, recognisers hear utterances again, in free wordings.
   *
   * @param wordings a model over a graph of free wordings; asked for when it is first needed, and
   *     closed by whoever made it; empty where there is none
   */
  public void hearFreely(Supplier<Optional<SpeechModel>> wordings) {
    free = wordings;
  }

  /** A recogniser over the folder's graph, for one stream of sound. */
  public synchronized Recogniser recogniser() {
    return recogniser(pointer());
  }

  private synchronized Pointer pointer() {
    return checked(library.vosk_recognizer_new(opened(), Recogniser.RATE));
  }

  /**
   * A recogniser over the model's own run-time grammar, where the folder has no fixed graph.
   *
   * @param phrases all that it may hear; words that the model does not know are dropped
   */
  public synchronized Recogniser recogniserOf(List<String> phrases) {
    String json = new ObjectMapper().valueToTree(phrases).toString();
    return recogniser(library.vosk_recognizer_new_grm(opened(), Recogniser.RATE, json));
  }

  private Recogniser recogniser(Pointer recogniser) {
    if (phones == null) {
      return new Recogniser(library, checked(recogniser), null);
    }
    Supplier<Optional<SpeechModel>> wordings = free;
    return new Recogniser(
        library,
        checked(recogniser),
        new SecondPass(
            library,
            again::pointer,
            phones::pointer,
            wordings == null ? null : () -> wordings.get().map(SpeechModel::pointer)));
  }

  private static Pointer checked(Pointer recogniser) {
    if (recogniser == null) {
      throw new IllegalStateException("expected a recogniser from the speech library, found none");
    }
    return recogniser;
  }

  private Pointer opened() {
    if (model == null) {
      throw new IllegalStateException("expected an open speech model, found a closed one");
    }
    return model;
  }

  /** Frees the model once its recognisers are closed too; closing again does nothing. */
  @Override
  public synchronized void close() {
    if (model != null) {
      LOADED.computeIfPresent(folder, (same, open) -> letGo(library, open));
      model = null;
      if (phones != null) {
        again.close();
        phones.close();
      }
    }
  }
}
