package tiptoe.graph;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.DirectoryNotEmptyException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import java.util.stream.Stream;

/**
 * Model folders with decoding graphs, each under the hash of what it was made from. A folder is
 * made under another name and then renamed, so that a crash leaves no half graph; it carries a
 * manifest, so that a damaged one is made again.
 */
public final class GraphCache {
  private static final String MANIFEST = "manifest.sha256";
  private static final int HASH_DIGITS = 16;

  /** What is taken over from the model as it is. */
  private static final List<String> TAKEN = List.of("am", "ivector", ModelFolder.WORD_BOUNDARY);

  private final Path folder;

  /** Where else to look, such as in an installed program; the first that has a graph is taken. */
  private final List<Path> places;

  /**
   * @param folder where the model folders are kept
   */
  public GraphCache(Path folder) {
    this(folder, List.of(folder));
  }

  private GraphCache(Path folder, List<Path> places) {
    this.folder = folder;
    this.places = places;
  }

  /**
   * The cache beside a model. Where that cannot be written to, what is there is still used, and
   * what has to be built goes into the user's own cache folder.
   */
  public static GraphCache near(ModelFolder model, Map<String, String> environment) {
    Path beside = model.path().toAbsolutePath().getParent();
    Path own = UserFolders.cache(environment, System.getProperties());
    return Files.isWritable(beside)
        ? new GraphCache(beside)
        : new GraphCache(own, List.of(beside, own));
  }

  /**
   * The same as {@link #get(GraphInputs, Runnable)}, but the inputs are not even made where the
   * files that they come from have been seen before: making them takes a second.
   *
   * @param sources SHA-256 of those files
   */
  public BuiltModel get(String sources, Supplier<GraphInputs> inputs, Runnable beforeBuilding)
      throws IOException {
    String note = "from-" + sources.substring(0, HASH_DIGITS);
    for (Path place : places) {
      Path noted = place.resolve(note);
      if (Files.isRegularFile(noted)) {
        // Bytes, since a damaged note need not be text.
        String name = new String(Files.readAllBytes(noted), StandardCharsets.ISO_8859_1).strip();
        if (name.matches("built-[0-9a-f]{" + HASH_DIGITS + "}") && isIntact(place.resolve(name))) {
          return found(place.resolve(name), false);
        }
      }
    }
    BuiltModel built = get(inputs.get(), beforeBuilding);
    note(built.folder(), note);
    return built;
  }

  private static void note(Path built, String note) throws IOException {
    Path place = built.getParent();
    if (Files.isWritable(place)) {
      Path part = Files.createTempFile(place, "part-", null);
      Files.writeString(part, built.getFileName().toString());
      Files.move(part, place.resolve(note), StandardCopyOption.REPLACE_EXISTING);
    }
  }

  /**
   * The model folder for these inputs, built if it is not there yet.
   *
   * @param beforeBuilding run only if it must be built, which takes some seconds
   * @throws UnsayableWordsException if words have no pronunciation
   */
  public BuiltModel get(GraphInputs inputs, Runnable beforeBuilding) throws IOException {
    String name = "built-" + inputs.hash().substring(0, HASH_DIGITS);
    for (Path place : places) {
      if (isIntact(place.resolve(name))) {
        return found(place.resolve(name), false);
      }
    }
    beforeBuilding.run();
    build(inputs, folder.resolve(name));
    return found(folder.resolve(name), true);
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

  private static void build(GraphInputs inputs, Path target) throws IOException {
    DecodingGraph graph = graph(inputs);
    Files.createDirectories(target.toAbsolutePath().getParent());
    Path part = Files.createTempDirectory(target.toAbsolutePath().getParent(), "part-");
    try {
      write(graph, inputs, part);
      if (isIntact(target)) {
        return; // another process has just built the same graph, and may be reading it
      }
      delete(target);
      rename(part, target);
    } finally {
      delete(part);
    }
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

  private static void write(DecodingGraph graph, GraphInputs inputs, Path into) throws IOException {
    ModelFolder model = inputs.model();
    Files.createDirectories(into.resolve("graph/phones"));
    Files.createDirectories(into.resolve("conf"));
    FstWriter.write(graph, into.resolve("graph/HCLG.fst"));
    StringBuilder words = new StringBuilder();
    for (int label = 0; label < graph.words().size(); label++) {
      words.append(graph.words().get(label)).append(' ').append(label).append('\n');
    }
    Files.writeString(into.resolve("graph/words.txt"), words);
    Files.writeString(into.resolve("conf/model.conf"), inputs.decoder());
    Files.writeString(
        into.resolve(ModelFolder.FEATURES),
        ModelConf.features(Files.readString(model.file(ModelFolder.FEATURES))));
    boolean besideModel =
        into.toAbsolutePath().getParent().equals(model.path().toAbsolutePath().getParent());
    for (String name : TAKEN) {
      take(model.file(name), into.resolve(name), besideModel);
    }
    Manifest.of(into).write(into.resolve(MANIFEST));
  }

  /**
   * Names files by links rather than copying 24 MB, where the file system can. Beside the model the
   * links are relative, so that both can be moved together.
   */
  private static void take(Path from, Path to, boolean besideModel) throws IOException {
    if (!Files.exists(from)) {
      return; // a model without i-vectors
    }
    try (Stream<Path> files = Files.walk(from)) {
      for (Path file : (Iterable<Path>) files.filter(Files::isRegularFile)::iterator) {
        Path copy = to.resolve(from.relativize(file).toString());
        Files.createDirectories(copy.getParent());
        link(copy, file.toAbsolutePath(), besideModel);
      }
    }
  }

  private static void link(Path link, Path file, boolean relative) throws IOException {
    Path target = relative ? link.toAbsolutePath().getParent().relativize(file) : file;
    try {
      Files.createSymbolicLink(link, target);
    } catch (IOException | UnsupportedOperationException e) {
      try {
        Files.createLink(link, file);
      } catch (IOException | UnsupportedOperationException noLinks) {
        Files.copy(file, link);
      }
    }
  }

  private static void rename(Path part, Path target) throws IOException {
    try {
      Files.move(part, target, StandardCopyOption.ATOMIC_MOVE);
    } catch (AtomicMoveNotSupportedException e) {
      Files.move(part, target);
    } catch (FileAlreadyExistsException | DirectoryNotEmptyException e) {
      // the other process was faster by less than that
      if (!isIntact(target)) {
        throw e;
      }
    }
  }

  private static void delete(Path folder) throws IOException {
    if (!Files.exists(folder)) {
      return;
    }
    try (Stream<Path> all = Files.walk(folder)) {
      for (Path path : (Iterable<Path>) all.sorted(Comparator.reverseOrder())::iterator) {
        Files.deleteIfExists(path);
      }
    }
  }
}
