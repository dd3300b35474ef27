package tiptoe.graph;

import java.io.IOException;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.List;
import tiptoe.files.Sha256;
import tiptoe.grammar.WordAutomaton;

/**
 * All that a decoding graph is made from.
 *
 * @param model the stock model
 * @param phrases the words of one phrase
 * @param pronunciations the pronunciation file, then those that add to it
 * @param settings the costs of the graph
 */
public record GraphInputs(
    ModelFolder model, WordAutomaton phrases, List<Path> pronunciations, GraphSettings settings) {
  /** Counted up whenever the same inputs, or the same grammars, give another graph or folder. */
  static final int FORMAT = 2;

  /**
   * The inputs of a graph that knows no phrase: a loop of phones over the model.
   *
   * @param pronunciations the program's own file; words that were taught make no difference
   */
  public static GraphInputs ofPhones(ModelFolder model, Path pronunciations) {
    WordAutomaton none =
        new WordAutomaton(List.of(new WordAutomaton.State(Float.POSITIVE_INFINITY, List.of())));
    return new GraphInputs(model, none, pronunciations, GraphSettings.PHONES);
  }

  public GraphInputs {
    pronunciations = List.copyOf(pronunciations);
  }

  /** The same with one pronunciation file. */
  public GraphInputs(
      ModelFolder model, WordAutomaton phrases, Path pronunciations, GraphSettings settings) {
    this(model, phrases, List.of(pronunciations), settings);
  }

  /** The decoder's settings for the graph. */
  String decoder() {
    if (phrases.arcCount() == 0) {
      return ModelConf.phones();
    }
    return settings.equals(GraphSettings.LOOSE) ? ModelConf.again() : ModelConf.first();
  }

  /** One SHA-256 over everything, so that a graph is found again only for the same inputs. */
  String hash() throws IOException {
    MessageDigest digest = Sha256.start();
    Sha256.add(digest, "format " + FORMAT);
    Sha256.add(digest, model.identity());
    Sha256.add(digest, settings.toString());
    Sha256.add(digest, decoder());
    for (Path file : pronunciations) {
      digest.update(Sha256.of(file));
    }
    for (WordAutomaton.State state : phrases.states()) {
      Sha256.add(digest, "state " + state.finalCost());
      for (WordAutomaton.Arc arc : state.arcs()) {
        Sha256.add(digest, arc.word());
        Sha256.add(digest, arc.cost() + " " + arc.next());
      }
      if (state.backOff() != null) {
        Sha256.add(digest, state.backOff().toString());
      }
    }
    if (phrases.opening() != 0) {
      Sha256.add(digest, "opening " + phrases.opening());
    }
    return Sha256.hex(digest.digest());
  }
}
