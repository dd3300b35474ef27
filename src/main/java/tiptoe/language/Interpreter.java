package tiptoe.language;

import java.util.List;
import tiptoe.grammar.Parse;
import tiptoe.grammar.PhraseNetwork;
import tiptoe.protocol.Protocol;

/** Finds out what an utterance means: its phrases by the grammars, their meaning by their tags. */
public final class Interpreter {
  private final PhraseNetwork network;
  private final Protocol protocol;

  public Interpreter(PhraseNetwork network, Protocol protocol) {
    this.network = network;
    this.protocol = protocol;
  }

  public Protocol protocol() {
    return protocol;
  }

  /**
   * What the words mean in this dialogue.
   *
   * @param words lower case, spelled as in the grammars; see {@link TypedText} for anything else
   * @param source {@link Source#GRAMMAR} for speech, {@link Source#TYPED} for the keyboard
   */
  public Interpretation interpret(List<String> words, Dialogue dialogue, Source source) {
    Parse parse = network.parse(words);
    Breath breath = new Breath(protocol, dialogue, source);
    for (Parse.Phrase phrase : parse.phrases()) {
      List<Clause> clauses = Clause.of(phrase, words);
      // A bare "right" before another finding is more likely its side than an answer.
      boolean last = phrase.to() == words.size();
      if (last || clauses.stream().noneMatch(clause -> clause.mark("reply").isPresent())) {
        breath.take(clauses);
      }
    }
    List<String> uncovered =
        parse.uncovered().stream()
            .flatMap(span -> words.subList(span.from(), span.to()).stream())
            .toList();
    return new Interpretation(breath.meanings(), uncovered, breath.dialogue());
  }
}
