package tiptoe.session;

import java.io.IOException;
import java.io.PrintStream;
import java.util.stream.Collectors;
import tiptoe.grammar.GrammarSet;
import tiptoe.grammar.PhraseNetwork;
import tiptoe.grammar.Problem;
import tiptoe.language.Interpreter;
import tiptoe.language.TypedText;
import tiptoe.protocol.Protocol;

/**
 * What can be said and what it means, without any sound.
 *
 * @param network the phrases of the examination
 * @param interpreter their meaning
 * @param protocol what can be meant
 * @param typed how typed text becomes words
 * @param tagger reads what the grammars do not cover
 */
public record Understanding(
    PhraseNetwork network,
    Interpreter interpreter,
    Protocol protocol,
    TypedText typed,
    LateTagger tagger) {

  /** The file of the phrases of the examination. */
  static final String ROOT = "exam.gram";

  public static Understanding load(Home home) throws IOException {
    GrammarSet grammars = GrammarSet.load(home.grammars(), ROOT);
    if (!grammars.problems().isEmpty()) {
      throw new IOException(
          grammars.problems().stream().map(Problem::toString).collect(Collectors.joining("\n")));
    }
    PhraseNetwork network = PhraseNetwork.of(grammars);
    TypedText typed = TypedText.load(home.grammars().resolve("spellings.txt"));
    LateTagger tagger = new LateTagger(home, network, typed);
    return new Understanding(
        network, new Interpreter(network, home.protocol(), tagger), home.protocol(), typed, tagger);
  }

  /**
   * Gets the tagger ready, so that no utterance has to wait for it.
   *
   * @param progress told what takes a while
   */
  public void getReady(PrintStream progress) throws IOException {
    tagger.getReady(progress);
  }
}
