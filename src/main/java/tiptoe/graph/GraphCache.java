package tiptoe.graph;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.function.Supplier;
import java.util.stream.Stream;
import tiptoe.files.ContentCache;
import tiptoe.files.Sha256;

/**
 * Model folders with decoding graphs, each under the hash of what it was made from. A folder
 * carries a manifest, so that a damaged one is made again.
 */
public final class GraphCache {
  private static final String MANIFEST = "manifest.sha256";
  private static final String DECODER = "conf/model.conf";

  /** What is taken over from the model as it is. */
  private static final List<String> TAKEN = List.of("ivector", ModelFolder.WORD_BOUNDARY);

  private final ContentCache cache;

  public GraphCache(ContentCache cache) {
    this.cache = cache;
  }

  /**
   * The cache beside a model. Where that cannot be written to, what is there is still used, and
   * what has to be built goes into the user's own cache folder.
   */
  public static GraphCache near(ModelFolder model) {
    return new GraphCache(ContentCache.beside(model.path().toAbsolutePath().getParent()));
  }

  /**
   * The same as {@link #get(GraphInputs, Runnable)}, but the inputs are not even made where the
   * files that they come from have been seen before: making them takes a second.
   *
   * @param sources SHA-256 of those files
   */
  public BuiltModel get(String sources, Supplier<GraphInputs> inputs, Runnable beforeBuilding)
      throws IOException {
    String note = "from-" + ContentCache.digits(sources);
    for (Path noted : cache.candidates(note)) {
      if (Files.isRegularFile(noted)) {
        // Bytes, since a damaged note need not be text.
        String name = new String(Files.readAllBytes(noted), StandardCharsets.ISO_8859_1).strip();
        if (name.matches("built-[0-9a-f]+") && isIntact(noted.resolveSibling(name))) {
          return found(noted.resolveSibling(name), false);
        }
      }
    }
    BuiltModel built = get(inputs.get(), beforeBuilding);
    Path place = built.folder().getParent();
    if (Files.isWritable(place)) {
      new ContentCache(List.of(place))
          .put(note, part -> Files.writeString(part, built.folder().getFileName().toString()));
    }
    return built;
  }

  /**
   * The model folder for these inputs, built if it is not there yet.
   *
   * @param beforeBuilding run only if it must be built, which takes some seconds
   * @throws UnsayableWordsException if words have no pronunciation
   */
  public BuiltModel get(GraphInputs inputs, Runnable beforeBuilding) throws IOException {
    String name = "built-" + ContentCache.digits(inputs.hash());
    for (Path place : cache.candidates(name)) {
      if (isIntact(place)) {
        return found(place, false);
      }
    }
    beforeBuilding.run();
    Path network = network(inputs.model());
    DecodingGraph graph = graph(inputs);
    return found(
        cache.put(name, part -> write(graph, inputs, network, part), GraphCache::isIntact), true);
  }

  /**
   * The folder for hearing again over the graph of another: its files by links, with the decoder's
   * settings for that.
   */
  public BuiltModel again(BuiltModel first) throws IOException {
    String name =
        "again-"
            + ContentCache.digits(
                Sha256.hexOf(
                    (first.folder().getFileName() + ModelConf.again())
                        .getBytes(StandardCharsets.UTF_8)));
    for (Path place : cache.candidates(name)) {
      if (isIntact(place)) {
        return found(place, false);
      }
    }
    return found(
        cache.put(
            name,
            part -> {
              take(first.folder(), part);
              Files.delete(part.resolve(MANIFEST));
              Files.delete(part.resolve(DECODER));
              Files.writeString(part.resolve(DECODER), ModelConf.again());
              Manifest.of(part).write(part.resolve(MANIFEST));
            },
            GraphCache::isIntact),
        true);
  }

  private static BuiltModel found(Path target, boolean fresh) throws IOException {
    FstHeader header = FstHeader.read(new BinaryReader(target.resolve("graph/HCLG.fst")));
    return new BuiltModel(target, header.states(), header.arcs(), fresh);
  }

  private static boolean isIntact(Path built) throws IOException {
    Path manifest = built.resolve(MANIFEST);
    if (!Files.isRegularFile(manifest)) {
      return false;
    }
    try (InputStream in = Files.newInputStream(manifest)) {
      return Manifest.read(in).firstProblem(built).isEmpty();
    } catch (UnusableModelException e) {
      return false;
    }
  }

  /** The acoustic model; an adapted one is written once, for all graphs to name by links. */
  private Path network(ModelFolder model) throws IOException {
    Path stock = model.file(ModelFolder.TRANSITIONS);
    if (model.differences().isEmpty()) {
      return stock;
    }
    WeightDifferences differences = WeightDifferences.read(model.differences().get());
    String name = "adapted-" + ContentCache.digits(differences.adapted()) + ".mdl";
    ContentCache.Check check =
        made -> Files.isRegularFile(made) && Manifest.sha256(made).equals(differences.adapted());
    for (Path made : cache.candidates(name)) {
      if (check.isIntact(made)) {
        return made;
      }
    }
    return cache.put(name, part -> differences.write(stock, part), check);
  }

  private static DecodingGraph graph(GraphInputs inputs) throws IOException {
    AcousticModel model = AcousticModel.read(inputs.model());
    Pronunciations pronunciations = Pronunciations.read(inputs.pronunciations(), model.lexicon());
    List<MissingWord> missing =
        MissingWord.find(
            inputs.phrases(), word -> pronunciations.of(word).stream().anyMatch(model::canSay));
    if (!pronunciations.problems().isEmpty() || !missing.isEmpty()) {
      throw new UnsayableWordsException(pronunciations.problems(), missing);
    }
    return DecodingGraphBuilder.build(inputs.phrases(), pronunciations, model, inputs.settings());
  }

  private static void write(DecodingGraph graph, GraphInputs inputs, Path network, Path into)
      throws IOException {
    ModelFolder model = inputs.model();
    Files.createDirectories(into.resolve("graph/phones"));
    Files.createDirectories(into.resolve("conf"));
    FstWriter.write(graph, into.resolve("graph/HCLG.fst"));
    StringBuilder words = new StringBuilder();
    for (int label = 0; label < graph.words().size(); label++) {
      words.append(graph.words().get(label)).append(' ').append(label).append('\n');
    }
    Files.writeString(into.resolve("graph/words.txt"), words);
    Files.writeString(into.resolve(DECODER), inputs.decoder());
    Files.writeString(
        into.resolve(ModelFolder.FEATURES),
        ModelConf.features(Files.readString(model.file(ModelFolder.FEATURES))));
    for (String name : TAKEN) {
      take(model.file(name), into.resolve(name));
    }
    take(network, into.resolve(ModelFolder.TRANSITIONS));
    Manifest.of(into).write(into.resolve(MANIFEST));
  }

  /** Names files by links rather than copying 24 MB, where the file system can. */
  private static void take(Path from, Path to) throws IOException {
    if (!Files.exists(from)) {
      return; // a model without i-vectors
    }
    try (Stream<Path> files = Files.walk(from)) {
      for (Path file : (Iterable<Path>) files.filter(Files::isRegularFile)::iterator) {
        Path copy = to.resolve(from.relativize(file).toString());
        Files.createDirectories(copy.getParent());
        link(copy, file.toAbsolutePath());
      }
    }
  }

  private static void link(Path link, Path file) throws IOException {
    try {
      Files.createSymbolicLink(link, file);
    } catch (IOException | UnsupportedOperationException e) {
      try {
        Files.createLink(link, file);
      } catch (IOException | UnsupportedOperationException noLinks) {
        Files.copy(file, link);
      }
    }
  }
}
