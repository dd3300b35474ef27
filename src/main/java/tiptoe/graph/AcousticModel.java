package tiptoe.graph;

import java.io.IOException;
import java.nio.file.Files;
import java.util.Arrays;
import java.util.List;

/**
 * What the decoding graph needs to know of a model.
 *
 * @param transitions its transition-ids
 * @param contexts the transition-id of each phone after each other
 * @param lexicon the pronunciations of its vocabulary
 */
public record AcousticModel(TransitionModel transitions, PhoneContexts contexts, Lexicon lexicon) {

  /** Reads and recovers it from a model folder; takes about a second. */
  public static AcousticModel read(ModelFolder folder) throws IOException {
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
  boolean canSay(Pronunciation pronunciation) {
    return Arrays.stream(pronunciation.ids()).allMatch(contexts::has);
  }

  /** The phones must be numbered as {@link Phone} does, or every word would be spelled wrong. */
  private static void checkPhones(ModelFolder folder, TransitionModel transitions)
      throws IOException {
    if (transitions.lastPhone() != Phone.LAST) {
      throw new UnusableModelException(
          "expected %d phones in %s, found %d"
              .formatted(
                  Phone.LAST, folder.file(ModelFolder.TRANSITIONS), transitions.lastPhone()));
    }
    List<String> kinds = List.of("begin", "end", "internal", "singleton");
    for (String line : Files.readAllLines(folder.file(ModelFolder.WORD_BOUNDARY))) {
      String[] field = line.strip().split("\\s+");
      int id = Integer.parseInt(field[0]);
      String expected = Phone.of(id).isPresent() ? kinds.get((id - 11) % 4) : field[1];
      if (!field[1].equals(expected)) {
        throw new UnusableModelException(
            "expected phone %d to be %s in %s, found %s"
                .formatted(id, expected, folder.file(ModelFolder.WORD_BOUNDARY), field[1]));
      }
    }
  }
}
