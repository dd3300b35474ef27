package tiptoe.session;

import java.io.IOException;
import java.net.URISyntaxException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import tiptoe.files.BoundedFile;
import tiptoe.files.ContentCache;
import tiptoe.files.Sha256;
import tiptoe.files.UserFolders;
import tiptoe.graph.ModelFolder;
import tiptoe.language.Interpreter;
import tiptoe.language.LocalGrammar;
import tiptoe.protocol.LocalProtocol;
import tiptoe.protocol.Protocol;
import tiptoe.settings.Setting;
import tiptoe.settings.Settings;
import tiptoe.settings.SettingsFile;

/**
 * The folder that holds {@code grammars}, {@code models} and {@code demo-audio}.
 *
 * @param folder absolute
 * @param protocol what is examined: ours, or ours with what a ward adds
 * @param grammars what can be said of it
 */
public record Home(Path folder, Protocol protocol, Path grammars) {
  /** The environment variable that names another folder. */
  static final String VARIABLE = "TIPTOE_HOME";

  /** With the protocol and the grammars that this project ships. */
  public Home(Path folder) {
    this(folder, Protocol.standard(), folder.resolve("grammars"));
  }

  /** Where one is needed, and the examination is that of a protocol. */
  public static Home of(Protocol protocol) throws IOException {
    return locate().with(protocol);
  }

  /**
   * The same for another protocol. What a ward says is put beside our grammars in a folder of the
   * cache, so that all that is made from grammars is made from those.
   */
  public Home with(Protocol other) throws IOException {
    if (other.local().isEmpty()) {
      return this;
    }
    Map<String, byte[]> files = new LinkedHashMap<>();
    try (Stream<Path> all = Files.list(grammars)) {
      for (Path file : all.filter(Files::isRegularFile).sorted().toList()) {
        files.put(file.getFileName().toString(), Files.readAllBytes(file));
      }
    }
    LocalProtocol local = other.local().get();
    String root = new String(files.get(Understanding.ROOT), StandardCharsets.UTF_8);
    files.put(Understanding.ROOT, bytes(LocalGrammar.root(root)));
    files.put(LocalGrammar.FILE, bytes(LocalGrammar.of(local)));
    MessageDigest digest = Sha256.start();
    files.forEach(
        (name, bytes) -> {
          Sha256.add(digest, name);
          digest.update(Sha256.of(bytes));
        });
    String name = "grammars-" + ContentCache.digits(Sha256.hex(digest.digest()));
    ContentCache cache = ContentCache.beside(folder.resolve("models"));
    for (Path place : cache.candidates(name)) {
      if (holds(place, files)) {
        return new Home(folder, other, place);
      }
    }
    Understanding ours = Understanding.load(this);
    List<String> conflicts =
        LocalGrammar.conflicts(local, new Interpreter(ours.network(), protocol));
    if (!conflicts.isEmpty()) {
      throw new IOException(String.join("\n", conflicts));
    }
    Path made = cache.put(name, part -> write(part, files), place -> holds(place, files));
    return new Home(folder, other, made);
  }

  private static byte[] bytes(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }

  private static void write(Path place, Map<String, byte[]> files) throws IOException {
    Files.createDirectories(place);
    for (Map.Entry<String, byte[]> file : files.entrySet()) {
      Files.write(place.resolve(file.getKey()), file.getValue());
    }
  }

  private static boolean holds(Path place, Map<String, byte[]> files) throws IOException {
    for (Map.Entry<String, byte[]> file : files.entrySet()) {
      Path there = place.resolve(file.getKey());
      if (!Files.isRegularFile(there)
          || !Arrays.equals(Files.readAllBytes(there), file.getValue())) {
        return false;
      }
    }
    return true;
  }

  /**
   * The folder the environment names, else the nearest one with grammars above the program itself.
   *
   * @throws IOException when there is none
   */
  public static Home locate() throws IOException {
    String named = System.getenv(VARIABLE);
    if (named != null && !named.isBlank()) {
      Path folder = Path.of(named).toAbsolutePath();
      if (!Files.isDirectory(folder.resolve("grammars"))) {
        throw new IOException("expected a folder grammars in " + VARIABLE + " " + folder);
      }
      return new Home(folder);
    }
    for (Path at = program(); at != null; at = at.getParent()) {
      if (Files.isRegularFile(at.resolve("grammars/exam.gram"))) {
        return new Home(at);
      }
    }
    throw new IOException("expected a folder grammars beside the program; set " + VARIABLE);
  }

  private static Path program() throws IOException {
    try {
      return Path.of(Home.class.getProtectionDomain().getCodeSource().getLocation().toURI())
          .toAbsolutePath();
    } catch (URISyntaxException e) {
      throw new IOException("cannot tell where the program is; set " + VARIABLE, e);
    }
  }

  public Path pronunciations() {
    return grammars().resolve("pronunciations.txt");
  }

  /** What adapts the stock model to crying. */
  Path adaptedWeights() {
    return folder.resolve("models").resolve(ModelFolder.ADAPTED);
  }

  public Path demoAudio() {
    return folder.resolve("demo-audio");
  }

  /**
   * The settings in force.
   *
   * @param named null for those in the usual place; where nothing stands there the defaults hold
   * @throws IllegalArgumentException naming all that is not understood
   */
  public static Settings settings(Path named) {
    Path file = named == null ? settingsFile() : named;
    try {
      if (named != null || Files.exists(file)) {
        BoundedFile.SETTINGS.require(file);
      }
    } catch (NoSuchFileException e) {
      // Told below.
    } catch (IOException e) {
      throw new IllegalArgumentException(e.getMessage(), e);
    }
    SettingsFile.Outcome read =
        named == null ? SettingsFile.readUsual(file) : SettingsFile.read(file);
    if (!read.problems().isEmpty()) {
      throw new IllegalArgumentException(
          read.problems().stream().map(Object::toString).collect(Collectors.joining("\n")));
    }
    return read.settings();
  }

  /**
   * The examination as it is done here: ours, with what the ward adds.
   *
   * @param place of the settings, beside which the file of the ward is looked for
   * @throws IOException when that file cannot be read
   * @throws IllegalArgumentException when it is not understood; it is refused as a whole
   */
  public static Protocol protocol(Settings settings, Path place) throws IOException {
    String named = settings.get(Setting.LOCAL_PROTOCOL);
    if (named.isEmpty()) {
      return Protocol.standard();
    }
    Path local = place.toAbsolutePath().resolveSibling(named);
    try {
      String text = BoundedFile.PROTOCOL.text(local);
      return Protocol.with(LocalProtocol.parse(local.toString(), text, Protocol.standard()));
    } catch (NoSuchFileException e) {
      throw new IOException(
          "expected the local protocol that the settings name, found none at " + local, e);
    }
  }

  /** Where settings are looked for when none are named; possibly not there. */
  public static Path settingsFile() {
    return UserFolders.here().config().resolve(SettingsFile.NAME);
  }
}
