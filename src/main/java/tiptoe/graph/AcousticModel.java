package tiptoe.graph;

import java.io.IOException;
import java.lang.ref.SoftReference;
import java.nio.charset.CharacterCodingException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * What the decoding graph needs to know of a model.
 *
 * @param transitions its transition-ids
 * @param contexts the transition-id of each phone after each other
 * @param lexicon the pronunciations of its vocabulary
 */
public record AcousticModel(TransitionModel transitions, PhoneContexts contexts, Lexicon lexicon) {

  private static final Pattern BOUNDARY =
      Pattern.compile("\\s*(?<phone>[0-9]{1,9})\\s+(?<place>[a-z]+)\\s*");

  /** The one that was read last, and its folder: what builds several graphs builds them of one. */
  private static SoftReference<Read> last = new SoftReference<>(null);

  private record Read(ModelFolder folder, AcousticModel model) {}

  /** Reads and recovers it from a model folder; takes about a second the first time. */
  public static synchronized AcousticModel read(ModelFolder folder) throws IOException {
    Read before = last.get();
    if (before == null || !before.folder().equals(folder)) {
      before = new Read(folder, recover(folder));
      last = new SoftReference<>(before);
    }
    return before.model();
  }

  private static AcousticModel recover(ModelFolder folder) throws IOException {
    TransitionModel transitions = TransitionModel.read(folder.file(ModelFolder.TRANSITIONS));
    checkPhones(folder, transitions);
    ConstFst graph = ConstFst.read(folder.file(ModelFolder.GRAPH));
    SymbolTable symbols = SymbolTable.read(folder.file(ModelFolder.WORDS));
    return new AcousticModel(
        transitions,
        PhoneContexts.recover(graph, transitions),
        Lexicon.recover(graph, symbols, transitions));
  }

  /** Whether the model has each phone in the place it has there: some never stand alone. */
  public boolean canSay(Pronunciation pronunciation) {
    return Arrays.stream(pronunciation.ids()).allMatch(contexts::has);
  }

  /** The phones must be numbered as {@link Phone} does, or every word would be spelled wrong. */
  static void checkPhones(ModelFolder folder, TransitionModel transitions) throws IOException {
    if (transitions.lastPhone() != Phone.LAST) {
      throw new UnusableModelException(
          "expected %d phones in %s, found %d"
              .formatted(
                  Phone.LAST, folder.file(ModelFolder.TRANSITIONS), transitions.lastPhone()));
    }
    List<String> kinds = List.of("begin", "end", "internal", "singleton");
    Path file = folder.file(ModelFolder.WORD_BOUNDARY);
    for (String line : lines(file)) {
      Matcher boundary = BOUNDARY.matcher(line);
      if (!boundary.matches()) {
        throw new UnusableModelException(
            "expected the number of a phone and its place in %s, found another line"
                .formatted(file));
      }
      int id = Integer.parseInt(boundary.group("phone"));
      String found = boundary.group("place");
      String expected = Phone.of(id).isPresent() ? kinds.get((id - 11) % 4) : found;
      if (!found.equals(expected)) {
        throw new UnusableModelException(
            "expected phone %d to be %s in %s, found %s".formatted(id, expected, file, found));
      }
    }
  }

  private static List<String> lines(Path file) throws IOException {
    try {
      return Files.readAllLines(file);
    } catch (CharacterCodingException e) {
      throw new UnusableModelException("expected UTF-8 text in %s, found other".formatted(file));
    }
  }
}
