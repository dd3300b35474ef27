package tiptoe.language;

import java.io.IOException;
import java.nio.file.Path;
import tiptoe.grammar.GrammarSet;
import tiptoe.grammar.PhraseNetwork;
import tiptoe.language.tagger.Tagger;
import tiptoe.protocol.Protocol;

/**
 * The grammars as they are shipped and the tagger trained on them, once for all tests of a process.
 */
public final class Shipped {
  private static PhraseNetwork network;
  private static TypedText typed;
  private static Tagger tagger;

  private Shipped() {}

  public static synchronized PhraseNetwork network() {
    if (network == null) {
      network = PhraseNetwork.of(GrammarSet.load(Path.of("grammars"), "exam.gram"));
    }
    return network;
  }

  public static synchronized TypedText typed() throws IOException {
    if (typed == null) {
      typed = TypedText.load(Path.of("grammars/spellings.txt"));
    }
    return typed;
  }

  public static synchronized Tagger tagger() throws IOException {
    if (tagger == null) {
      tagger = Tagger.train(network(), Protocol.standard(), typed());
    }
    return tagger;
  }
}
