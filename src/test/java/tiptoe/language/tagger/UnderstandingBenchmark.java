package tiptoe.language.tagger;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import tiptoe.grammar.GrammarSet;
import tiptoe.grammar.PhraseNetwork;
import tiptoe.language.Interpreter;
import tiptoe.language.TypedText;
import tiptoe.protocol.Protocol;

/** Prints how well natural sentences are understood, by the grammars alone and with the tagger. */
public final class UnderstandingBenchmark {
  private UnderstandingBenchmark() {}

  /**
   * @param args {@code notes} lists every statement that is wrong or missed in the sentences that
   *     may be used for development
   */
  public static void main(String[] args) throws IOException {
    PhraseNetwork network = PhraseNetwork.of(GrammarSet.load(Path.of("grammars"), "exam.gram"));
    TypedText typed = TypedText.load(Path.of("grammars/spellings.txt"));
    Protocol protocol = Protocol.standard();
    long start = System.nanoTime();
    Tagger tagger = Tagger.train(network, protocol, typed);
    System.out.printf("trained in %.1f s%n", (System.nanoTime() - start) / 1e9);
    LayLexicon lay = LayLexiconReader.shipped(protocol, typed::words);
    System.out.println("held-out templates: " + SpanScore.onHeldOutTemplates(lay, network));
    Interpreter grammar = new Interpreter(network, protocol);
    Interpreter both = new Interpreter(network, protocol, tagger);
    for (String author : List.of("registrar", "practitioner", "newcomers")) {
      List<NaturalSentences.Row> rows = NaturalSentences.read(author);
      System.out.println(author + ", " + rows.size() + " sentences");
      System.out.println("  grammar only     " + NaturalSentences.score(rows, grammar, typed));
      NaturalSentences.Score score = NaturalSentences.score(rows, both, typed);
      System.out.println("  grammar + tagger " + score);
      if (args.length > 0) {
        score.notes.forEach(System.out::println);
      }
    }
  }
}
